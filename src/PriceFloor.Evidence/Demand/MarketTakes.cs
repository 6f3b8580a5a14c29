namespace PriceFloor.Evidence.Demand;

/// <summary>Pieces that the market takes in a time: the most that a plan should count on.</summary>
/// <param name="Pieces">As likely as not that at least so many are ordered; whole, down.</param>
/// <param name="Sure">Nine times in ten at least so many.</param>
/// <param name="Orders">Orders that were seen.</param>
public sealed record MarketTakes(decimal Pieces, decimal Sure, decimal Orders)
{
    private const int FewOrders = 8;
    private const decimal Likely = 0.5m, Low = 0.1m;

    /// <summary>Whether enough orders were seen to plan with it.</summary>
    public bool IsEnough => Orders >= FewOrders;

    /// <param name="demand">The design on its channel.</param>
    /// <param name="time">Weighted weeks, or events.</param>
    public static MarketTakes? Of(DesignDemand demand, decimal time) =>
        demand.OrdersWithin(time, Likely) is { } likely && demand.OrdersWithin(time, Low) is { } low
            ? new MarketTakes(PiecesOf(likely, demand), PiecesOf(low, demand), demand.All.Orders) : null;

    private static decimal PiecesOf(int orders, DesignDemand demand) => Rounding.Down(orders * demand.Offer.PiecesPerOrder, 0);
}
