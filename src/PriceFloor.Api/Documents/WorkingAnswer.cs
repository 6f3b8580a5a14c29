namespace PriceFloor.Api.Documents;

/// <summary>One line of the workings: a symbol that later formulas use, a label, a formula and what it comes to, with 12 decimals at most.</summary>
/// <param name="Symbol">What later formulas call it.</param>
/// <param name="Label">What it is.</param>
/// <param name="Formula">How it is got from the lines before it.</param>
/// <param name="Value">What it comes to, with 12 decimals at most.</param>
public sealed record WorkingAnswer(string Symbol, string Label, string Formula, decimal Value)
{
    public static IReadOnlyList<WorkingAnswer>? Of(bool wanted, Func<IEnumerable<Working>> workings) =>
        wanted
            ? [.. workings().Select(one => new WorkingAnswer(one.Symbol, one.Label, one.Formula, Rounding.Trim(Rounding.Settle(one.Value))))]
            : null;
}
