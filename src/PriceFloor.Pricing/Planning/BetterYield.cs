using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// How far a better good share leads. The cost of a piece is a straight line in the starts, 1 over the good share: the piece as it is
/// and the same without any loss there give it.
/// </summary>
public sealed class BetterYield
{
    internal BetterYield(RemedyFigures figures)
    {
        Flawless = WithoutLoss(figures);
        var formulas = new BetterYieldFormulas<Figure>(figures, Flawless);
        (FlawlessCost, PerStart) = (formulas.FlawlessCost.Value, formulas.PerStart.Value);
        if (formulas.IsEnough)
            (Starts, GoodShare) = (formulas.Starts.Value, formulas.GoodShare.Value);
    }

    /// <summary>The same piece with nothing lost in its worst step.</summary>
    public UnitCost Flawless { get; }

    /// <summary>What that piece must bring in.</summary>
    public decimal FlawlessCost { get; }

    /// <summary>What each further start costs.</summary>
    public decimal PerStart { get; }

    /// <summary>Starts there for each good piece that the price still pays for; null if even no loss is not enough.</summary>
    public decimal? Starts { get; }

    /// <summary>The good share that comes to as many starts.</summary>
    public decimal? GoodShare { get; }

    private static UnitCost WithoutLoss(RemedyFigures figures)
    {
        var making = figures.UnitCost.Design.Making;
        var better = making.Steps is { } steps
            ? making with { Steps = [.. steps.Select((step, i) => i == figures.WorstStep ? step with { GoodShare = 1 } : step)] }
            : making with { GoodShare = 1 };
        return UnitCost.Of(figures.UnitCost.Design with { Making = better }, figures.Year).Value;
    }
}
