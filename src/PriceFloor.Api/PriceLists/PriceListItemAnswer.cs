using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;

namespace PriceFloor.Api.PriceLists;

/// <summary>One design on one channel of a price list.</summary>
public sealed record PriceListItemAnswer
{
    /// <summary>Key of the design.</summary>
    public required string Sku { get; init; }

    /// <summary>One of the design's other names, if the line is about the price listed under it; absent on the line of the design itself.</summary>
    /// <example>RB-014 blue</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Alias { get; init; }

    /// <summary>Its name for people.</summary>
    public string? Name { get; init; }

    /// <summary>Key of the channel.</summary>
    public required string Channel { get; init; }

    /// <summary>ISO 4217 code of the channel's prices.</summary>
    public required string Currency { get; init; }

    /// <summary>The smallest allowed price whose net reaches the floor; null if reason says why there is none.</summary>
    public decimal? FloorPrice { get; init; }

    /// <summary>The lowest price that also does not undercut shops that buy to sell on: the profile's priceRule.</summary>
    public decimal? TargetPrice { get; init; }

    /// <summary>The listed price; null if there is none.</summary>
    public decimal? ListedPrice { get; init; }

    /// <summary>The verdict on the listed price; null if there is none.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>
    /// With the scope "read": what reaches the studio less than the floor on the channel, rounded up; 0 where the price carries its share, absent
    /// where none is listed.
    /// </summary>
    /// <example>3.64</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? ShortBy { get; init; }

    /// <summary>Why there is no price, such as currency-mismatch, no-price or no-bench-time.</summary>
    /// <example>currency-mismatch</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Reason { get; init; }

    /// <summary>The revision of the design.</summary>
    public required string Basis { get; init; }

    /// <summary>The name by which the line's price is listed: what a shop's own sheet has.</summary>
    [JsonIgnore]
    public string ListedAs => Alias ?? Sku;

    public static PriceListItemAnswer Of(Stored<Design> design, Stored<Channel> channel, string? alias, PricedDesign priced)
    {
        var money = Pricing.Numbers.Currency.Of(channel.Document.Currency);
        decimal? Price(decimal? price) => price is { } exact ? Rounding.WithDecimals(exact, money.Decimals) : null;
        return new PriceListItemAnswer
        {
            Sku = design.Key,
            Alias = alias,
            Name = design.Sound?.Name,
            Channel = channel.Key,
            Currency = money.Code,
            FloorPrice = Price(priced.FloorPrice),
            TargetPrice = Price(priced.TargetPrice),
            ListedPrice = Price(priced.ListedPrice),
            Verdict = priced.Verdict,
            ShortBy = priced.ShortBy is { } missing ? money.RoundUp(missing) : null,
            Reason = priced.Reason,
            Basis = design.Basis,
        };
    }
}
