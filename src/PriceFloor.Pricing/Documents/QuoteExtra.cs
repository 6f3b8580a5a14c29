using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>Hours of a quote beside its pieces: an hour not at the bench is an hour not at the bench.</summary>
public sealed record QuoteExtra
{
    /// <summary>What the client reads.</summary>
    /// <example>Design and drawing</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Hours in all.</summary>
    /// <example>6</example>
    [Quantity]
    public required decimal Hours { get; init; }

    /// <summary>A word for the maker's own use, such as "design-fee".</summary>
    /// <example>design-fee</example>
    [MaxLength(Limits.KeyLength)]
    public string? Kind { get; init; }
}
