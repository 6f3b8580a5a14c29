using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>What others do or sell for a quote: an <c>amount</c>, or a <c>distance</c> at a <c>rate</c>.</summary>
public sealed record QuoteBought
{
    /// <summary>What it is.</summary>
    /// <example>Engraver</example>
    [MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Money in all, in the profile's currency.</summary>
    /// <example>180.00</example>
    [Money]
    public decimal? Amount { get; init; }

    /// <summary>Miles or kilometres in all, with <c>rate</c>.</summary>
    /// <example>84</example>
    [Quantity]
    public decimal? Distance { get; init; }

    /// <summary>Money for one of them.</summary>
    /// <example>0.70</example>
    [Money]
    public decimal? Rate { get; init; }
}
