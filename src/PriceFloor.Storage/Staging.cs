namespace PriceFloor.Storage;

/// <summary>
/// A connection with temporary tables of its own: first it prepares what is to be written, which nobody waits for, then one short transaction
/// takes it over. Disposing of it removes its tables.
/// </summary>
public abstract class Staging : IAsyncDisposable
{
    /// <summary>A transaction that reads the store and writes only temporary tables.</summary>
    public abstract ValueTask<Session> BeginPreparing();

    /// <summary>A transaction that writes the store: no other does until it ends. It sees the temporary tables.</summary>
    /// <param name="isLarge">It leaves what need not be done at once to <see cref="Settle"/>, so that others wait less.</param>
    public abstract ValueTask<Session> BeginWriting(bool isLarge);

    /// <summary>Does what large transactions left, while others write.</summary>
    public abstract ValueTask Settle();

    public abstract ValueTask DisposeAsync();
}
