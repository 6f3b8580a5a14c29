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
    public abstract ValueTask<Session> BeginWriting();

    public abstract ValueTask DisposeAsync();
}
