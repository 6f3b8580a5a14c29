using System.Text.Json.Serialization;
using PriceFloor.Api.Documents;
using PriceFloor.Evidence.Prices;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Api.StockLists;

/// <summary>A design that has slow pieces. Where a piece of an age lies is not known: the first made is the first gone, wherever it lies.</summary>
public sealed record StockItemAnswer
{
    /// <summary>The design's key.</summary>
    /// <example>RB-014</example>
    public required string Sku { get; init; }

    /// <summary>Its name.</summary>
    /// <example>River drop pendant</example>
    public required string? Name { get; init; }

    /// <summary>The profile's key.</summary>
    /// <example>main</example>
    public required string Profile { get; init; }

    /// <summary>ISO 4217 code of the amounts.</summary>
    /// <example>USD</example>
    public required string Currency { get; init; }

    /// <summary>Pieces on hand at all places.</summary>
    /// <example>31</example>
    public required int OnHand { get; init; }

    /// <summary>The same by place: the studio, then channels by key.</summary>
    public required IReadOnlyList<PlaceAnswer> Places { get; init; }

    /// <summary>The same by age, oldest first.</summary>
    public required IReadOnlyList<AgeAnswer> Ages { get; init; }

    /// <summary>So many of them are slow: older than asked, or with less than one chance in four to be sold within 180 days.</summary>
    /// <example>10</example>
    public required int Slow { get; init; }

    /// <summary>The chance that a slow piece is sold within 180 days at the price that is asked.</summary>
    /// <example>0.1200</example>
    public required decimal SoldSoon { get; init; }

    /// <summary>The channel of the prices: that of most orders of the design; null if it is for sale nowhere.</summary>
    /// <example>web</example>
    public required string? Channel { get; init; }

    /// <summary>What is asked there; null if it is not listed and no line says it.</summary>
    /// <example>52.00</example>
    public required decimal? Price { get; init; }

    /// <summary>What can be done with a slow piece, the way that brings most first; ways that cannot be gone last.</summary>
    public required IReadOnlyList<WayOutAnswer> Ways { get; init; }

    /// <summary>With workings=true: how what the ways bring came about.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WorkingAnswer>? Workings { get; init; }

    /// <param name="stock">The pieces.</param>
    /// <param name="offer">The design where it is for sale; null: nowhere.</param>
    /// <param name="slow">The slow ones.</param>
    /// <param name="ways">What can be done with them.</param>
    /// <param name="asked">What is asked.</param>
    internal static StockItemAnswer Of(StandingStock stock, PriceQuestion? offer, SlowPieces slow, SlowStock ways, StockQuery asked)
    {
        var (design, money) = (stock.Design.Known.Stored.Design, stock.Piece.Year.Currency);
        return new StockItemAnswer
        {
            Sku = stock.Design.Known.Sku,
            Name = design.Name,
            Profile = design.Profile!,
            Currency = money.Code,
            OnHand = stock.Design.Shelf.OnHand,
            Places = [.. stock.Design.Shelf.Places.Select(place => new PlaceAnswer(place.Channel, place.Pieces))],
            Ages = [.. stock.Lots.Select(lot => new AgeAnswer(lot.Made, lot.Age, lot.Pieces))],
            Slow = slow.Pieces,
            SoldSoon = Rounding.Nearest(ways.SoldSoon, Estimate.ShareDecimals),
            Channel = offer?.Demand.Offer.Key,
            Price = slow.Price is { } price ? Rounding.WithDecimals(price, money.Decimals) : null,
            Ways = [.. ways.Ways.Select(way => WayOutAnswer.Of(way, money))],
            Workings = WorkingAnswer.Of(asked.Workings, () => StockWorkings.Of(stock, slow, ways, asked)),
        };
    }
}

/// <summary>Pieces at one place.</summary>
/// <param name="Channel" example="gallery">Key of the channel; null: the studio.</param>
/// <param name="Pieces" example="4">How many.</param>
public sealed record PlaceAnswer(string? Channel, int Pieces);

/// <summary>Pieces that are equally old.</summary>
/// <param name="Made" example="2026-03-14">The day on which they were made.</param>
/// <param name="Days" example="657">Days since then.</param>
/// <param name="Pieces" example="3">How many.</param>
public sealed record AgeAnswer(DateOnly Made, int Days, int Pieces);
