using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.YearPlans;

/// <summary>One line of a year.</summary>
public sealed record PlanLineAnswer
{
    /// <summary>Key of the design.</summary>
    public required string Sku { get; init; }

    /// <summary>Key of the channel.</summary>
    public required string Channel { get; init; }

    /// <summary>The price that was asked about, or the listed one.</summary>
    public required decimal Price { get; init; }

    /// <summary>Whole pieces.</summary>
    [WholeNumber]
    public required decimal Units { get; init; }

    /// <summary>What the price does for the year.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>What reaches the studio for all of them.</summary>
    public required decimal Proceeds { get; init; }

    /// <summary>Materials for all of them.</summary>
    public required decimal Materials { get; init; }

    /// <summary>Bench hours for all of them, up to four decimals.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>What all of them leave for rent, living and tax.</summary>
    public required decimal Contribution { get; init; }

    /// <summary>The same for each hour at the bench.</summary>
    public required decimal ContributionPerBenchHour { get; init; }

    /// <summary>Its place in the order in which bench time should be given out when time is what is short; 1 is first.</summary>
    public required int Rank { get; init; }

    /// <summary>For a best plan: whether its own minimum or maximum holds it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LineBound? HeldBy { get; init; }
}

/// <summary>What keeps a line of a best plan from having fewer or more pieces.</summary>
public enum LineBound { Minimum, Maximum }

/// <summary>What a limit counts.</summary>
public enum LimitKind { BenchHours, Loads }

/// <summary>One limit of the year and what the plan takes of it.</summary>
public sealed record PlanLimitAnswer
{
    /// <summary>"hours", or the name of the scarce thing.</summary>
    public required string Name { get; init; }

    /// <summary>Bench hours, or loads of a scarce thing.</summary>
    public required LimitKind Kind { get; init; }

    /// <summary>What the plan takes, up to four decimals.</summary>
    public required decimal Used { get; init; }

    /// <summary>What the year has, hours kept back taken off; null where the profile sets no limit.</summary>
    public decimal? Available { get; init; }

    /// <summary>Whether it is enough.</summary>
    public required bool Within { get; init; }

    /// <summary>For a best plan: whether it keeps a better plan away.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? Binds { get; init; }

    /// <summary>For a best plan: what one more hour or load would add to the surplus (or, for the fewest hours, the hours it would save). Absent where it is not known for certain.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? WorthOfOneMore { get; init; }
}

/// <summary>What the plan uses of materials beside what the profile says is bought.</summary>
public sealed record MaterialSpendAnswer
{
    /// <summary>Materials of all lines.</summary>
    public required decimal Planned { get; init; }

    /// <summary>The profile's expenses traced to pieces, a year.</summary>
    public required decimal Bought { get; init; }

    /// <summary>Bought less planned; negative where the plan uses more than is bought.</summary>
    public required decimal Difference { get; init; }
}

/// <summary>How a best plan was found.</summary>
public sealed record BestAnswer
{
    /// <summary>What was looked for.</summary>
    public required MixGoal Goal { get; init; }

    /// <summary>Whether no plan can be better. False only where a very large question used up the search's fixed number of steps.</summary>
    public required bool Proven { get; init; }

    /// <summary>Where it is not proven: no plan reaches more than this surplus (or fewer hours than this).</summary>
    /// <example>45445.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Bound { get; init; }
}

/// <summary>Whether a year closes, by how much, and what it takes. Money in the profile's currency.</summary>
public sealed record YearPlanAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>Whether what the lines leave carries the whole year.</summary>
    public required bool Closes { get; init; }

    /// <summary>What is left over before tax, rounded down; 0 if the year does not close.</summary>
    /// <example>2400.00</example>
    public required decimal SurplusBeforeTax { get; init; }

    /// <summary>What of it is left once the larger profit is taxed too, rounded down; 0 if the year does not close.</summary>
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

    /// <summary>What of it reaches the studio.</summary>
    public required decimal Proceeds { get; init; }

    /// <summary>Bench hours of the plan, up to four decimals.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>Whether the hours and every limited thing are enough: a plan that closes but cannot be made does not help.</summary>
    public required bool WithinLimits { get; init; }

    /// <summary>The bench hours and every scarce thing.</summary>
    public required IReadOnlyList<PlanLimitAnswer> Limits { get; init; }

    /// <summary>The lines in the order of the request.</summary>
    public required IReadOnlyList<PlanLineAnswer> Lines { get; init; }

    /// <summary>Materials used beside materials bought.</summary>
    public required MaterialSpendAnswer MaterialSpend { get; init; }

    /// <summary>For a best plan: how it was found.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public BestAnswer? Best { get; init; }

    /// <summary>The revisions that the answer rests on: the profile, then each line's design and channel.</summary>
    public required IReadOnlyDictionary<string, object> Basis { get; init; }

    /// <summary>Defaults that the answer leaned on and that make it too kind.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity of the year and of the plan.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}
