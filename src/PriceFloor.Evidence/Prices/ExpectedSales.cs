using PriceFloor.Evidence.Demand;

namespace PriceFloor.Evidence.Prices;

/// <summary>What one unit of time brings at a price: a weighted week, or an event. Money is unrounded.</summary>
/// <param name="Orders">Orders, to 4 decimals.</param>
/// <param name="Contribution">What they leave after materials.</param>
/// <param name="AboveFloor">What they leave above the floor, which is after bench time too; below 0 where they do not carry their share.</param>
/// <param name="EarnedPerBenchHour">What an hour of making and selling earns.</param>
public sealed record ExpectedSales(decimal Orders, decimal Contribution, decimal AboveFloor, decimal EarnedPerBenchHour)
{
    internal static ExpectedSales Of(decimal orders, decimal price, OfferedDesign offer, UnitCost piece)
    {
        var (onChannel, left) = (new ChannelFloor(piece, offer.Channel), Margin.At(price, piece, offer.Channel, Aim.IdleHours));
        var pieces = orders * offer.PiecesPerOrder;
        return new ExpectedSales(orders, pieces * left, pieces * (Sale.Of(price, offer.Channel).Net - onChannel.Floor), left / onChannel.Hours);
    }
}
