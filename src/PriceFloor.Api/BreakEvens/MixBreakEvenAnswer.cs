using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.BreakEvens;

/// <summary>How many of each piece carry the year together.</summary>
public sealed record MixBreakEvenAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>What bench time must recover, a wanted surplus included; rounded up.</summary>
    public required decimal BenchMustEarn { get; init; }

    /// <summary>What one unit of the mix leaves towards what the bench must earn.</summary>
    public required decimal ContributionPerMixUnit { get; init; }

    /// <summary>Units of the mix that carry what the bench must earn, up to six decimals.</summary>
    public required decimal MixUnits { get; init; }

    /// <summary>Each line with its whole pieces.</summary>
    public required IReadOnlyList<MixLineAnswer> Lines { get; init; }

    /// <summary>What buyers pay for all of them before sales tax and do not get back.</summary>
    public required decimal Revenue { get; init; }

    /// <summary>Bench hours that they take, up to four decimals.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>Whether the year has these hours.</summary>
    public required bool WithinCapacity { get; init; }

    /// <summary>Their share of the year's bench hours, up to six decimals.</summary>
    public required decimal ShareOfYear { get; init; }

    /// <summary>The revisions that the answer rests on: the profile, then each line's design and channel.</summary>
    public required IReadOnlyDictionary<string, object> Basis { get; init; }

    /// <summary>Defaults that the answer rests on and that lower it.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity of the year and of the mix.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}

/// <summary>One line of a mix at break-even.</summary>
/// <param name="Sku">The design.</param>
/// <param name="Channel">The channel.</param>
/// <param name="Price">The price it sells at.</param>
/// <param name="Ratio">How many of it are in one unit of the mix.</param>
/// <param name="Contribution">What one sold piece leaves towards what the bench must earn.</param>
/// <param name="Units">Whole pieces to sell.</param>
/// <param name="Revenue">What buyers pay for them before sales tax and do not get back.</param>
/// <param name="BenchHours">The bench hours that they take.</param>
public sealed record MixLineAnswer(string Sku, string Channel, decimal Price, decimal Ratio, decimal Contribution,
    [property: WholeNumber] decimal Units, decimal Revenue, decimal BenchHours);
