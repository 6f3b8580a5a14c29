using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Demand;

/// <summary>How many to make for a fair or for December: one more pays as long as it is likely enough to be sold (newsvendor).</summary>
/// <param name="Reach">Cu/(Cu + Co): how likely all orders are to be met at best; 4 decimals.</param>
/// <param name="Pieces">So many should be there, whole, up; null where a leftover costs nothing, so that more is never wrong.</param>
public sealed record MakeUpTo(decimal Reach, decimal? Pieces)
{
    /// <param name="demand">The design on its channel.</param>
    /// <param name="piece">What a piece takes.</param>
    /// <param name="price">What is asked.</param>
    /// <param name="leftover">What a piece that is not sold still brings; at least 0.</param>
    /// <param name="time">Weighted weeks, or events.</param>
    public static MakeUpTo? Of(DesignDemand demand, UnitCost piece, decimal price, decimal leftover, decimal time)
    {
        var materials = piece.Materials - piece.SecondsCredit;
        var (missed, over) = (Sale.Of(price, demand.Offer.Channel).Net - materials, materials - leftover);
        if (missed <= 0)
            return new MakeUpTo(0, 0);
        if (over <= 0)
            return new MakeUpTo(1, null);
        var reach = missed / (missed + over);
        return demand.OrdersWithin(time, reach) is not { } orders ? null
            : new MakeUpTo(Rounding.Nearest(reach, Estimate.ShareDecimals), Rounding.Up(orders * demand.Offer.PiecesPerOrder, 0));
    }
}
