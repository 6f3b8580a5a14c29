using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Api.Quotes;

/// <summary>A draft of a changed offer, made from an issued quote.</summary>
public sealed record QuoteReviseRequest
{
    /// <summary>Key of the new quote.</summary>
    /// <example>Q-2027-014-2</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string As { get; init; }
}
