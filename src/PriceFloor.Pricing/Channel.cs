using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing;

/// <summary>Whom a channel sells to.</summary>
public enum Sells { Retail, Wholesale }

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
    [MaxLength(3)]
    public required string Currency { get; init; }

    /// <summary>The share of the price before sales tax that a shop or gallery keeps.</summary>
    /// <example>0.4</example>
    [Share]
    public decimal ShopShare { get; init; }

    /// <summary>What is charged on each order.</summary>
    [MaxLength(Limits.Fees)]
    public IReadOnlyList<Fee> Fees { get; init; } = [];

    /// <summary>VAT or sales tax.</summary>
    public SalesTax SalesTax { get; init; } = new();

    /// <summary>Shipping, for each order.</summary>
    public Shipping Shipping { get; init; } = new();

    /// <summary>Average pieces in one order. At least 1.</summary>
    /// <example>1.4</example>
    [Quantity(Least = "1")]
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
}

/// <summary>What a fee's rate is taken of.</summary>
public enum FeeBase { Price, PriceAndShipping, Paid }

/// <summary>A fee on each order: rate times its base plus a fixed amount, kept between minimum and maximum.</summary>
public sealed record Fee
{
    /// <summary>A name for people.</summary>
    /// <example>card</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>The rate.</summary>
    /// <example>0.029</example>
    [Share]
    public decimal Rate { get; init; }

    /// <summary>A fixed amount an order.</summary>
    /// <example>0.30</example>
    [Money]
    public decimal Fixed { get; init; }

    /// <summary>"price" and "price-and-shipping" are before sales tax; "paid" is all that the buyer pays.</summary>
    public FeeBase Of { get; init; } = FeeBase.Price;

    /// <summary>The fee is never less.</summary>
    /// <example>0.20</example>
    [Money]
    public decimal? Minimum { get; init; }

    /// <summary>The fee is never more.</summary>
    /// <example>50.00</example>
    [Money]
    public decimal? Maximum { get; init; }
}

/// <summary>VAT or sales tax on the channel.</summary>
public sealed record SalesTax
{
    /// <summary>The rate.</summary>
    /// <example>0.2</example>
    [Share]
    public decimal Rate { get; init; }

    /// <summary>True where listed prices hold the tax already; false where it is added on top.</summary>
    public bool Included { get; init; }
}

/// <summary>Shipping for one order.</summary>
public sealed record Shipping
{
    /// <summary>What the buyer pays for it.</summary>
    /// <example>5.00</example>
    [Money]
    public decimal Charged { get; init; }

    /// <summary>What it costs.</summary>
    /// <example>6.20</example>
    [Money]
    public decimal Cost { get; init; }

    /// <summary>What a return costs.</summary>
    /// <example>6.20</example>
    [Money]
    public decimal ReturnCost { get; init; }
}

/// <summary>A stall, a fair, an open studio.</summary>
public sealed record Stall
{
    /// <summary>What taking part costs.</summary>
    /// <example>180.00</example>
    [Money]
    public decimal Cost { get; init; }

    /// <summary>Pieces that it usually sells; above 0.</summary>
    /// <example>30</example>
    [Quantity(Above = true)]
    public required decimal Pieces { get; init; }
}

/// <summary>Pieces that come back.</summary>
public sealed record Returns
{
    /// <summary>The share of sales that is returned; at most 0.9999.</summary>
    /// <example>0.03</example>
    [Share(Most = "0.9999")]
    public decimal Share { get; init; }

    /// <summary>Of the returned pieces, the share that can be sold again.</summary>
    /// <example>0.8</example>
    [Share]
    public decimal ResaleShare { get; init; }

    /// <summary>Whether the fees come back with the piece.</summary>
    public bool FeesRefunded { get; init; }
}
