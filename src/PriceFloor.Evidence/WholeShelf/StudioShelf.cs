using PriceFloor.Evidence.Decisions;
using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Findings;

namespace PriceFloor.Evidence.WholeShelf;

/// <summary>All designs of a profile that have lines, beside each other.</summary>
public sealed class StudioShelf
{
    private StudioShelf(StudioDemand demand, decimal? scarcity, IReadOnlyList<ShelfLine> lines) =>
        (Demand, Scarcity, Lines) = (demand, scarcity, lines);

    public StudioDemand Demand { get; }

    /// <summary>Of the hours that are there, the share that all offered designs would take; null where there are none.</summary>
    public decimal? Scarcity { get; }

    /// <summary>One for each design, by sku.</summary>
    public IReadOnlyList<ShelfLine> Lines { get; }

    /// <summary>The fewest designs that together bring 70 % of the contribution, largest first.</summary>
    public IReadOnlyList<string> Carriers => Carrying.Of(Lines.Select(line => new DesignContribution(line.Sku, line.Contribution)));

    /// <summary>The line of a design; null where it has none.</summary>
    public ShelfLine? Line(string sku) => Lines.FirstOrDefault(line => line.Sku == sku);

    /// <param name="designs">The designs.</param>
    /// <param name="floorPrice">The floor price of a piece on a channel; null where there is none.</param>
    /// <param name="hours">Bench hours of the year, less those kept back.</param>
    /// <param name="choices">What is asked.</param>
    public static StudioShelf Of(IReadOnlyList<ShelvedDesign> designs, Func<UnitCost, Channel, decimal?> floorPrice, decimal hours,
        EvidenceChoices choices)
    {
        var sorted = designs.Select(design => design.Evidence).OfType<DesignEvidence>().OrderBy(design => design.Known.Sku, StringComparer.Ordinal)
            .ToList();
        var demand = StudioDemand.Of(designs.SelectMany(design => design.Offers), choices.To, choices.Level);
        var scarcity = demand.Scarcity(hours);
        var decided = sorted.ToDictionary(design => design.Known.Sku, design => DesignDecision.Of(design, demand, floorPrice, scarcity),
            StringComparer.Ordinal);
        var brought = sorted.ConvertAll(design => (Contribution: StudioEvidence.Contribution(design), Hours: StudioEvidence.Hours(design)));
        var (contribution, taken) = (brought.Sum(one => one.Contribution), brought.Sum(one => one.Hours));
        return new StudioShelf(demand, scarcity, [.. sorted.Zip(brought, (design, one) => new ShelfLine(design, decided[design.Known.Sku],
            one.Contribution, contribution > 0 ? one.Contribution / contribution : null, taken > 0 ? one.Hours / taken : null,
            decided[design.Known.Sku].Decision.Word == DecisionWord.Drop ? DesignDecision.InItsPlace(decided, design.Known.Sku) : null))]);
    }
}
