using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>Lines that were refused: how many, and why, equal refusals of a file together.</summary>
/// <param name="Count">How many lines.</param>
/// <param name="Lines">A refusal for each file and reason, in the order of the first line; at most a hundred.</param>
public sealed record RefusedAnswer(int Count, IReadOnlyList<RefusedLinesAnswer> Lines)
{
    private const int MostGroups = 100;

    public static RefusedAnswer Of(IReadOnlyList<SentFile> sent, IReadOnlyList<StatementFile> files, Sorting sorting)
    {
        var all = files.Index()
            .SelectMany(file => file.Item.Refused.Select(line => (File: file.Index, line.Line, line.Code, line.Detail)))
            .Concat(sorting.Of[LineOutcome.ForeignCurrency].Select(sorted => (sorted.Entry.File, sorted.Entry.Transaction.Line,
                Code: FaultCodes.CurrencyMismatch,
                Detail: $"The line is not in {sorting.Currency.Code}, and nothing is ever converted; add what it cost by hand."))).ToList();
        return new RefusedAnswer(all.Count, [.. all.GroupBy(line => (line.File, line.Code, line.Detail)).Take(MostGroups).Select(equal =>
            RefusedLinesAnswer.Of(sent[equal.Key.File].Name, equal.Key.Code, equal.Key.Detail, [.. equal.Select(line => line.Line)]))]);
    }
}

/// <summary>Lines of a file that were refused for the same reason.</summary>
/// <param name="File" example="current">The file.</param>
/// <param name="Line" example="17">The line number of the first of them, from 1.</param>
/// <param name="Code" example="bad-currency">What is wrong, as a stable word.</param>
/// <param name="Detail" example="The currency is not an ISO 4217 code of three letters.">What is wrong, in a sentence.</param>
/// <param name="Count" example="3">How many lines it is true of.</param>
/// <param name="OtherLines" example="[18, 23]">The line numbers of the others; at most a hundred.</param>
public sealed record RefusedLinesAnswer(string File, int Line, string Code, string Detail, int Count, IReadOnlyList<int> OtherLines)
{
    private const int MostLines = 100;

    public static RefusedLinesAnswer Of(string file, string code, string detail, IReadOnlyList<int> lines) =>
        new(file, lines[0], code, detail, lines.Count, [.. lines.Skip(1).Take(MostLines)]);
}
