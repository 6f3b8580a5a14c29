using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>An order with work made for it, offered to one client.</summary>
public sealed record Quote : QuoteTerms
{
    /// <summary>Key of the cost profile that the work must carry.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Profile { get; init; }

    /// <summary>Key of the channel that it is sold on.</summary>
    /// <example>web</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Channel { get; init; }
}
