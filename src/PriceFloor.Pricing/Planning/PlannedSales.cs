using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// Planned sales beside break-even. 1,250 pieces planned, 1,000 to break even: a fifth may fail to sell, and each percent more leaves 5 % more.
/// </summary>
public sealed class PlannedSales
{
    internal PlannedSales(BreakEven breakEven, decimal planned)
    {
        (BreakEven, Planned) = (breakEven, planned);
        var formulas = new PlannedSalesFormulas<Figure>(breakEven, planned);
        MarginOfSafety = formulas.MarginOfSafety.Value;
        OperatingLeverage = formulas.AboveBreakEven ? formulas.OperatingLeverage.Value : null;
    }

    public BreakEven BreakEven { get; }

    /// <summary>Pieces that are planned.</summary>
    public decimal Planned { get; }

    /// <summary>By how much of the plan sales may fall before the year no longer closes; negative if they must rise.</summary>
    public decimal MarginOfSafety { get; }

    /// <summary>By what multiple a change of sales changes the surplus; null at or below break-even.</summary>
    public decimal? OperatingLeverage { get; }
}
