using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.YearPlans;

/// <summary>Whether a year closes, by how much, and what it takes. Money in the profile's currency.</summary>
public sealed record YearPlanAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>Whether the contributions of the lines carry the whole year.</summary>
    public required bool Closes { get; init; }

    /// <summary>The surplus before tax, rounded down; 0 if the year does not close.</summary>
    /// <example>2400.00</example>
    public required decimal SurplusBeforeTax { get; init; }

    /// <summary>The part of it that is left after tax on the larger profit, rounded down; 0 if the year does not close.</summary>
    /// <example>1800.00</example>
    public required decimal SurplusAfterTax { get; init; }

    /// <summary>What is missing before tax, rounded up; 0 if the year closes.</summary>
    public required decimal Shortfall { get; init; }

    /// <summary>What bench time must recover, a wanted surplus included; rounded up.</summary>
    public required decimal BenchMustEarn { get; init; }

    /// <summary>What all lines leave for it.</summary>
    public required decimal Contribution { get; init; }

    /// <summary>What buyers pay before sales tax and do not get back.</summary>
    public required decimal Revenue { get; init; }

    /// <summary>The part of it that reaches the studio.</summary>
    public required decimal Proceeds { get; init; }

    /// <summary>Bench hours of the plan, up to four decimals.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>Hours of selling that the plan takes, up to four decimals.</summary>
    /// <example>139</example>
    public required decimal SellingHours { get; init; }

    /// <summary>The stalls that the plan takes on each channel with one.</summary>
    public required IReadOnlyList<StallsNeededAnswer> StallsNeeded { get; init; }

    /// <summary>Whether the hours, the stalls and every limited thing are enough: a plan that closes but cannot be made does not help.</summary>
    public required bool WithinLimits { get; init; }

    /// <summary>
    /// The bench hours, every scarce thing, the hours of selling if the calendar has a sellingShare, and what the stalls sell where timesAYear says
    /// how many there are.
    /// </summary>
    public required IReadOnlyList<PlanLimitAnswer> Limits { get; init; }

    /// <summary>The lines in the order of the request.</summary>
    public required IReadOnlyList<PlanLineAnswer> Lines { get; init; }

    /// <summary>Materials used and materials bought.</summary>
    public required MaterialSpendAnswer MaterialSpend { get; init; }

    /// <summary>For a best plan: how it was found.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public BestAnswer? Best { get; init; }

    /// <summary>The revisions that the answer rests on: the profile, then each line's design and channel.</summary>
    public required IReadOnlyDictionary<string, object> Basis { get; init; }

    /// <summary>Defaults that the answer rests on and that make it too generous.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity of the year and of the plan.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}

/// <summary>Stalls that a plan takes on one channel.</summary>
public sealed record StallsNeededAnswer
{
    /// <summary>Key of the channel.</summary>
    /// <example>fair</example>
    public required string Channel { get; init; }

    /// <summary>Whole stalls: all pieces sold there over what a stall usually sells, rounded up.</summary>
    /// <example>5</example>
    [WholeNumber]
    public required decimal Stalls { get; init; }

    /// <summary>How many there are in the year; null if the channel does not say.</summary>
    /// <example>6</example>
    public decimal? TimesAYear { get; init; }
}

/// <summary>What the plan uses of materials beside what the profile says is bought.</summary>
public sealed record MaterialSpendAnswer
{
    /// <summary>Materials of all lines.</summary>
    public required decimal Planned { get; init; }

    /// <summary>The profile's expenses traced to pieces, a year.</summary>
    public required decimal Bought { get; init; }

    /// <summary>Bought less planned; negative if the plan uses more than is bought.</summary>
    public required decimal Difference { get; init; }
}

/// <summary>How a best plan was found.</summary>
public sealed record BestAnswer
{
    /// <summary>The goal.</summary>
    public required MixGoal Goal { get; init; }

    /// <summary>Whether no plan can be better. False only where a very large question used up the search's fixed number of steps.</summary>
    public required bool Proven { get; init; }

    /// <summary>If it is not proven: no plan reaches more than this surplus (or fewer hours than this).</summary>
    /// <example>45445.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Bound { get; init; }
}
