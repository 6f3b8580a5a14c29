using System.ComponentModel.DataAnnotations;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.YearPlans;

/// <summary>A design on a channel, and how many of it may be made.</summary>
public sealed record BestLineRequest : ISaleLine
{
    /// <summary>Key or alias of a stored design.</summary>
    /// <example>RB-014</example>
    [MaxLength(Limits.AliasLength)]
    public required string Sku { get; init; }

    /// <summary>Key of a stored channel.</summary>
    /// <example>web</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Channel { get; init; }

    /// <summary>The price in the channel's currency; the listed one if absent.</summary>
    /// <example>120.00</example>
    [Price(Above = true)]
    public decimal? Price { get; init; }

    /// <summary>Whole pieces that must be made, such as standing orders.</summary>
    /// <example>50</example>
    [Pieces]
    public decimal Minimum { get; init; }

    /// <summary>Whole pieces that the market takes; any number if absent.</summary>
    /// <example>400</example>
    [Pieces]
    public decimal? Maximum { get; init; }

    /// <summary>The name of one of the seasons. Absent: sold evenly over the year.</summary>
    /// <example>gifts</example>
    [MaxLength(Limits.NameLength)]
    public string? Season { get; init; }
}
