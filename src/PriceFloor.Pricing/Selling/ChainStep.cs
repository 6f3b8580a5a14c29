using PriceFloor.Pricing.Documents;

namespace PriceFloor.Pricing.Selling;

/// <summary>One hand on the way from maker to buyer: exactly one of markup, margin and multiple.</summary>
public sealed record ChainStep
{
    /// <summary>A name for people.</summary>
    /// <example>shop</example>
    [System.ComponentModel.DataAnnotations.MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Profit over cost: 1 doubles the price.</summary>
    /// <example>1</example>
    [Share(Maximum = "1000000")]
    public decimal? Markup { get; init; }

    /// <summary>Profit over price; below 1.</summary>
    /// <example>0.5</example>
    [Share(Maximum = "0.9999")]
    public decimal? Margin { get; init; }

    /// <summary>The price is so many times the cost; above 0.</summary>
    /// <example>2</example>
    [Quantity(Above = true)]
    public decimal? Multiple { get; init; }
}
