using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>
/// The commission of docs/a-commission.md, on the demo studio: each figure of the page is the service's, and each but what an hour must recover is
/// worked out here by hand.
/// </summary>
public sealed partial class CommissionPageTests
{
    private const string Page = "docs/a-commission.md";
    private static readonly int[] s_stored = [200, 201];

    [Fact]
    public async Task A_commission_is_what_the_service_answers_from_first_mail_to_last_payment()
    {
        await using var studio = DocTableTests.DemoFilled();
        var draft = (await studio.Get("/v1/quotes/Q-001/figures?workings=true")).Json;
        var perHour = draft.GetProperty("workings").EnumerateArray().Single(line => line.GetProperty("symbol").GetString() == "perBenchHour")
            .GetProperty("value").GetDecimal();
        // 24 / 0.8 = 30 starts, 30 / 12 = 2.5: three loads
        var bench = (30 * 40 + 3 * 20 + 24 * 10 + 30) / 60m;
        var (hours, materials, bought) = (bench + 4 + 2.5m, 30 * 6.00m + 3 * 16 * 0.21m, 180m);
        var floor = hours * perHour + materials + bought;
        // total + 5 of shipping - 6.20 - 24 * 0.80 of packing - 2.4 % of (total + 5) - 0.25 must reach the floor
        var total = Up((floor + 6.20m + 24 * 0.80m + 0.25m - 5 + 0.024m * 5) / (1 - 0.024m));
        var outOfPocket = materials + bought + 6.20m + 24 * 0.80m;
        string Said(string name, decimal byHand) => Checked(draft, name, byHand);
        DocTableTests.Holds(Page, ["what", "how", "figure"],
        [
            ["hours at the bench", "(30 x 40 + 3 x 20 + 24 x 10 + 30) / 60", Checked(draft.GetProperty("lines")[0], "benchHours", bench)],
            ["all hours", "25.5 + 4 + 2.5", Said("benchHours", hours)],
            ["materials", "30 x 6.00 + 3 x 16 x 0.21", Said("materials", materials)],
            ["bought", "the engraver", Said("bought", bought)],
            ["floor", $"32 x {Rounding.Nearest(perHour, 6)} + 190.08 + 180", Said("floor", Up(floor))],
            ["floor total", "(floor + 6.20 + 24 x 0.80 + 0.25 - 5 + 0.024 x 5) / 0.976", Said("floorTotal", total)],
            ["a tumbler", "floor total / 24", Said("perPiece", Up(total / 24))],
            ["in a rush", "floor total x 1.25", Said("rushTotal", Up(total * 1.25m))],
            ["out of pocket", "190.08 + 180 + 6.20 + 24 x 0.80", Said("outOfPocket", outOfPocket)],
            ["least deposit", "the same, up", Said("leastDeposit", outOfPocket)],
            // P(Bin(33, 0.8) >= 24) = 0.893, P(Bin(34, 0.8) >= 24) = 0.938; P(Bin(30, 0.8) >= 24) = 0.607
            ["pieces to start", "24 good ones nine times in ten", Checked(draft.GetProperty("lines")[0], "startsToBeSure", 34)],
        ]);

        foreach (var (method, path, body) in Requests())
            Assert.Contains((await studio.Send(method, path, body)).Status, s_stored);
        var issued = (await studio.Get("/v1/quotes/Q-001-2/figures")).Json;
        // 2,520 + 5 - 6.20 - 19.20 - 0.024 * 2,525 - 0.25 = 2,438.75
        const decimal Net = 2520 + 5 - 6.20m - 24 * 0.80m - 0.024m * 2525 - 0.25m;
        DocTableTests.Holds(Page, ["of 2,520.00", "how", "is left"],
        [
            ["net proceeds", "2520 + 5 - 6.20 - 24 x 0.80 - 0.024 x 2525 - 0.25", Checked(issued, "netProceeds", Net)],
            ["above the floor", "net proceeds - floor", Checked(issued, "aboveFloor", Rounding.Nearest(Net - floor, 2))],
            ["an hour, as quoted", "(net proceeds - 190.08 - 180) / 32",
                Checked(issued, "earnedPerBenchHour", Rounding.Nearest((Net - materials - bought) / hours, 2))],
            ["an hour, as it was", "(net proceeds - 203.40 - 180) / 36.5",
                Rounding.Nearest((Net - 203.40m - bought) / 36.5m, 2).ToString(CultureInfo.InvariantCulture)],
        ]);
        Assert.Equal("done", (await studio.Get("/v1/quotes/Q-001-2")).Json.GetProperty("state").GetString());
        Assert.Equal(1.140625m, (await studio.Get("/v1/quotes/Q-002/figures")).Json.GetProperty("quotesRun").GetDecimal()); // 36.5 / 32
        Assert.Contains("1.14 times", await File.ReadAllTextAsync(Repository.File(Page), Studio.Cancellation), StringComparison.Ordinal);
    }

    /// <summary>What the page's reader sends, in its order, apart from what only asks.</summary>
    private static IEnumerable<(string Method, string Path, string? Body)> Requests() => DocPages.Blocks
        .Where(block => block.Page == Page && block.Language == "sh")
        .Select(block => (Path: SentTo().Match(block.Text).Groups["path"].Value, block.Text))
        .Where(one => one.Text.Contains("-X ", StringComparison.Ordinal))
        .Select(one => (SentBy().Match(one.Text).Groups["method"].Value, one.Path,
            one.Text.Split("-d '") is [_, var body] ? (string?)body[..body.LastIndexOf('\'')] : null));

    /// <summary>The figure as the answer has it, which must be the one that was worked out.</summary>
    private static string Checked(JsonElement answer, string name, decimal byHand)
    {
        Assert.Equal((name, byHand), (name, answer.GetProperty(name).GetDecimal()));
        return answer.GetProperty(name).GetRawText();
    }

    private static decimal Up(decimal amount) => Rounding.Up(amount, 2);

    [GeneratedRegex("127.0.0.1:5080(?<path>[^\\s\"]+)", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex SentTo();

    [GeneratedRegex("-X (?<method>[A-Z]+)", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex SentBy();
}
