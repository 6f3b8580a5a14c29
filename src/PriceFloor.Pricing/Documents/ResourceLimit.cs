using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>What else is scarce.</summary>
public sealed record ResourceLimit
{
    /// <summary>The name that steps use.</summary>
    /// <example>kiln</example>
    [MaxLength(Documents.Limits.KeyLength)]
    public required string Name { get; init; }

    /// <summary>Loads in a year.</summary>
    /// <example>240</example>
    [Quantity]
    public required decimal LoadsPerYear { get; init; }
}
