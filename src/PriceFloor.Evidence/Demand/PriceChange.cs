using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Demand;

/// <summary>Before and after a change of price. One design's before and after hardly ever decides; the whole shelf does.</summary>
public sealed class PriceChange
{
    private readonly decimal _left, _leaves;

    private PriceChange(PriceRun before, PriceRun after, RateChange rates, decimal left, decimal leaves) =>
        (Before, After, Rates, _left, _leaves) = (before, after, rates, left, leaves);

    public PriceRun Before { get; }

    public PriceRun After { get; }

    /// <summary>What is lost, and whether it fell at all.</summary>
    public RateChange Rates { get; }

    /// <summary>
    /// 1 - k1/k2: of the sales, so many may be lost before it did not pay; 4 decimals. Null unless a sale leaves something at both.
    /// </summary>
    public decimal? MayLose => _left > 0 && _leaves > 0 ? MayBeLost(_left, _leaves) : null;

    /// <summary>How likely it paid, to 2 decimals.</summary>
    public decimal Paid => Rates.Paid(_left, _leaves);

    /// <summary>Orders needed on each side to tell; null where nothing can be told.</summary>
    public decimal? OrdersToTell => _left > 0 && _leaves > 0 ? RateChange.OrdersToTell(1 - _left / _leaves) : null;

    /// <summary>The last change of a design's price; null where there was none.</summary>
    /// <param name="demand">The design on its channel.</param>
    /// <param name="piece">What a piece takes.</param>
    /// <param name="aim">What a bench hour is worth.</param>
    public static PriceChange? Of(DesignDemand demand, UnitCost piece, Aim aim) => demand.LastChange is not { } change ? null
        : new PriceChange(change.Before, change.After, RateChange.Of(demand.Prior, change.Before.Sales, change.After.Sales),
            Left(change.Before, demand, piece, aim), Left(change.After, demand, piece, aim));

    internal static decimal MayBeLost(decimal left, decimal leaves) => Rounding.Nearest(1 - left / leaves, Estimate.ShareDecimals);

    private static decimal Left(PriceRun run, DesignDemand demand, UnitCost piece, Aim aim) =>
        Margin.At(run.Price!.Value, piece, demand.Offer.Channel, aim);
}
