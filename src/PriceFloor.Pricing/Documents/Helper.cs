using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>Paid hands at the bench.</summary>
public sealed record Helper
{
    /// <summary>A name for people.</summary>
    /// <example>Saturday help</example>
    [MaxLength(Documents.Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Hours at the bench in the year.</summary>
    /// <example>120</example>
    [Quantity]
    public required decimal BenchHoursPerYear { get; init; }
}
