using System.IO.Pipelines;
using Microsoft.Extensions.Primitives;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.PriceChecks.Batches;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.Running;

/// <summary>Checks a sheet of prices as POST /v1/price-checks/batch does, by the same code and with the same names of options.</summary>
internal static class SheetCommand
{
    private const string Csv = "csv";

    private static readonly VerbOption s_csv = new(Csv, null, "prints the sheet with our columns, as it comes over HTTP");

    public static readonly VerbOption[] Options =
    [
        .. BatchQuery.Parameters.Select(parameter => new VerbOption(parameter.Name, "VALUE", parameter.Description)),
        s_csv, QuestionCommands.Json, VerbOption.Data,
    ];

    public const string Note =
        "It ends with 0 if every price carries its share, with 1 if one is below its floor, and with 2 if a line or the whole\n"
        + "sheet could not be checked. Nothing in the data folder is changed.";

    public static async Task<int> Run(Settings settings, string path, IReadOnlyDictionary<string, string> options, Stream output)
    {
        if (options.ContainsKey(Csv) && options.ContainsKey(QuestionCommands.Json.Name))
            throw new SettingsException("Give --csv or --json, not both.");
        var query = QueryOf(options);
        await using var file = Opened(path);
        var catalogue = QuestionCommands.Documents(settings, query.AsOf);
        if (BatchRoutes.UnknownChannel(query, catalogue) is { } unknown)
            throw QuestionCommands.FaultOf(unknown);
        using var rows = new SheetReader(PipeReader.Create(file), query.Dialect);
        var (sheet, problem) = await CheckedSheet.Begin(rows, query, catalogue, mayRead: true, showsPrices: true, CancellationToken.None);
        if (sheet is null)
            throw QuestionCommands.FaultOf(problem!);
        // on a terminal the rows themselves show how far it is
        using var progress = Console.IsOutputRedirected ? ProgressLine.Start(QuestionCommands.Check, () => Share(file)) : null;
        var summary = options.ContainsKey(Csv)
            ? await AsSheet(sheet, output)
            : await WithItems(sheet, catalogue, options.ContainsKey(QuestionCommands.Json.Name)
                ? new JsonAnswers(PipeWriter.Create(output, new(leaveOpen: true)), QuestionCommands.Context(), lines: false)
                : new TableAnswers(output));
        return summary.Unanswered > 0 ? QuestionCommands.Fault : summary.BelowFloor > 0 ? 1 : 0;
    }

    private static async Task<BatchSummary> AsSheet(CheckedSheet sheet, Stream output)
    {
        var (summary, pipe) = (new BatchSummary(), PipeWriter.Create(output, new(leaveOpen: true)));
        await sheet.AnswerAsSheet(pipe, summary, CancellationToken.None);
        await pipe.CompleteAsync();
        return summary;
    }

    private static async Task<BatchSummary> WithItems(CheckedSheet sheet, Catalogue catalogue, BatchAnswers answers)
    {
        using (answers)
        {
            await sheet.Answer(answers, (to, line) => to.Write(line, line.Checked(catalogue, mayRead: true)), CancellationToken.None);
            answers.End();
            await answers.FlushAsync(CancellationToken.None);
            return answers.Summary;
        }
    }

    private static BatchQuery QueryOf(IReadOnlyDictionary<string, string> options)
    {
        var values = new QueryValues(new QueryCollection(options.ToDictionary(option => option.Key, option => new StringValues(option.Value),
            StringComparer.OrdinalIgnoreCase)));
        var query = BatchQuery.Read(values);
        return values.Faults.Count == 0 ? query : throw QuestionCommands.FaultOf(Problem.Invalid(values.Faults));
    }

    private static FileStream Opened(string path)
    {
        try
        {
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 64 * 1024, useAsync: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new SettingsException($"The sheet {Path.GetFullPath(path)} cannot be read: {e.Message}");
        }
    }

    private static decimal? Share(FileStream file) => file.Length > 0 ? (decimal)file.Position / file.Length : null;
}
