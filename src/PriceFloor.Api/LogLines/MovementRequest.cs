using System.ComponentModel.DataAnnotations;
using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Sheets;

namespace PriceFloor.Api.LogLines;

/// <summary>One line of what happened to pieces of a design.</summary>
public sealed record MovementRequest
{
    /// <summary>Who says so: a name of your own for the shop or book; the query's source if absent.</summary>
    /// <example>web-shop</example>
    [MaxLength(Limits.KeyLength), RegularExpression(Limits.KeyPattern)]
    public string? Source { get; init; }

    /// <summary>The source's own id of the line: the same again changes nothing, other content corrects it. Only its hash is kept.</summary>
    /// <example>10231/1</example>
    [MaxLength(LogRanges.MostText)]
    public string? Ref { get; init; }

    /// <summary>The local day.</summary>
    /// <example>2027-03-14</example>
    public required DateOnly On { get; init; }

    /// <summary>What happened; the query's what if absent, else sold.</summary>
    /// <example>sold</example>
    public MovementKind? What { get; init; }

    /// <summary>Key or alias of a stored design.</summary>
    /// <example>RB-014</example>
    [MaxLength(Limits.AliasLength)]
    public required string Sku { get; init; }

    /// <summary>Key of a stored channel; the query's if absent. Not for what was made.</summary>
    /// <example>web</example>
    [MaxLength(Limits.KeyLength)]
    public string? Channel { get; init; }

    /// <summary>How many: a whole number from 1; of a count, from 0.</summary>
    /// <example>1</example>
    [Pieces(Minimum = "0", Maximum = "1000000")]
    public required decimal Pieces { get; init; }

    /// <summary>Paid for one piece, after discounts.</summary>
    /// <example>52.00</example>
    [Money]
    public decimal? Price { get; init; }

    /// <summary>Paid for all pieces of the line, in place of price.</summary>
    /// <example>156.00</example>
    [Money]
    public decimal? LineTotal { get; init; }

    /// <summary>Asked for one piece that day; the listed price of that day if absent.</summary>
    /// <example>58.00</example>
    [Money]
    public decimal? Listed { get; init; }

    /// <summary>The order's id; an order of its own if absent. Only its hash is kept.</summary>
    /// <example>10231</example>
    [MaxLength(LogRanges.MostText)]
    public string? Order { get; init; }

    /// <summary>Taken off the whole order, if price does not say it yet: spread over its lines.</summary>
    /// <example>4.50</example>
    [Money]
    public decimal? Discount { get; init; }

    /// <summary>Fees of the whole order.</summary>
    /// <example>1.96</example>
    [Money]
    public decimal? Fees { get; init; }

    /// <summary>Shipping that the buyer of the order paid.</summary>
    /// <example>5.00</example>
    [Money]
    public decimal? ShippingCharged { get; init; }

    /// <summary>What shipping the order cost.</summary>
    /// <example>6.20</example>
    [Money]
    public decimal? ShippingCost { get; init; }

    /// <summary>ISO 4217 code of the amounts; the channel's if absent. Another one is refused.</summary>
    /// <example>USD</example>
    [MaxLength(3), RegularExpression(Limits.CurrencyPattern)]
    public string? Currency { get; init; }

    /// <summary>Good if absent.</summary>
    /// <example>second</example>
    public Grade? Grade { get; init; }

    /// <summary>Whether what came back can be sold again; true if absent.</summary>
    /// <example>true</example>
    public bool? Resale { get; init; }

    /// <summary>Name of a fair.</summary>
    /// <example>Spring fair</example>
    [MaxLength(LogRanges.MostText)]
    public string? Stall { get; init; }

    /// <summary>The piece itself, of an edition or by its serial; kept as given.</summary>
    /// <example>7/25</example>
    [MaxLength(LogRanges.MostText)]
    public string? Piece { get; init; }

    /// <summary>The line as a sheet would have it.</summary>
    /// <param name="line">Its number in the request.</param>
    /// <param name="sheet">What a line is that does not say so.</param>
    public SentMovement AsSent(int line, LogSheet sheet)
    {
        var pieces = (int)Pieces;
        return MovementRules.Checked(new SentMovement
        {
            Line = line,
            Fault = Price is not null && LineTotal is not null ? FaultCodes.Unexpected : null,
            On = On,
            What = What ?? sheet.What,
            Sku = Sku,
            Channel = Channel ?? sheet.Channel,
            Pieces = pieces,
            Value = LineTotal ?? Price * pieces,
            Listed = Listed,
            Order = Order,
            Discount = Some(Discount),
            Fees = Some(Fees),
            ShippingCharged = Some(ShippingCharged),
            ShippingCost = Some(ShippingCost),
            Currency = Currency,
            Ref = Ref,
            Grade = Grade ?? PriceFloor.Evidence.Lines.Grade.Good,
            Resale = Resale ?? true,
            Stall = Stall,
            Piece = Piece,
        });
    }

    /// <summary>Nothing is not an amount of an order.</summary>
    private static decimal? Some(decimal? amount) => amount == 0 ? null : amount;
}
