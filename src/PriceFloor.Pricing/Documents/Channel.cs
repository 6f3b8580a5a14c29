using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>A way of selling and everything it takes: own web shop, marketplace, fair, gallery on consignment, wholesale order.</summary>
public sealed record Channel
{
    /// <summary>A name for people.</summary>
    /// <example>Own web shop</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>"retail" to people who keep the piece, "wholesale" to shops that sell it on.</summary>
    public required Sells Sells { get; init; }

    /// <summary>ISO 4217 code of every amount in the channel and of the prices listed on it.</summary>
    /// <example>USD</example>
    [MaxLength(3), RegularExpression(Limits.CurrencyPattern)]
    public required string Currency { get; init; }

    /// <summary>The share of the price before sales tax that a shop or gallery keeps.</summary>
    /// <example>0.4</example>
    [Share]
    public decimal ShopShare { get; init; }

    /// <summary>The average share off the listed price over all sales: codes, sale weeks, terms. At most 0.9999.</summary>
    /// <example>0.05</example>
    [Share(Maximum = "0.9999")]
    public decimal UsualDiscount { get; init; }

    /// <summary>
    /// Of the pieces handed over, the share that is never paid for and never comes back: broken, stolen, shop-worn at a gallery.
    /// At most 0.9999.
    /// </summary>
    /// <example>0.03</example>
    [Share(Maximum = "0.9999")]
    public decimal LossShare { get; init; }

    /// <summary>The work of selling here.</summary>
    public SellingTime Selling { get; init; } = new();

    /// <summary>What is charged on each order.</summary>
    [MaxLength(Limits.Fees)]
    public IReadOnlyList<Fee> Fees { get; init; } = [];

    /// <summary>VAT or sales tax.</summary>
    public SalesTax SalesTax { get; init; } = new();

    /// <summary>Shipping, for each order.</summary>
    public Shipping Shipping { get; init; } = new();

    /// <summary>Average pieces in one order. At least 1.</summary>
    /// <example>1.4</example>
    [Quantity(Minimum = "1")]
    public decimal PiecesPerOrder { get; init; } = 1;

    /// <summary>Packing and the like, for each piece.</summary>
    /// <example>0.80</example>
    [Money]
    public decimal CostPerPiece { get; init; }

    /// <summary>A stall's cost over the pieces it usually sells.</summary>
    public Stall? Stall { get; init; }

    /// <summary>Pieces that come back.</summary>
    public Returns Returns { get; init; } = new();

    /// <summary>Allowed prices are whole steps plus <c>priceEnding</c>. Absent: the currency's minor unit.</summary>
    /// <example>1.00</example>
    [Price(Above = true)]
    public decimal? PriceStep { get; init; }

    /// <summary>What every allowed price ends in; below <c>priceStep</c>.</summary>
    /// <example>0.00</example>
    [Price]
    public decimal PriceEnding { get; init; }

    /// <summary>The smallest order that is taken here, as its total before sales tax: on line sheets, for buyers. No figure depends on it.</summary>
    /// <example>180.00</example>
    [Price(Above = true)]
    public decimal? MinimumOrder { get; init; }

    /// <summary>What else a buyer here must know, such as when to pay: on line sheets. No figure depends on it.</summary>
    /// <example>Paid within 30 days. What breaks in the post is replaced.</example>
    [MaxLength(Limits.OrderTermsLength)]
    public string? OrderTerms { get; init; }
}

/// <summary>Whom a channel sells to.</summary>
public enum Sells { Retail, Wholesale }
