using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.BreakEvens;

/// <summary>How many pieces at this price carry the whole year. Money in the profile's currency.</summary>
public sealed record BreakEvenAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>The price in question.</summary>
    public required decimal Price { get; init; }

    /// <summary>What one sale leaves for rent, living and tax.</summary>
    public required decimal Contribution { get; init; }

    /// <summary>Whole pieces that carry what the bench must earn, rounded up.</summary>
    [WholeNumber]
    public required decimal Units { get; init; }

    /// <summary>What buyers pay for them before sales tax and do not get back.</summary>
    public required decimal Revenue { get; init; }

    /// <summary>Bench hours that the units take, up to four decimals.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>Whole pieces that the year's bench hours can make, rounded down.</summary>
    [WholeNumber]
    public required decimal Capacity { get; init; }

    /// <summary>Whether the year's bench hours are enough for the units.</summary>
    public required bool WithinCapacity { get; init; }

    /// <summary>Their share of the year's bench hours, up to six decimals.</summary>
    public required decimal ShareOfYear { get; init; }

    /// <summary>With planned: the share of the plan by which sales may fall; negative if they must rise.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? MarginOfSafety { get; init; }

    /// <summary>With planned: the factor by which a change in sales changes the surplus; null at or below break-even.</summary>
    [PresentWith(nameof(MarginOfSafety))]
    public decimal? OperatingLeverage { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required BasisAnswer Basis { get; init; }

    /// <summary>Defaults that the answer rests on and that lower it.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}
