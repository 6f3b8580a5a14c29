using System.ComponentModel.DataAnnotations;
using FluentValidation;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
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

/// <summary>What should the year be made of?</summary>
public sealed record BestPlanRequest
{
    /// <summary>Key of the cost profile whose year is planned.</summary>
    /// <example>main</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public required string Profile { get; init; }

    /// <summary>What may be made and sold in the year.</summary>
    [MinLength(1), MaxLength(Limits.Lines)]
    public required IReadOnlyList<BestLineRequest> Lines { get; init; }

    /// <summary>The largest surplus, or the fewest bench hours that still close the year.</summary>
    public MixGoal Goal { get; init; } = MixGoal.MaximumSurplus;

    /// <summary>What the year should leave beyond the need.</summary>
    public Surplus? Surplus { get; init; }

    /// <summary>Bench hours kept for one-off work that is not in the lines.</summary>
    /// <example>100</example>
    [Quantity]
    public decimal HoursKeptBack { get; init; }
}

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
}

/// <summary>No minimum is above its maximum.</summary>
public sealed class BestPlanRequestValidator : AbstractValidator<BestPlanRequest>
{
    public BestPlanRequestValidator()
    {
        RuleFor(request => request.Lines).Custom((lines, context) =>
        {
            foreach (var (index, line) in (lines ?? []).Index())
                if (line?.Minimum > line?.Maximum && context.IsSound($"/lines/{index}/minimum", $"/lines/{index}/maximum"))
                    context.Add($"lines/{index}/minimum", InputCodes.AboveMaximum, "The minimum is above the maximum; lower one or raise the other.");
        });
    }
}
