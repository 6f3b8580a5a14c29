namespace PriceFloor.Storage;

/// <summary>A movement of pieces: <see cref="MovementLine"/> says what its fields are.</summary>
public sealed class MovementRow : LogRow
{
    public int What { get; init; }

    public long? Place { get; init; }

    public long? Currency { get; init; }

    public int Pieces { get; init; }

    public long? Paid { get; init; }

    public long? Listed { get; init; }

    public long? Fees { get; init; }

    public long? ShippingCharged { get; init; }

    public long? ShippingCost { get; init; }

    public long? Stall { get; init; }

    public int? Grade { get; init; }

    public int? Resale { get; init; }

    /// <summary>In words: most pieces have a name of their own, so a list of names would have them all.</summary>
    public string? Piece { get; init; }

    public byte[]? OrderMark { get; init; }
}
