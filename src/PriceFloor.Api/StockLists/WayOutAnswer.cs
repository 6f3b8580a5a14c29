using System.Text.Json.Serialization;
using PriceFloor.Evidence.Prices;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Api.StockLists;

/// <summary>One thing that can be done with slow pieces. What they cost is spent, so a price below the floor can be right.</summary>
public sealed record WayOutAnswer
{
    private const int DisplacedDecimals = 2;

    /// <summary>
    /// hold: wait for a year at the price that is asked; mark-down: sell them off at a lower one; rework: take apart; second: sell as seconds.
    /// </summary>
    public required Way Way { get; init; }

    /// <summary>What it brings a piece, on average; null if it cannot be done, or nothing is known of it.</summary>
    /// <example>18.30</example>
    public required decimal? Worth { get; init; }

    /// <summary>Why worth is null.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public WayOutReason? Reason { get; init; }

    /// <summary>The price that it asks.</summary>
    /// <example>45.16</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Price { get; init; }

    /// <summary>The chance that a piece is sold at it: within a year, or within the days of the mark-down.</summary>
    /// <example>0.8120</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Chance { get; init; }

    /// <summary>Of a mark-down: the price that brings most from so many pieces in that time.</summary>
    /// <example>45.16</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Best { get; init; }

    /// <summary>The same if buyers mind prices as much as they may.</summary>
    /// <example>38.20</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? BestLow { get; init; }

    /// <summary>The same if they mind them as little as they may.</summary>
    /// <example>66.45</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? BestHigh { get; init; }

    /// <summary>Of a mark-down of all slow pieces: so many sales at the full price lost elsewhere, and it was for nothing.</summary>
    /// <example>10.34</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? MayDisplace { get; init; }

    internal static WayOutAnswer Of(WayOut way, Currency money) => new()
    {
        Way = way.Way,
        Worth = way.Worth is { } worth ? money.Round(worth) : null,
        Reason = way.Reason,
        Price = way.Price is { } price ? Rounding.WithDecimals(price, money.Decimals) : null,
        Chance = way.Chance is { } chance ? Rounding.Nearest(chance, Estimate.ShareDecimals) : null,
        Best = way.Best?.Value,
        BestLow = way.Best?.Low,
        BestHigh = way.Best?.High,
        MayDisplace = way.MayDisplace is { } displaced ? Rounding.Nearest(displaced, DisplacedDecimals) : null,
    };
}
