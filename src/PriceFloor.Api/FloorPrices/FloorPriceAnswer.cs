using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.FloorPrices;

/// <summary>The lowest price of one design, and what it means on each channel. Money in the profile's currency and with its decimals.</summary>
public sealed record FloorPriceAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>What one sold piece must bring in, after everything that a channel takes; rounded up.</summary>
    public required decimal Floor { get; init; }

    /// <summary>The lowest wholesale price: the floor.</summary>
    public required decimal Wholesale { get; init; }

    /// <summary>The retail multiple times wholesale, rounded up.</summary>
    public required decimal Retail { get; init; }

    /// <summary>Bench hours a sold piece, up to four decimals.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>What that bench time must recover.</summary>
    public required decimal BenchCost { get; init; }

    /// <summary>Materials a sold piece.</summary>
    public required decimal Materials { get; init; }

    /// <summary>What its rejected pieces bring as seconds.</summary>
    public required decimal SecondsCredit { get; init; }

    /// <summary>Pieces started for each good one, up to six decimals.</summary>
    public required decimal StartsPerGoodPiece { get; init; }

    /// <summary>Whole pieces that the year's bench hours make: this floor holds only if that much is made and sold.</summary>
    [WholeNumber]
    public required decimal PiecesPerYear { get; init; }

    /// <summary>Floor and target price on each channel.</summary>
    public required IReadOnlyList<ChannelPriceAnswer> Channels { get; init; }

    /// <summary>The revisions that the answer rests on.</summary>
    public required BasisAnswer Basis { get; init; }

    /// <summary>Defaults that the answer leaned on and that lower it.</summary>
    public required IReadOnlyList<AssumptionAnswer> Assumed { get; init; }

    /// <summary>What may make the figures wrong.</summary>
    public required IReadOnlyList<WarningAnswer> Warnings { get; init; }

    /// <summary>With workings=true: each intermediate quantity in order.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }
}

/// <summary>One channel of a floor-price answer. Money in the channel's currency.</summary>
public sealed record ChannelPriceAnswer
{
    /// <summary>The channel's key, or "inline".</summary>
    public required string Channel { get; init; }

    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>The smallest allowed price whose net reaches the floor; null with a reason.</summary>
    public decimal? FloorPrice { get; init; }

    /// <summary>The price that also keeps the studio's own rule; null with a reason.</summary>
    public decimal? TargetPrice { get; init; }

    /// <summary>What is listed today; null where nothing is.</summary>
    public decimal? ListedPrice { get; init; }

    /// <summary>What the listed price does for the year; null where nothing is listed.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>Why there are no prices: currency-mismatch, no-price, ...</summary>
    /// <example>currency-mismatch</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }
}

/// <summary>The revisions that a floor rests on, such as main@7; "inline" for what came with the request.</summary>
public sealed record BasisAnswer
{
    /// <summary>The profile.</summary>
    public required string Profile { get; init; }

    /// <summary>The design, where the answer is about one.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Design { get; init; }

    /// <summary>The channel of a price check.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Channel { get; init; }

    /// <summary>The channels of a floor price, in the order of the answer.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Channels { get; init; }

    /// <summary>The listed wholesale price that the target doubles, where it is above the floor.</summary>
    /// <example>RB-014/shops@1</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? ListedPrice { get; init; }
}
