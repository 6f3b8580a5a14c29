using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>A fee on each order: rate times its base plus a fixed amount, kept between minimum and maximum.</summary>
public sealed record Fee
{
    /// <summary>A name for people.</summary>
    /// <example>card</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>The rate.</summary>
    /// <example>0.024</example>
    [Share]
    public decimal Rate { get; init; }

    /// <summary>A fixed amount an order.</summary>
    /// <example>0.25</example>
    [Money]
    public decimal Fixed { get; init; }

    /// <summary>"price" and "price-and-shipping" are before sales tax; "paid" is all that the buyer pays.</summary>
    public FeeBase Of { get; init; } = FeeBase.Price;

    /// <summary>The fee is never less.</summary>
    /// <example>0.18</example>
    [Money]
    public decimal? Minimum { get; init; }

    /// <summary>The fee is never more.</summary>
    /// <example>50.00</example>
    [Money]
    public decimal? Maximum { get; init; }
}

/// <summary>What a fee's rate is taken of.</summary>
public enum FeeBase { Price, PriceAndShipping, Paid }
