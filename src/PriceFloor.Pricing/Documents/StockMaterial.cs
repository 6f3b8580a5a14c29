using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>A line of the stock price list.</summary>
public sealed record StockMaterial
{
    /// <summary>The name that designs use.</summary>
    /// <example>clear-rod</example>
    [MaxLength(Documents.Limits.KeyLength)]
    public required string Material { get; init; }

    /// <summary>What it is counted in.</summary>
    /// <example>kg</example>
    [MaxLength(Documents.Limits.KeyLength)]
    public string? Unit { get; init; }

    /// <summary>The price of one unit, in the profile's currency.</summary>
    /// <example>38.00</example>
    [Money]
    public required decimal Price { get; init; }
}
