using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Pricing.Documents;

/// <summary>Pieces of a design that are sold on a channel in the year.</summary>
public sealed record PlanLine
{
    /// <summary>Key or alias of a stored design; the key is stored.</summary>
    /// <example>RB-014</example>
    [MaxLength(Limits.AliasLength)]
    public required string Sku { get; init; }

    /// <summary>Key of a stored channel.</summary>
    /// <example>web</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Channel { get; init; }

    /// <summary>The price in the channel's currency. Absent: the listed one, as it is when the plan is computed.</summary>
    /// <example>58.00</example>
    [Price(Above = true)]
    public decimal? Price { get; init; }

    /// <summary>Whole pieces sold in the year.</summary>
    /// <example>120</example>
    [Pieces]
    public required decimal Units { get; init; }

    /// <summary>The name of one of the plan's seasons. Absent: evenly over the year.</summary>
    /// <example>gifts</example>
    [MaxLength(Limits.NameLength)]
    public string? Season { get; init; }
}
