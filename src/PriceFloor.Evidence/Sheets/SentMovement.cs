using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Sheets;

/// <summary>A movement as a source writes it, before orders are put together and names are looked up.</summary>
public sealed record SentMovement
{
    /// <summary>Its line, from 1.</summary>
    public required int Line { get; init; }

    /// <summary>Why it cannot be read; null if it can.</summary>
    public Code? Fault { get; init; }

    /// <summary>The day; null if it cannot be read.</summary>
    public DateOnly? On { get; init; }

    public MovementKind What { get; init; }

    /// <summary>Key or alias of the design.</summary>
    public string Sku { get; init; } = "";

    /// <summary>Key of the channel; null if it says none.</summary>
    public string? Channel { get; init; }

    /// <summary>How many, at least 1; at least 0 if counted.</summary>
    public int Pieces { get; init; }

    /// <summary>Paid for all its pieces, before what was taken off the order; null if it says no price.</summary>
    public decimal? Value { get; init; }

    /// <summary>Asked for one piece.</summary>
    public decimal? Listed { get; init; }

    public string? Order { get; init; }

    /// <summary>Taken off the whole order.</summary>
    public decimal? Discount { get; init; }

    /// <summary>Fees of the whole order.</summary>
    public decimal? Fees { get; init; }

    /// <summary>Shipping that the buyer of the order paid.</summary>
    public decimal? ShippingCharged { get; init; }

    /// <summary>What shipping the order cost.</summary>
    public decimal? ShippingCost { get; init; }

    /// <summary>ISO 4217 code of its amounts; null if it says none.</summary>
    public string? Currency { get; init; }

    /// <summary>The source's own id of the line.</summary>
    public string? Ref { get; init; }

    public Grade Grade { get; init; }

    /// <summary>False if what came back cannot be sold again.</summary>
    public bool Resale { get; init; } = true;

    public string? Stall { get; init; }

    public string? Piece { get; init; }

    /// <summary>Its status is a word for orders that count in nothing.</summary>
    public bool IsCancelled { get; init; }

    /// <summary>What it brought as sent: negative if it came back, 0 unless it was sold or came back.</summary>
    public decimal Money => What switch
    {
        MovementKind.Sold => Value ?? 0,
        MovementKind.Returned => -(Value ?? 0),
        _ => 0,
    };

    /// <summary>Whether it says an amount of its order.</summary>
    internal bool HasOrderAmounts => Discount is not null || Fees is not null || ShippingCharged is not null || ShippingCost is not null;
}
