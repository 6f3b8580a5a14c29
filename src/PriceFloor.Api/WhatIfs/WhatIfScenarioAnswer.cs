using System.Text.Json.Serialization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.WhatIfs;

/// <summary>One scenario beside what is stored.</summary>
public sealed record WhatIfScenarioAnswer
{
    /// <summary>Its name; the key of a stored one that has none.</summary>
    /// <example>rent +10 %</example>
    public required string? Name { get; init; }

    /// <summary>What sales must bring in over the year, rounded up.</summary>
    public required decimal RequiredRevenue { get; init; }

    /// <summary>What bench hours must bring in, rounded up.</summary>
    public required decimal BenchMustEarn { get; init; }

    /// <summary>Hours at the bench, up to four decimals.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>What a carrying hour must bring, rounded up.</summary>
    public required decimal PerBenchHour { get; init; }

    /// <summary>What reaches the household for each working hour.</summary>
    public required decimal TakeHomePerHour { get; init; }

    /// <summary>With a plan: its figures.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public WhatIfPlanAnswer? Plan { get; init; }

    /// <summary>With remedies: the smallest change of each kind that alone closes the plan after these changes; empty if it closes.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<PlanRemedyAnswer>? Remedies { get; init; }

    /// <summary>Each figure less the one of now, both as they are shown.</summary>
    public required WhatIfYearAnswer Differences { get; init; }

    /// <summary>How many listed prices have a lower verdict than now.</summary>
    [WholeNumber]
    public required decimal VerdictsFallen { get; init; }

    /// <summary>With from, notice or phases: what holding prices costs.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public HeldAnswer? Held { get; init; }

    /// <summary>With phases: the listed prices whose verdict fell, step by step up to those that give the old verdict back.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<PhaseAnswer>? Phased { get; init; }
}
