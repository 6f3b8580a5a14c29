using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// One price on one channel: what the buyer pays and what of it reaches the studio, for each piece that leaves for good. Unrounded.
/// </summary>
public sealed class Sale
{
    private readonly SaleFormulas<Figure> _formulas;

    private Sale(decimal price, Channel channel) => (Channel, _formulas) = (channel, new SaleFormulas<Figure>(price, channel));

    public Channel Channel { get; }

    /// <summary>p, as listed.</summary>
    public decimal Price => _formulas.Price.Value;

    /// <summary>x0: the listed price before sales tax.</summary>
    public decimal BeforeTax => _formulas.BeforeTax.Value;

    /// <summary>x: what is paid on average, before sales tax: 58.00 with a usual discount of 5 % is 55.10.</summary>
    public decimal AfterDiscount => _formulas.AfterDiscount.Value;

    /// <summary>S: shipping charged an order, before tax.</summary>
    public decimal ShippingCharged => _formulas.ShippingCharged.Value;

    /// <summary>All that the buyer pays for an order.</summary>
    public decimal Paid => _formulas.Paid.Value;

    /// <summary>Each fee on an order.</summary>
    public IReadOnlyList<decimal> Fees => Array.ConvertAll(_formulas.Fees, fee => fee.Value);

    /// <summary>All fees on an order.</summary>
    public decimal AllFees => _formulas.AllFees.Value;

    /// <summary>Packing and the stall's share, a piece.</summary>
    public decimal PerPieceCosts => _formulas.PerPieceCosts.Value;

    /// <summary>g: kept of a sale that stays sold, a piece.</summary>
    public decimal Keep => _formulas.Keep.Value;

    /// <summary>c: lost on a sale that comes back, a piece.</summary>
    public decimal Lost => _formulas.Lost.Value;

    /// <summary>
    /// What buyers pay before sales tax and do not get back, for each piece that leaves for good. 100.00, of which one
    /// in ten comes back and is lost: 90.00.
    /// </summary>
    public decimal Revenue => _formulas.Revenue.Value;

    /// <summary>The net if no piece that is handed over were lost.</summary>
    public decimal BeforeLosses => _formulas.BeforeLosses.Value;

    /// <summary>net(p): what reaches the studio a piece. 58.00 in a gallery that keeps 40 %: 34.80.</summary>
    public decimal Net => _formulas.Net.Value;

    /// <summary>The sale at a listed price of a channel whose shape is valid.</summary>
    public static Sale Of(decimal price, Channel channel) => new(price, channel);

    /// <summary>x0 of a listed price: 120.00 with 20 % included is 100.00.</summary>
    public static decimal BeforeTaxOf(decimal price, Channel channel) => SalesTaxFormulas<Figure>.BeforeTax(price, channel.SalesTax).Value;

    /// <summary>x of a listed price: the same less the usual discount.</summary>
    public static decimal AfterDiscountOf(decimal price, Channel channel) => BeforeTaxOf(price, channel) * (1 - channel.UsualDiscount);

    /// <summary>The listed price of an x0.</summary>
    public static decimal ListedOf(decimal beforeTax, Channel channel) => SalesTaxFormulas<Figure>.Listed(beforeTax, channel.SalesTax).Value;

    /// <summary>The listed price of an x.</summary>
    public static decimal ListedBeforeDiscount(decimal afterDiscount, Channel channel) =>
        ListedOf(channel.UsualDiscount == 0 ? afterDiscount : afterDiscount / (1 - channel.UsualDiscount), channel);

    /// <summary>The sale at an x.</summary>
    internal static Sale AfterDiscountAt(decimal afterDiscount, Channel channel) => new(ListedBeforeDiscount(afterDiscount, channel), channel);
}
