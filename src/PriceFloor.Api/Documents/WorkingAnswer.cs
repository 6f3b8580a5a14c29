namespace PriceFloor.Api.Documents;

/// <summary>One line of the workings: a symbol that later formulas use, a label, a formula and its value, with at most 12 decimals.</summary>
/// <param name="Symbol">Its name in later formulas.</param>
/// <param name="Label">What it is.</param>
/// <param name="Formula">How it is calculated from the lines above it.</param>
/// <param name="Value">Its value, with at most 12 decimals.</param>
public sealed record WorkingAnswer(string Symbol, string Label, string Formula, decimal Value)
{
    public static IReadOnlyList<WorkingAnswer>? Of(bool wanted, Func<IEnumerable<Working>> workings) =>
        wanted
            ? [.. workings().Select(one => new WorkingAnswer(one.Symbol, one.Label, one.Formula, Rounding.Trim(Rounding.Settle(one.Value))))]
            : null;
}
