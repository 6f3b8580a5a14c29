namespace PriceFloor.Storage;

/// <summary>
/// Where a store stands: what is kept in memory of it is known by this, never by a position alone, since another history has other documents at the
/// same position.
/// </summary>
/// <param name="History">
/// The name of its life and the timeline of its database. Empty where neither can change while the store is open.
/// </param>
/// <param name="Position">The position of the newest revision.</param>
/// <param name="Events">The position of the newest action on keys; 0 where no other process can change one.</param>
public sealed record StorePoint(string History, long Position, long Events)
{
    /// <summary>Whether what is known at this point holds everything that stood at another.</summary>
    public bool Holds(StorePoint other) => History == other.History && Position >= other.Position;

    /// <summary>Whether it is the same moment of the same documents.</summary>
    public bool IsAt(StorePoint other) => History == other.History && Position == other.Position;

    /// <summary>Whether keys that were read at this point are those of another.</summary>
    public bool HoldsKeysOf(StorePoint other) => History == other.History && Events >= other.Events;
}
