using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;

namespace PriceFloor.Api.PriceParts;

/// <summary>Where each unit of a design's price goes, on one channel or on all.</summary>
public sealed record PricePartsAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>Name of the design.</summary>
    public string? Name { get; init; }

    /// <summary>What one sold piece must bring in: materials, expenses, tax and household together; rounded up.</summary>
    public required decimal Floor { get; init; }

    /// <summary>The parts of each channel's price.</summary>
    public required IReadOnlyList<ChannelPartsAnswer> Channels { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required BasisAnswer Basis { get; init; }

    /// <summary>Defaults that the answer rests on and that lower the floor.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true and one channel: each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}
