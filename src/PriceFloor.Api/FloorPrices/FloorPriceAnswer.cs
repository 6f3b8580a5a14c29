using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.FloorPrices;

/// <summary>The lowest price of one design, and what it means on each channel. Money in the profile's currency and with its decimals.</summary>
public sealed record FloorPriceAnswer
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>What one sold piece must bring in where selling takes no time, after everything that a channel takes; rounded up.</summary>
    public required decimal Floor { get; init; }

    /// <summary>The lowest wholesale price: the floor.</summary>
    public required decimal Wholesale { get; init; }

    /// <summary>The retail multiple times wholesale, rounded up.</summary>
    public required decimal Retail { get; init; }

    /// <summary>Bench hours for each sold piece, up to four decimals.</summary>
    public required decimal BenchHours { get; init; }

    /// <summary>What this bench time must recover.</summary>
    public required decimal BenchCost { get; init; }

    /// <summary>Materials for each sold piece.</summary>
    public required decimal Materials { get; init; }

    /// <summary>What rejected pieces bring when sold as seconds.</summary>
    public required decimal SecondsCredit { get; init; }

    /// <summary>Pieces started for each good one, up to six decimals.</summary>
    public required decimal StartsPerGoodPiece { get; init; }

    /// <summary>
    /// Whole pieces a year, the least that bench hours and the loads of scarce things allow: this floor holds only if that much is made and sold.
    /// </summary>
    [WholeNumber]
    public required decimal PiecesPerYear { get; init; }

    /// <summary>
    /// What a piece would have to bring in on any channel, its selling included, if the scarcest thing alone held the whole year back; rounded up.
    /// Null if the bench hours are full before anything else is.
    /// </summary>
    /// <example>71.43</example>
    public required decimal? FloorWithinLimit { get; init; }

    /// <summary>
    /// One retail price for every retail channel on which the design is listed: null where it is listed on none,
    /// and in answers about inline documents.
    /// </summary>
    public OneRetailPriceAnswer? OneRetailPrice { get; init; }

    /// <summary>Floor and target price on each channel.</summary>
    public required IReadOnlyList<ChannelPriceAnswer> Channels { get; init; }

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
