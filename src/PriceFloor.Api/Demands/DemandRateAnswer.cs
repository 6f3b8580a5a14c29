using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Api.Demands;

/// <summary>How often it is ordered at the price that was asked last.</summary>
/// <param name="Value" example="1.4635">Orders in one week that weighs 1, or an event.</param>
/// <param name="Low" example="1.0720">The lower end of its range.</param>
/// <param name="High" example="1.9046">The upper end.</param>
/// <param name="Per" example="week">"week", or "event" on a stall.</param>
/// <param name="Exposure" example="in-stock">
/// Which time counts: days with a piece in stock, else days listed, else from the first sale to the last; of a stall events.
/// </param>
/// <param name="Orders" example="31">Orders at that price: an order of twelve is one.</param>
/// <param name="Time" example="20.00">Weeks, weighted by season, or events, in which it could be bought at that price.</param>
/// <param name="PiecesPerOrder" example="1.00">Pieces of the design in one of its orders.</param>
/// <param name="OwnWeight" example="0.8809">
/// How much of the rate is the design's own; the rest is what the profile's designs on the channel usually do.
/// </param>
/// <param name="Shelf" example="0.5577">Orders in a week, or an event, of the profile's design in the middle.</param>
public sealed record DemandRateAnswer(decimal Value, decimal Low, decimal High, string Per, Exposure Exposure, decimal Orders, decimal Time,
    decimal PiecesPerOrder, decimal OwnWeight, decimal? Shelf)
{
    internal const int TimeDecimals = 2;

    internal static string Unit(DesignDemand demand) => demand.Offer.Exposure == Exposure.Events ? "event" : "week";

    internal static DemandRateAnswer? Of(DesignDemand demand, decimal? median) =>
        demand is not { Present: { } run, Rate: { Low: { } low, High: { } high } rate } ? null
        : new DemandRateAnswer(rate.Value, low, high, Unit(demand), demand.Offer.Exposure, run.Sales.Orders,
            Rounding.Nearest(run.Sales.Exposure, TimeDecimals), Rounding.Nearest(demand.Offer.PiecesPerOrder, TimeDecimals),
            Rounding.Nearest(demand.OwnWeight!.Value, Estimate.ShareDecimals),
            median is { } shelf ? Rounding.Nearest(shelf, Estimate.ShareDecimals) : null);
}
