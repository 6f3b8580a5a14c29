using System.ComponentModel.DataAnnotations;
using PriceFloor.Api.PriceChecks;

namespace PriceFloor.Api.YearPlans;

/// <summary>A year with a number of pieces of each design: does it close?</summary>
public sealed record YearPlanRequest
{
    /// <summary>Key of the cost profile whose year is planned.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Profile { get; init; }

    /// <summary>What is made and sold in the year.</summary>
    [MinLength(1), MaxLength(Limits.Lines)]
    public required IReadOnlyList<PlanLineRequest> Lines { get; init; }

    /// <summary>What the year should leave beyond the need.</summary>
    public Surplus? Surplus { get; init; }

    /// <summary>Bench hours kept for one-off work that is not in the lines.</summary>
    /// <example>100</example>
    [Quantity]
    public decimal HoursKeptBack { get; init; }
}

/// <summary>A number of pieces of a design on a channel.</summary>
public sealed record PlanLineRequest : ISaleLine
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

    /// <summary>Whole pieces sold in the year.</summary>
    /// <example>520</example>
    [Pieces]
    public required decimal Units { get; init; }
}
