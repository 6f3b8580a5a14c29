using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>A later payment of a quote.</summary>
public sealed record QuotePayment
{
    /// <summary>When it is due, as the client reads it.</summary>
    /// <example>delivery</example>
    [MaxLength(Limits.NameLength)]
    public required string When { get; init; }

    /// <summary>Share of the price.</summary>
    /// <example>0.6</example>
    [Share]
    public required decimal Share { get; init; }
}
