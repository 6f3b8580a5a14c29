using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// The most that may be taken off a listed price, instead of the channel's usual discount, so that the sale still carries its share. 58.00 when
/// 46.40 must be paid: 20 %.
/// </summary>
public sealed class DiscountRoom
{
    private const decimal Step = 0.001m, Most = 0.999m;

    private DiscountRoom(decimal share, Sale sale) => (Share, Sale) = (share, sale);

    /// <summary>The share of the listed price, on the grid of 0.001; at most 0.999.</summary>
    public decimal Share { get; }

    /// <summary>The sale with that much taken off.</summary>
    public Sale Sale { get; }

    /// <summary>Null if the price does not carry its share even with nothing taken off.</summary>
    public static DiscountRoom? Of(PriceCheck check)
    {
        var (prices, price) = (check.Prices, check.Sale.Price);
        var floor = prices.ChannelFloor.Floor;
        var least = prices.Terms.LeastAfterDiscount(floor);
        var near = decimal.Min(Most, Rounding.Down((1 - least / check.Sale.BeforeTax) / Step, 0) * Step);
        for (var share = decimal.Min(Most, decimal.Max(0, near) + Step); share >= 0 && share >= near - Step; share -= Step)
            if (Sale.Of(price, prices.Terms.Channel with { UsualDiscount = share }) is var sale && sale.Net.Reaches(floor))
                return new DiscountRoom(share, sale);
        return null;
    }
}
