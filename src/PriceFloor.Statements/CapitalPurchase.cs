namespace PriceFloor.Statements;

/// <summary>
/// A large one-off purchase, which belongs to the years in which it is used: offered as equipment with a life, instead of an expense
/// of the one year in which it was paid.
/// </summary>
/// <param name="Entry">The purchase.</param>
/// <param name="CostKind">The kind of cost that its rule gave it.</param>
/// <param name="Name">What the draft calls it.</param>
public sealed record CapitalPurchase(Sorted Entry, CostKind? CostKind, string Name)
{
    /// <summary>Kinds of cost that a lasting thing may be booked under.</summary>
    private static readonly CostKind?[] s_lasting = [null, Pricing.Documents.CostKind.Depreciation, Pricing.Documents.CostKind.Supplies,
        Pricing.Documents.CostKind.Office, Pricing.Documents.CostKind.Repairs, Pricing.Documents.CostKind.Other];

    public decimal Cost => -Entry.Entry.Amount;

    /// <summary>Straight-line over the life; in service from the day it was paid.</summary>
    public Equipment AsEquipment(decimal lifeYears) => new()
    {
        Name = Name,
        Cost = Cost,
        InService = Entry.Entry.Date,
        Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = lifeYears },
    };

    /// <summary>
    /// What of a line is a purchase to last: its rule says so (kind of cost depreciation), or it is at least so large, stands alone (nothing
    /// else in the line reaches half of it) and was not paid back.
    /// </summary>
    public static IEnumerable<CapitalPurchase> In(LineName line, IReadOnlyList<Sorted> entries, decimal least)
    {
        if (line.To != Placement.Business || line.BusinessShare != 1 || line.TracedTo is not null || !s_lasting.Contains(line.CostKind))
            return [];
        var bought = entries.Where(sorted => sorted.Entry.Amount < 0);
        var chosen = line.CostKind == Pricing.Documents.CostKind.Depreciation ? bought : Alone(entries, least);
        return chosen.Select(sorted =>
            new CapitalPurchase(sorted, line.CostKind, FormattableString.Invariant($"{line.Short}, bought {sorted.Entry.Date:yyyy-MM}")));
    }

    private static IEnumerable<Sorted> Alone(IReadOnlyList<Sorted> entries, decimal least)
    {
        var largest = entries.MinBy(sorted => sorted.Entry.Amount)!;
        var cost = -largest.Entry.Amount;
        return cost >= least && entries.All(other => ReferenceEquals(other, largest) || decimal.Abs(other.Entry.Amount) * 2 < cost) ? [largest] : [];
    }
}
