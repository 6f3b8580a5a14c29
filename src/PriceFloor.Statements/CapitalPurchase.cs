namespace PriceFloor.Statements;

/// <summary>
/// A large one-off purchase, which belongs to the years in which it is used: drafted as equipment with a life, instead of an expense of the one year
/// in which it was paid.
/// </summary>
/// <param name="Entry">The purchase.</param>
/// <param name="CostKind">The kind of cost from its rule.</param>
/// <param name="Name">Its name in the draft.</param>
public sealed record CapitalPurchase(Sorted Entry, CostKind? CostKind, string Name)
{
    /// <summary>Kinds of cost under which equipment may be booked.</summary>
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
    /// The capital purchase in a line: its rule says so (kind of cost depreciation), or it is at least so large, single (nothing else in the line
    /// reaches half of it) and was not paid back.
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
