namespace PriceFloor.Storage;

/// <summary>A movement of pieces.</summary>
public sealed record MovementLine : LogLine
{
    /// <summary>The number of what happened. <see cref="Made"/> is the only one that the store knows.</summary>
    public int What { get; init; }

    /// <summary>Pieces were finished.</summary>
    public const int Made = 1;

    /// <summary>Key of the channel.</summary>
    public string? Place { get; init; }

    /// <summary>ISO 4217 code of its amounts.</summary>
    public string? Currency { get; init; }

    public int Pieces { get; init; }

    /// <summary>Paid for all its pieces.</summary>
    public long? Paid { get; init; }

    /// <summary>Asked for one piece.</summary>
    public long? Listed { get; init; }

    public long? Fees { get; init; }

    public long? ShippingCharged { get; init; }

    public long? ShippingCost { get; init; }

    /// <summary>Name of a fair.</summary>
    public string? Stall { get; init; }

    /// <summary>2: seconds.</summary>
    public int? Grade { get; init; }

    /// <summary>0: came back and cannot be sold again.</summary>
    public int? Resale { get; init; }

    /// <summary>Serial of the piece.</summary>
    public string? Piece { get; init; }

    /// <summary>8 bytes by which lines of one order know each other (<see cref="LogMarks.OfOrder"/>).</summary>
    public byte[]? OrderMark { get; init; }
}
