using System.ComponentModel.DataAnnotations;

namespace PriceFloor.Api.Plans;

/// <summary>What of a planned year has been sold through a day.</summary>
public sealed record PlanProgressRequest
{
    /// <summary>The last day that has passed, within the profile's year.</summary>
    /// <example>2027-08-31</example>
    public required DateOnly Through { get; init; }

    /// <summary>What was sold in the year so far, by design and channel.</summary>
    [MaxLength(Limits.Lines)]
    public IReadOnlyList<SoldRequest> Sold { get; init; } = [];
}

/// <summary>Pieces of a design that were sold on a channel.</summary>
public sealed record SoldRequest
{
    /// <summary>Key or alias of a stored design.</summary>
    /// <example>RB-014</example>
    [MaxLength(Limits.AliasLength)]
    public required string Sku { get; init; }

    /// <summary>Key of a stored channel.</summary>
    /// <example>web</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Channel { get; init; }

    /// <summary>Pieces that stayed sold. A fraction may stand for the month that is running.</summary>
    /// <example>54</example>
    [Quantity]
    public required decimal Units { get; init; }

    /// <summary>
    /// What reached the studio a piece, after fees, postage and the shop's share. Absent: as at the plan's price, or at the listed one for what is
    /// not in the plan.
    /// </summary>
    /// <example>53.10</example>
    [Money(Minimum = "-1000000000000")]
    public decimal? Net { get; init; }
}
