namespace PriceFloor.Storage;

/// <summary>That a movement is of an order.</summary>
public sealed class OrderRow
{
    public long Position { get; init; }

    /// <summary>Number of the design.</summary>
    public long Design { get; init; }

    /// <summary>The order: 8 bytes (<see cref="LogMarks.OfOrder"/>).</summary>
    public byte[] OrderMark { get; init; } = [];
}
