using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Api.PriceLists;

namespace PriceFloor.Api.WhatIfs;

/// <summary>The year and its prices now and in each scenario. Money in the profile's currency and with its decimals.</summary>
public sealed record WhatIfAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>The year as it is stored.</summary>
    public required WhatIfYearAnswer Now { get; init; }

    /// <summary>In the order of the request.</summary>
    public required IReadOnlyList<WhatIfScenarioAnswer> Scenarios { get; init; }

    /// <summary>All scenarios' changes together, in order; null if the request does not ask for it.</summary>
    public required WhatIfScenarioAnswer? Combined { get; init; }

    /// <summary>Prices, by design, then by channel.</summary>
    [JsonConverter(typeof(LongList<WhatIfLineAnswer>))]
    public required IReadOnlyList<WhatIfLineAnswer> List { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required WhatIfBasisAnswer Basis { get; init; }

    /// <summary>What may make the figures wrong; the pointer says in which scenario.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>Defaults of the stored profile that lower its figures.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }
}

/// <summary>The figures of a year that a what-if shows, as the requirement of a profile has them.</summary>
public sealed record WhatIfYearAnswer
{
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

    /// <summary>With remedies: the smallest change of each kind that alone closes the plan; empty if it closes.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<PlanRemedyAnswer>? Remedies { get; init; }
}

/// <summary>One design on one channel, now and in each scenario.</summary>
public sealed record WhatIfLineAnswer
{
    /// <summary>Key of the design.</summary>
    public required string Sku { get; init; }

    /// <summary>Key of the channel.</summary>
    public required string Channel { get; init; }

    /// <summary>The listed price; null if there is none.</summary>
    public required decimal? ListedPrice { get; init; }

    /// <summary>As it is stored.</summary>
    public required WhatIfPriceAnswer Now { get; init; }

    /// <summary>In the order of the request.</summary>
    public required IReadOnlyList<WhatIfScenarioPriceAnswer> Scenarios { get; init; }

    /// <summary>With combined: all scenarios' changes together.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public WhatIfScenarioPriceAnswer? Combined { get; init; }
}

/// <summary>The prices of a design on a channel.</summary>
public sealed record WhatIfPriceAnswer
{
    /// <summary>The smallest allowed price whose net reaches the floor; null if reason says why there is none.</summary>
    /// <example>61.00</example>
    public required decimal? FloorPrice { get; init; }

    /// <summary>The price that also follows the studio's own rule.</summary>
    /// <example>113.00</example>
    public required decimal? TargetPrice { get; init; }

    /// <summary>The verdict on the listed price; null if there is none.</summary>
    public required Verdict? Verdict { get; init; }

    /// <summary>Why there is no price.</summary>
    /// <example>no-price</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }
}

/// <summary>The prices of a design on a channel in a scenario.</summary>
public sealed record WhatIfScenarioPriceAnswer
{
    /// <summary>The price that is listed in the scenario; null if there is none.</summary>
    public required decimal? ListedPrice { get; init; }

    /// <summary>The smallest allowed price whose net reaches the floor; null if reason says why there is none.</summary>
    /// <example>62.00</example>
    public required decimal? FloorPrice { get; init; }

    /// <summary>The price that also follows the studio's own rule.</summary>
    /// <example>114.00</example>
    public required decimal? TargetPrice { get; init; }

    /// <summary>The verdict on the listed price; null if there is none.</summary>
    public required Verdict? Verdict { get; init; }

    /// <summary>If the verdict fell: the smallest allowed price that gives the old one back.</summary>
    /// <example>62.00</example>
    public required decimal? SuggestedPrice { get; init; }

    /// <summary>Why there is no price.</summary>
    /// <example>no-price</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }
}

/// <summary>The revisions that a what-if rests on.</summary>
public sealed record WhatIfBasisAnswer
{
    /// <summary>The profile with its revision.</summary>
    /// <example>main@1</example>
    public required string Profile { get; init; }

    /// <summary>The plan with its revision.</summary>
    /// <example>main@1</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Plan { get; init; }

    /// <summary>Every stored document that a change names, with its revision.</summary>
    public required IReadOnlyList<string> Changed { get; init; }

    /// <summary>Stored scenarios, with their revisions.</summary>
    public required IReadOnlyList<string> Scenarios { get; init; }

    /// <summary>The revisions that the list rests on; absent if there is none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public PriceListBasisAnswer? List { get; init; }
}
