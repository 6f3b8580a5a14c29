using PriceFloor.Pricing;

namespace PriceFloor.Statements;

/// <summary>What one heading or line comes to a year in the stored profile and in the draft.</summary>
/// <param name="To">Business, household or other income.</param>
/// <param name="Heading">With business: the heading; null for lines without one.</param>
/// <param name="Name">With household and other income: the line.</param>
/// <param name="Stored">A year in the stored profile.</param>
/// <param name="Drafted">A year in the draft.</param>
public sealed record ProfileDifference(Placement To, Heading? Heading, string? Name, decimal Stored, decimal Drafted)
{
    /// <summary>Every heading and line that differs, the largest difference first.</summary>
    public static IReadOnlyList<ProfileDifference> Between(CostProfile stored, CostProfile draft) =>
        [.. Expenses(stored, draft)
            .Concat(ByName(Placement.Household, stored.Household, draft.Household, line => line.Name))
            .Concat(ByName(Placement.OtherIncome, stored.OtherIncome, draft.OtherIncome, line => line.Name))
            .Where(line => Rounding.Settle(line.Stored) != Rounding.Settle(line.Drafted))
            .OrderByDescending(line => decimal.Abs(line.Drafted - line.Stored)).ThenBy(line => line.To).ThenBy(line => line.Heading).ThenBy(line => line.Name, StringComparer.Ordinal)];

    private static IEnumerable<ProfileDifference> Expenses(CostProfile stored, CostProfile draft)
    {
        var (before, after) = (stored.Expenses.ToLookup(line => line.Heading), draft.Expenses.ToLookup(line => line.Heading));
        return before.Select(line => line.Key).Union(after.Select(line => line.Key))
            .Select(heading => new ProfileDifference(Placement.Business, heading, null, before[heading].Sum(Annual.Amount), after[heading].Sum(Annual.Amount)));
    }

    private static IEnumerable<ProfileDifference> ByName<T>(Placement to, IEnumerable<T> stored, IEnumerable<T> draft, Func<T, string?> name) where T : IRecurring
    {
        var (before, after) = (stored.ToLookup(name), draft.ToLookup(name));
        return before.Select(line => line.Key).Union(after.Select(line => line.Key))
            .Select(line => new ProfileDifference(to, null, line, before[line].Sum(one => one.Amount()), after[line].Sum(one => one.Amount())));
    }
}
