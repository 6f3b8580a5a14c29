using System.Text.Json.Serialization;

namespace PriceFloor.Api.PriceParts;

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

    /// <summary>Whether the price was asked about, is listed, or is the floor price.</summary>
    public PriceIs? PriceIs { get; init; }

    /// <summary>The verdict on the price.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>
    /// What the buyer pays a piece at this price, tax and shipping included; what the usual discount takes off is one of the parts.
    /// </summary>
    public decimal? Paid { get; init; }

    /// <summary>
    /// The parts in the order in which they are taken; they add up to paid, so one may be a minor unit off the same figure elsewhere.
    /// </summary>
    public required IReadOnlyList<PartAnswer> Parts { get; init; }

    /// <summary>
    /// The work that the three parts expenses, tax and household pay for: making, rework, one-off work and selling. Together as much as those three.
    /// </summary>
    public required IReadOnlyList<WorkAnswer> Work { get; init; }

    /// <summary>Why there is no price: currency-mismatch, no-price, ...</summary>
    /// <example>no-price</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }
}

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

/// <summary>One kind of work on a piece, and what the price owes for it.</summary>
public sealed record WorkAnswer
{
    /// <summary>Which.</summary>
    public required PieceWork Work { get; init; }

    /// <summary>Hours a sold piece, up to four decimals.</summary>
    /// <example>0.25</example>
    public required decimal Hours { get; init; }

    /// <summary>What these hours must recover.</summary>
    public required decimal Amount { get; init; }
}

/// <summary>One part of what the buyer pays.</summary>
public sealed record PartAnswer
{
    /// <summary>What it pays for.</summary>
    public required PricePart Part { get; init; }

    /// <summary>The amount; negative if the price is short of the floor.</summary>
    public required decimal Amount { get; init; }

    /// <summary>Its share of what the buyer pays, up to six decimals.</summary>
    public required decimal Share { get; init; }
}
