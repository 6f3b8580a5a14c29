using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Orders;

/// <summary>
/// What of an order reached the studio: fees and shipping as recorded, else by the channel's terms at what was paid, shared by value. Nothing is
/// taken
/// off for returns and losses: the log has those that there were.
/// </summary>
internal static class OrderNet
{
    public static void Share(SoldOrder order)
    {
        var (lines, channel) = (order.Lines, order.Terms);
        var costs = Costs(order, channel);
        if (lines is [var only])
        {
            only.Net = costs.Value * (1 - channel.ShopShare) + costs.ShippingCharged - costs.Shipping - costs.Fees
                - only.Line.Pieces * costs.PerPiece;
            return;
        }

        var byPieces = costs.Value == 0;
        decimal all = byPieces ? order.Pieces : costs.Value;
        foreach (var line in lines)
        {
            var (value, pieces) = (Value(line.Line, channel), line.Line.Pieces);
            var weight = byPieces ? pieces : value;
            line.Net = value * (1 - channel.ShopShare) + costs.ShippingCharged * weight / all - costs.Shipping * weight / all
                - costs.Fees * weight / all - pieces * costs.PerPiece;
        }
    }

    /// <summary>The fees of an order by the channel's terms.</summary>
    public static decimal ExpectedFees(SoldOrder order, Channel channel) =>
        Fees(channel, Value(order, channel), ShippingCharged(order, channel));

    /// <summary>All that the buyer paid for an order.</summary>
    public static decimal Paid(SoldOrder order, Channel channel) =>
        (Value(order, channel) + ShippingCharged(order, channel)) * (1 + channel.SalesTax.Rate);

    /// <summary>The sum of what the lines record; null if none does.</summary>
    public static decimal? Recorded(SoldOrder order, Func<Movement, decimal?> part)
    {
        decimal? sum = null;
        for (var i = 0; i < order.Lines.Count; i++)
            if (part(order.Lines[i].Line) is { } own)
                sum = (sum ?? 0) + own;
        return sum;
    }

    private static OrderCosts Costs(SoldOrder order, Channel channel)
    {
        var (value, charged) = (Value(order, channel), ShippingCharged(order, channel));
        var perPiece = channel.Stall is { } stall ? channel.CostPerPiece + stall.Cost / stall.Pieces : channel.CostPerPiece;
        return new OrderCosts(value, charged, Recorded(order, line => line.ShippingCost) ?? channel.Shipping.Cost,
            Recorded(order, line => line.Fees) ?? Fees(channel, value, charged), perPiece);
    }

    private static decimal Value(SoldOrder order, Channel channel)
    {
        var value = 0m;
        for (var i = 0; i < order.Lines.Count; i++)
            value += Value(order.Lines[i].Line, channel);
        return value;
    }

    private static decimal Value(Movement line, Channel channel) => Sale.BeforeTaxOf(line.Paid ?? 0, channel);

    private static decimal ShippingCharged(SoldOrder order, Channel channel) =>
        Sale.BeforeTaxOf(Recorded(order, line => line.ShippingCharged) ?? channel.Shipping.Charged, channel);

    private static decimal Fees(Channel channel, decimal value, decimal shipping)
    {
        var (paid, fees) = ((value + shipping) * (1 + channel.SalesTax.Rate), 0m);
        foreach (var fee in channel.Fees)
        {
            var on = fee.Of switch { FeeBase.Price => value, FeeBase.PriceAndShipping => value + shipping, _ => paid };
            var amount = decimal.Max(fee.Rate * on + fee.Fixed, fee.Minimum ?? 0);
            fees += fee.Maximum is { } maximum ? decimal.Min(maximum, amount) : amount;
        }

        return fees;
    }

    private readonly record struct OrderCosts(decimal Value, decimal ShippingCharged, decimal Shipping, decimal Fees, decimal PerPiece);
}
