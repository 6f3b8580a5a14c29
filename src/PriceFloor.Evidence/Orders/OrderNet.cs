using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Orders;

/// <summary>
/// What of an order reached the studio: fees and shipping as recorded, else by the channel's terms at what was paid, shared by value. Nothing is
/// taken
/// off for returns and losses: the log has those that there were.
/// </summary>
internal static class OrderNet
{
    public static void Share(SoldOrder order, Channel channel)
    {
        var lines = order.Lines;
        var values = new decimal[lines.Count];
        for (var i = 0; i < values.Length; i++)
            values[i] = Sale.BeforeTaxOf(lines[i].Line.Paid ?? 0, channel);
        var costs = Costs(order, channel, values);
        var byPieces = costs.Value == 0;
        decimal all = byPieces ? order.Pieces : costs.Value;
        for (var i = 0; i < values.Length; i++)
        {
            var line = lines[i].Line;
            var weight = byPieces ? line.Pieces : values[i];
            lines[i].Net = values[i] * (1 - channel.ShopShare) + costs.ShippingCharged * weight / all - costs.Shipping * weight / all
                - costs.Fees * weight / all - line.Pieces * costs.PerPiece;
        }
    }

    /// <summary>The fees of an order by the channel's terms.</summary>
    public static decimal ExpectedFees(SoldOrder order, Channel channel)
    {
        var value = order.Lines.Sum(line => Sale.BeforeTaxOf(line.Line.Paid ?? 0, channel));
        return Fees(channel, value, ShippingCharged(order, channel));
    }

    /// <summary>All that the buyer paid for an order.</summary>
    public static decimal Paid(SoldOrder order, Channel channel) =>
        (order.Lines.Sum(line => Sale.BeforeTaxOf(line.Line.Paid ?? 0, channel)) + ShippingCharged(order, channel)) * (1 + channel.SalesTax.Rate);

    /// <summary>The sum of what the lines record; null if none does.</summary>
    public static decimal? Recorded(SoldOrder order, Func<Movement, decimal?> part)
    {
        decimal? sum = null;
        foreach (var line in order.Lines)
            if (part(line.Line) is { } own)
                sum = (sum ?? 0) + own;
        return sum;
    }

    private static OrderCosts Costs(SoldOrder order, Channel channel, decimal[] values)
    {
        var (value, charged) = (values.Sum(), ShippingCharged(order, channel));
        var perPiece = channel.Stall is { } stall ? channel.CostPerPiece + stall.Cost / stall.Pieces : channel.CostPerPiece;
        return new OrderCosts(value, charged, Recorded(order, line => line.ShippingCost) ?? channel.Shipping.Cost,
            Recorded(order, line => line.Fees) ?? Fees(channel, value, charged), perPiece);
    }

    private static decimal ShippingCharged(SoldOrder order, Channel channel) =>
        Sale.BeforeTaxOf(Recorded(order, line => line.ShippingCharged) ?? channel.Shipping.Charged, channel);

    private static decimal Fees(Channel channel, decimal value, decimal shipping) => channel.Fees.Sum(fee =>
    {
        var paid = (value + shipping) * (1 + channel.SalesTax.Rate);
        var on = fee.Of switch { FeeBase.Price => value, FeeBase.PriceAndShipping => value + shipping, _ => paid };
        var amount = decimal.Max(fee.Rate * on + fee.Fixed, fee.Minimum ?? 0);
        return fee.Maximum is { } maximum ? decimal.Min(maximum, amount) : amount;
    });

    private readonly record struct OrderCosts(decimal Value, decimal ShippingCharged, decimal Shipping, decimal Fees, decimal PerPiece);
}
