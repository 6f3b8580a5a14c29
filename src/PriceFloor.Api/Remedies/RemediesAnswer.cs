using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;

namespace PriceFloor.Api.Remedies;

/// <summary>Each way to fix a price, and one that spreads the gap.</summary>
public sealed record RemediesAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>The price in question.</summary>
    public required decimal Price { get; init; }

    /// <summary>The verdict on the price as it is.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>What the remedies bring the price to.</summary>
    public required RemedyGoal Toward { get; init; }

    /// <summary>Net proceeds less the floor on the channel; negative when short.</summary>
    public required decimal AboveFloor { get; init; }

    /// <summary>
    /// Every way, each with its figure before and after in its own measure, or the reason why it cannot be: a higher price first, then by the size
    /// of the change, then those that cannot be.
    /// </summary>
    public required IReadOnlyList<RemedyAnswer> Remedies { get; init; }

    /// <summary>A third each, as far as the three ways are possible; null where none is, and toward a target.</summary>
    public BalancedAnswer? Balanced { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required BasisAnswer Basis { get; init; }

    /// <summary>Defaults that the answer rests on and that lower the floor.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}

/// <summary>The gap spread over faster work, cheaper materials and lower costs.</summary>
public sealed record BalancedAnswer
{
    /// <summary>Bench minutes for each sold piece, rounded down; null if the proposal leaves them as they are.</summary>
    public required decimal? BenchMinutes { get; init; }

    /// <summary>Materials for each sold piece, rounded down; null if the proposal leaves them as they are.</summary>
    /// <example>12.40</example>
    public required decimal? Materials { get; init; }

    /// <summary>Less for bench time to recover in the year, rounded up; null if the proposal leaves the year's costs as they are.</summary>
    public required decimal? Cut { get; init; }

    /// <summary>All of them together, checked like any other price.</summary>
    public required bool CarriesItsShare { get; init; }
}
