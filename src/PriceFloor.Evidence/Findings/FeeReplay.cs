using PriceFloor.Evidence.Orders;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Findings;

/// <summary>The orders whose fees are recorded, replayed through the channel's fees. Exact but for the line through what was charged.</summary>
public sealed class FeeReplay
{
    private const int Worst = 5;
    private const decimal Apart = 0.01m;

    private FeeReplay(List<ReplayedOrder> orders) => Orders = orders;

    public IReadOnlyList<ReplayedOrder> Orders { get; }

    public decimal Expected => Orders.Sum(order => order.Expected);

    public decimal Charged => Orders.Sum(order => order.Charged);

    public decimal Difference => Charged - Expected;

    /// <summary>More than 1 % apart.</summary>
    public bool Differs => decimal.Abs(Difference) > Apart * Expected;

    /// <summary>The orders that are furthest apart, of equals the first.</summary>
    public IEnumerable<ReplayedOrder> FurthestApart => Orders.OrderByDescending(order => decimal.Abs(order.Difference)).Take(Worst);

    /// <summary>The rate, to 4 decimals, and the fixed amount an order that fit what was charged best; null where all orders are the same.</summary>
    /// <param name="decimals">Decimals of the fixed amount.</param>
    public (decimal Rate, decimal Fixed)? Fitted(int decimals)
    {
        if (Orders.Select(order => order.Paid).Distinct().Take(2).Count() < 2)
            return null;
        return PlainLine.Of([.. Orders.Select(order => (order.Paid, order.Charged))], decimals);
    }

    /// <summary>The replay of a channel's orders; null where none has its fees recorded.</summary>
    internal static FeeReplay? Of(IEnumerable<SoldOrder> orders, Channel channel)
    {
        var replayed = new List<ReplayedOrder>();
        foreach (var order in orders)
            if (OrderNet.Recorded(order, line => line.Fees) is { } charged)
                replayed.Add(new ReplayedOrder(order.On, order.Pieces, OrderNet.Paid(order, channel), OrderNet.ExpectedFees(order, channel),
                    charged));
        return replayed.Count == 0 ? null : new FeeReplay(replayed);
    }
}
