namespace PriceFloor.Statements;

/// <summary>The yearly amount of one kind of cost or line in the stored profile and in the draft.</summary>
/// <param name="To">Business, household or other income.</param>
/// <param name="CostKind">With business: the kind of cost; null for lines without one.</param>
/// <param name="Name">With household and other income: the line.</param>
/// <param name="Stored">The yearly amount in the stored profile.</param>
/// <param name="Drafted">The yearly amount in the draft.</param>
public sealed record ProfileDifference(Placement To, CostKind? CostKind, string? Name, decimal Stored, decimal Drafted)
{
    /// <summary>Every kind of cost and line that differs, largest difference first.</summary>
    public static IReadOnlyList<ProfileDifference> Between(CostProfile stored, CostProfile draft) =>
        [.. Expenses(stored, draft)
            .Concat(ByName(Placement.Household, stored.Household, draft.Household, line => line.Name))
            .Concat(ByName(Placement.OtherIncome, stored.OtherIncome, draft.OtherIncome, line => line.Name))
            .Where(line => Rounding.Settle(line.Stored) != Rounding.Settle(line.Drafted))
            .OrderByDescending(line => decimal.Abs(line.Drafted - line.Stored)).ThenBy(line => line.To).ThenBy(line => line.CostKind)
            .ThenBy(line => line.Name, StringComparer.Ordinal)];

    private static IEnumerable<ProfileDifference> Expenses(CostProfile stored, CostProfile draft)
    {
        var (before, after) = (stored.Expenses.ToLookup(line => line.CostKind), draft.Expenses.ToLookup(line => line.CostKind));
        return before.Select(line => line.Key).Union(after.Select(line => line.Key))
            .Select(costKind =>
                new ProfileDifference(Placement.Business, costKind, null, before[costKind].Sum(Annual.Amount), after[costKind].Sum(Annual.Amount)));
    }

    private static IEnumerable<ProfileDifference> ByName<T>(Placement to, IEnumerable<T> stored, IEnumerable<T> draft, Func<T, string?> name)
        where T : IRecurring
    {
        var (before, after) = (stored.ToLookup(name), draft.ToLookup(name));
        return before.Select(line => line.Key).Union(after.Select(line => line.Key))
            .Select(line => new ProfileDifference(to, null, line, before[line].Sum(one => one.Amount()), after[line].Sum(one => one.Amount())));
    }
}
