using System.Text.Json.Serialization;

namespace PriceFloor.Api.FloorPrices;

/// <summary>One channel of a floor-price answer. Money in the channel's currency.</summary>
public sealed record ChannelPriceAnswer
{
    /// <summary>The channel's key, or "inline".</summary>
    public required string Channel { get; init; }

    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>What one sold piece must bring in on this channel, its selling included; rounded up. Null in another currency.</summary>
    /// <example>66.00</example>
    public decimal? Floor { get; init; }

    /// <summary>Hours of selling a piece, up to four decimals.</summary>
    /// <example>0.2</example>
    public required decimal SellingHours { get; init; }

    /// <summary>The smallest allowed price whose net reaches the floor on this channel; null with a reason.</summary>
    public decimal? FloorPrice { get; init; }

    /// <summary>The lowest price that also does not undercut shops that buy to sell on (the profile's priceRule); null with a reason.</summary>
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
