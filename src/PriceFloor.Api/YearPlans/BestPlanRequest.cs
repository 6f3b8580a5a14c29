using System.Collections.Immutable;
using System.ComponentModel.DataAnnotations;
using FluentValidation;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;

namespace PriceFloor.Api.YearPlans;

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

    /// <summary>
    /// Seasons by name, as in a plan: twelve weights of at least 0, one of them above 0; months are those of the profile's year. With them, or with
    /// work, what is sold by a month must be made by then.
    /// </summary>
    /// <example>{"gifts": [4, 5, 6, 6, 8, 6, 5, 5, 7, 10, 19, 19]}</example>
    [MaxLength(Limits.Seasons), Quantity]
    public IReadOnlyDictionary<string, IReadOnlyList<decimal>> Seasons { get; init; } =
        ImmutableSortedDictionary<string, IReadOnlyList<decimal>>.Empty;

    /// <summary>How the year's bench hours are spread over its months, as in a plan. Absent: evenly.</summary>
    /// <example>[4, 4, 4, 4, 4, 4, 3, 2.5, 4, 4.5, 4.5, 3.5]</example>
    [MaxLength(Limits.Lines), Quantity]
    public IReadOnlyList<decimal>? Work { get; init; }

    /// <summary>The largest surplus, or the fewest bench hours that still close the year.</summary>
    public MixGoal Goal { get; init; } = MixGoal.MaximumSurplus;

    /// <summary>What the year should leave beyond the need.</summary>
    public Surplus? Surplus { get; init; }

    /// <summary>Bench hours kept for one-off work that is not in the lines.</summary>
    /// <example>100</example>
    [Quantity]
    public decimal HoursKeptBack { get; init; }
}

/// <summary>No minimum is above its maximum, and a line's season is there.</summary>
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
        RuleFor(request => request).Custom((request, context) => context.AddAll(PlanRules
            .SeasonFaults(request.Seasons, request.Work, (request.Lines ?? []).Select(line => line?.Season))
            .Where(fault => context.IsSound(fault.Pointer))));
    }
}
