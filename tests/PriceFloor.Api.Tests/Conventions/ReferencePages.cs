using System.Text;
using System.Text.Json;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Http;
using PriceFloor.Api.Pictures;
using PriceFloor.Api.Running;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>The pages of docs/reference, written from the code.</summary>
public static class ReferencePages
{
    public static IReadOnlyDictionary<string, string> All { get; } = new Dictionary<string, string>
    {
        ["settings.md"] = Page("Settings", "Environment variables of the service. "
            + "Another name that begins with `PRICEFLOOR_` is warned about at start. How to use them: [running it](../running.md).",
            ["environment", "meaning"], Settings.Names.Select(setting => new[] { $"`{setting.Key}`", setting.Value })),
        ["problems.md"] = Page("Problems", "Every error is `application/problem+json` (RFC 9457); its `type` is `/problems/` and one of these words. "
            + "The service answers the same at that address.",
            ["type", "status", "what it means", "how to fix it"], ProblemTypes.All.OrderBy(type => type.Status)
                .ThenBy(type => type.Slug, StringComparer.Ordinal)
                .Select(type => new[] { $"`{type.Slug}`", $"{type.Status}", $"**{type.Title}.** {type.Meaning}", type.Cure })),
        ["codes.md"] = "# Codes\n\nWritten from the code; a test keeps it so. These are the words in answers that a program can branch on. The lists "
            + "are closed: a later version may add a code, "
            + "and never changes what one means ([versioning](../versioning.md)). The sentences beside them (`detail`, `message`, "
            + "`inWords`) are for people and may change. "
            + "The `type` of a problem has [a page of its own](problems.md); "
            + "an item of a batch that has no finer code carries that word as its `code`.\n"
            + Section("Faults", "`errors[].code` of a problem; `reason` of the problem `cannot-compute`; "
                + "`reason` where one design or channel of an answer about many has no figures.", Codes.Faults)
            + Section("Warnings", "`warnings[].code`: the answer stands, but something may make it wrong.", Codes.Warnings)
            + Section("Remedies and design budgets",
                "`reason` where a way cannot help or a budget has no figure; `flag` where a figure is shown but not advised.", Codes.Remedies)
            + Section("Lines of statements",
                "`refused.lines[].code`: why a line of a bank statement is in no figure. If no line of a file can be read, they are faults.",
                Codes.Lines)
            + Section("Lines of the log", "`refused[].code`: why a movement or a bench entry is not stored.", Codes.LogLines),
        ["cost-kinds.md"] = Page("Kinds of cost", "What an expense may be filed under with `costKind`. "
            + "A requirement's `notCovered` lists those that no line touches: [the costs people forget](../costs-people-forget.md).",
            ["costKind", "on printed pages", "what belongs there"], Enum.GetValues<CostKind>().Select(costKind => new[]
            {
                $"`{JsonSerializer.SerializeToElement(costKind, WireJson.Options).GetString()}`", DisplayText.Kind(costKind),
                CostKinds.Meanings[costKind],
            })),
    };

    private static string Page(string title, string words, IReadOnlyList<string> columns, IEnumerable<IReadOnlyList<string>> rows)
    {
        var page = new StringBuilder($"# {title}\n\nWritten from the code; a test keeps it so. {words}\n\n");
        page.Append(Row(columns)).Append(Row([.. columns.Select(_ => "---")]));
        foreach (var row in rows)
            page.Append(Row(row));
        return page.ToString();
    }

    private static string Section(string title, string words, IEnumerable<Code> codes) =>
        $"\n## {title}\n\n{words}\n\n{Row(["code", "what it means", "what to do"])}{Row(["---", "---", "---"])}"
        + string.Concat(codes.OrderBy(code => code.Word, StringComparer.Ordinal).Select(code => Row([$"`{code}`", code.Meaning, code.Cure])));

    private static string Row(IEnumerable<string> cells) =>
        $"| {string.Join(" | ", cells.Select(cell => cell.Replace("|", "\\|", StringComparison.Ordinal)))} |\n";
}
