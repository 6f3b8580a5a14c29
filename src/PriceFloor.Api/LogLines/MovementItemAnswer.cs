using System.Text.Json.Serialization;
using PriceFloor.Evidence.Lines;
using PriceFloor.Storage;

namespace PriceFloor.Api.LogLines;

/// <summary>A stored movement, without the ids that it came with.</summary>
public sealed record MovementItemAnswer
{
    /// <summary>Its place in the log.</summary>
    /// <example>12</example>
    public required long Position { get; init; }

    /// <summary>Who sent it.</summary>
    /// <example>web-shop</example>
    public required string Source { get; init; }

    /// <summary>The local day.</summary>
    /// <example>2027-03-14</example>
    public required DateOnly On { get; init; }

    /// <summary>What happened.</summary>
    public required MovementKind What { get; init; }

    /// <summary>Key of the design.</summary>
    /// <example>RB-014</example>
    public required string Sku { get; init; }

    /// <summary>Key of the channel.</summary>
    /// <example>web</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Channel { get; init; }

    /// <summary>How many.</summary>
    /// <example>1</example>
    public required int Pieces { get; init; }

    /// <summary>Paid for all its pieces, after discounts.</summary>
    /// <example>52.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? LineTotal { get; init; }

    /// <summary>Asked for one piece.</summary>
    /// <example>58.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Listed { get; init; }

    /// <summary>Its part of the order's fees.</summary>
    /// <example>1.96</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? Fees { get; init; }

    /// <summary>Its part of the shipping that the order's buyer paid.</summary>
    /// <example>5.00</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? ShippingCharged { get; init; }

    /// <summary>Its part of what shipping the order cost.</summary>
    /// <example>6.20</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public decimal? ShippingCost { get; init; }

    /// <summary>ISO 4217 code of its amounts.</summary>
    /// <example>USD</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Currency { get; init; }

    /// <summary>Second, if it is one.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public Grade? Grade { get; init; }

    /// <summary>False, if it came back and cannot be sold again.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? Resale { get; init; }

    /// <summary>Name of the fair.</summary>
    /// <example>Spring fair</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Stall { get; init; }

    /// <summary>The piece itself.</summary>
    /// <example>7/25</example>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Piece { get; init; }

    public static MovementItemAnswer Of(MovementLine line)
    {
        var currency = line.Currency is { } code ? Pricing.Numbers.Currency.Of(code) : null;
        return new()
        {
            Position = line.Position,
            Source = line.Source,
            On = DateOnly.FromDayNumber(line.Day),
            What = StoredLines.KindOf(line.What),
            Sku = line.Design!,
            Channel = line.Place,
            Pieces = line.Pieces,
            LineTotal = StoredLines.Money(line.Paid, currency),
            Listed = StoredLines.Money(line.Listed, currency),
            Fees = StoredLines.Money(line.Fees, currency),
            ShippingCharged = StoredLines.Money(line.ShippingCharged, currency),
            ShippingCost = StoredLines.Money(line.ShippingCost, currency),
            Currency = line.Currency,
            Grade = line.Grade is null ? null : PriceFloor.Evidence.Lines.Grade.Second,
            Resale = line.Resale is null ? null : false,
            Stall = line.Stall,
            Piece = line.Piece,
        };
    }
}
