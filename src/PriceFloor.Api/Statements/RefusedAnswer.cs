using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>Lines that were refused: how many, and the first hundred.</summary>
/// <param name="Count">How many.</param>
/// <param name="Lines">The first hundred.</param>
public sealed record RefusedAnswer(int Count, IReadOnlyList<RefusedLineAnswer> Lines)
{
    private const int Told = 100;

    public static RefusedAnswer Of(IReadOnlyList<SentFile> sent, IReadOnlyList<StatementFile> files, Sorting sorting)
    {
        var all = files.Index()
            .SelectMany(file => file.Item.Refused.Select(line => new RefusedLineAnswer(sent[file.Index].Name, line.Line, line.Code, line.Detail)))
            .Concat(sorting.Of[LineOutcome.ForeignCurrency].Select(sorted => new RefusedLineAnswer(sent[sorted.Entry.File].Name,
                sorted.Entry.Transaction.Line, FaultCodes.CurrencyMismatch,
                $"The line is not in {sorting.Currency.Code}, and nothing is ever converted; add what it cost by hand."))).ToList();
        return new RefusedAnswer(all.Count, [.. all.Take(Told)]);
    }
}

/// <summary>A line that was refused.</summary>
/// <param name="File" example="current">The file.</param>
/// <param name="Line" example="17">Its line number, from 1.</param>
/// <param name="Code" example="bad-currency">What is wrong, as a stable word.</param>
/// <param name="Detail" example="The currency is not an ISO 4217 code of three letters.">What is wrong, in a sentence.</param>
public sealed record RefusedLineAnswer(string File, int Line, string Code, string Detail);
