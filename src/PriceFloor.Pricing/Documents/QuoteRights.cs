using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>What the client of a quote may do with the design.</summary>
public sealed record QuoteRights
{
    /// <summary>In words, as the client reads them.</summary>
    /// <example>one year, shop display</example>
    [MaxLength(1000)]
    public required string Text { get; init; }

    /// <summary>What they cost, in the profile's currency: added as it is.</summary>
    /// <example>0.00</example>
    [Money]
    public decimal Amount { get; init; }
}
