using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.FloorPrices;

namespace PriceFloor.Api.PriceParts;

/// <summary>Where a price comes from.</summary>
public enum PriceIs
{
    /// <summary>It is the one that was asked about.</summary>
    Asked,

    /// <summary>It is listed today.</summary>
    Listed,

    /// <summary>Nothing is listed: it is the floor price.</summary>
    FloorPrice,
}

/// <summary>One part of what the buyer pays.</summary>
public sealed record PartAnswer
{
    /// <summary>What it pays for.</summary>
    public required PricePart Part { get; init; }

    /// <summary>How much; negative where the price is short of the floor.</summary>
    public required decimal Amount { get; init; }

    /// <summary>Its share of what the buyer pays, up to six decimals.</summary>
    public required decimal Share { get; init; }
}

/// <summary>Where a price on one channel goes. Money in the profile's currency.</summary>
public sealed record ChannelPartsAnswer
{
    /// <summary>The channel's key.</summary>
    public required string Channel { get; init; }

    /// <summary>Its name for people.</summary>
    public string? Name { get; init; }

    /// <summary>ISO 4217 code of the channel's prices.</summary>
    public required string Currency { get; init; }

    /// <summary>The price whose parts these are; null with a reason.</summary>
    public decimal? Price { get; init; }

    /// <summary>Whether it was asked about, is listed, or is the floor price.</summary>
    public PriceIs? PriceIs { get; init; }

    /// <summary>What it does for the year.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>What the buyer pays a piece, tax and shipping included.</summary>
    public decimal? Paid { get; init; }

    /// <summary>The parts in the order in which they are taken; they add up to paid, so one may be a minor unit off the same figure elsewhere.</summary>
    public required IReadOnlyList<PartAnswer> Parts { get; init; }

    /// <summary>Why there is no price: currency-mismatch, no-price, ...</summary>
    /// <example>no-price</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }
}

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

    /// <summary>Defaults that the answer leaned on and that lower the floor.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true and one channel: each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}
