using System.Text.Json.Serialization;
using PriceFloor.Statements;

namespace PriceFloor.Api.Statements;

/// <summary>One line of a file with its outcome. The answer does not repeat its text.</summary>
/// <param name="File" example="current">The file.</param>
/// <param name="Line" example="2">Its line number, from 1.</param>
/// <param name="Date" example="2026-01-05">The day of the booking.</param>
/// <param name="Amount" example="-540.00">Negative if the money went out.</param>
/// <param name="Outcome">The outcome.</param>
/// <param name="Rule" example="#/rules/0">The rule that took it, as a pointer into the reading rules.</param>
public sealed record LineAnswer(string File, int Line, DateOnly Date, decimal Amount, LineOutcome Outcome,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Rule)
{
    public static LineAnswer Of(Sorted sorted, IReadOnlyList<SentFile> sent, Currency money) => new(sent[sorted.Entry.File].Name,
        sorted.Entry.Transaction.Line, sorted.Entry.Date, CountAnswer.Exactly(sorted.Entry.Amount, money), sorted.Outcome, sorted.Rule is { } rule
            ? DraftLineAnswer.Pointer(rule)
            : null);
}
