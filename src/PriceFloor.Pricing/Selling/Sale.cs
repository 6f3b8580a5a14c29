using PriceFloor.Pricing.Documents;

namespace PriceFloor.Pricing.Selling;

/// <summary>One price on one channel: what the buyer pays and what of it reaches the studio, for each piece that leaves for good. Unrounded.</summary>
public sealed class Sale
{
    private Sale(decimal price, decimal beforeTax, Channel channel)
    {
        Price = price;
        BeforeTax = beforeTax;
        var v = channel.SalesTax.Rate;
        var n = channel.PiecesPerOrder;
        ShippingCharged = channel.SalesTax.Included ? channel.Shipping.Charged / (1 + v) : channel.Shipping.Charged;
        Paid = (n * beforeTax + ShippingCharged) * (1 + v);
        Fees = channel.Fees.Select(fee => FeeOn(fee, channel)).ToArray();

        var fees = Fees.Sum();
        PerPieceCosts = channel.CostPerPiece + (channel.Stall is { } stall ? stall.Cost / stall.Pieces : 0);
        Keep = beforeTax * (1 - channel.ShopShare) + (ShippingCharged - channel.Shipping.Cost - fees) / n - PerPieceCosts;
        Lost = (channel.Returns.FeesRefunded ? 0 : fees) / n + (channel.Shipping.Cost + channel.Shipping.ReturnCost) / n + PerPieceCosts;
        var q = channel.Returns.Share;
        Revenue = beforeTax * (1 - q) / (1 - q * channel.Returns.ResaleShare);
        Net = ((1 - q) * Keep - q * Lost) / (1 - q * channel.Returns.ResaleShare);
    }

    /// <summary>p, as listed.</summary>
    public decimal Price { get; }

    /// <summary>x: the price before sales tax.</summary>
    public decimal BeforeTax { get; }

    /// <summary>S: shipping charged an order, before tax.</summary>
    public decimal ShippingCharged { get; }

    /// <summary>All that the buyer pays for an order.</summary>
    public decimal Paid { get; }

    /// <summary>Each fee on an order.</summary>
    public IReadOnlyList<decimal> Fees { get; }

    /// <summary>Packing and the stall's share, a piece.</summary>
    public decimal PerPieceCosts { get; }

    /// <summary>g: kept of a sale that stays sold, a piece.</summary>
    public decimal Keep { get; }

    /// <summary>c: lost on a sale that comes back, a piece.</summary>
    public decimal Lost { get; }

    /// <summary>What buyers pay before sales tax and do not get back, for each piece that leaves for good. 100.00, of which one in ten comes back and is lost: 90.00.</summary>
    public decimal Revenue { get; }

    /// <summary>net(p): what reaches the studio a piece. 58.00 in a gallery that keeps 40 %: 34.80.</summary>
    public decimal Net { get; }

    /// <summary>The sale at a listed price of a channel whose shape is valid.</summary>
    public static Sale Of(decimal price, Channel channel) => new(price, BeforeTaxOf(price, channel), channel);

    /// <summary>x of a listed price: 120.00 with 20 % included is 100.00.</summary>
    public static decimal BeforeTaxOf(decimal price, Channel channel) =>
        channel.SalesTax.Included ? price / (1 + channel.SalesTax.Rate) : price;

    /// <summary>The listed price of an x.</summary>
    public static decimal ListedOf(decimal beforeTax, Channel channel) =>
        channel.SalesTax.Included ? beforeTax * (1 + channel.SalesTax.Rate) : beforeTax;

    internal static Sale BeforeTaxAt(decimal beforeTax, Channel channel) => new(ListedOf(beforeTax, channel), beforeTax, channel);

    private decimal FeeOn(Fee fee, Channel channel)
    {
        var raw = fee.Rate * BaseOf(fee, channel) + fee.Fixed;
        var atLeast = decimal.Max(fee.Minimum ?? raw, raw);
        return decimal.Min(fee.Maximum ?? atLeast, atLeast);
    }

    private decimal BaseOf(Fee fee, Channel channel) => fee.Of switch
    {
        FeeBase.Price => channel.PiecesPerOrder * BeforeTax,
        FeeBase.PriceAndShipping => channel.PiecesPerOrder * BeforeTax + ShippingCharged,
        _ => Paid,
    };
}
