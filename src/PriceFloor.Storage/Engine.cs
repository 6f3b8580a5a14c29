namespace PriceFloor.Storage;

/// <summary>
/// The engine of a store: makes and owns the connections, and knows what only one engine has. A <see cref="Store"/> works with any engine.
/// </summary>
public abstract class Engine : IDisposable
{
    /// <summary>
    /// True if every question is answered before its call returns, as by a file beside the service: then reading one document after another costs no
    /// waiting. False if each waits for a network, so documents are better read together.
    /// </summary>
    public abstract bool AnswersAtOnce { get; }

    /// <summary>True if other processes may serve the same store, so what is in memory must be asked for before it is believed.</summary>
    public virtual bool IsShared => false;

    /// <summary>The pause between two questions where the store stands; null: each request asks.</summary>
    public virtual TimeSpan? AsksEvery => null;

    /// <summary>How many processes serve the store, this one included.</summary>
    public virtual int Processes => 1;

    /// <summary>The size of the store on the disk; of one studio of many in a database, about what its documents take.</summary>
    public abstract long Bytes { get; }

    /// <summary>True if the store has an earlier schema, so opening it takes a while.</summary>
    public abstract bool IsBehind();

    public abstract void Dispose();

    /// <summary>Makes the store if there is none, upgrades it to the newest schema, and continues it.</summary>
    protected internal abstract Opened Open(DateTimeOffset now);

    /// <summary>The same, without blocking a thread where opening waits for a network.</summary>
    protected internal virtual ValueTask<Opened> OpenAsync(DateTimeOffset now) => new(Open(now));

    /// <summary>A transaction that reads, all of it from one moment.</summary>
    protected internal abstract ValueTask<Session> BeginReading();

    /// <summary>Where the store stands, given after the call: it holds what anybody acknowledged before.</summary>
    /// <exception cref="StoreGoneException">The store was deleted.</exception>
    protected internal virtual ValueTask<StorePoint> Ask() => throw new NotSupportedException();

    /// <summary>A transaction that writes: no other does until it ends.</summary>
    protected internal abstract ValueTask<Session> BeginWriting();

    /// <summary>A connection that prepares a large write beside the others.</summary>
    protected internal abstract ValueTask<Staging> BeginStaging();

    /// <summary>Writes a row that means nothing, through a connection of its own, or throws.</summary>
    protected internal abstract ValueTask Probe(TimeSpan within, DateTimeOffset now);

    /// <summary>Called after each commit, by one thread at a time.</summary>
    /// <param name="position">The position of the newest revision.</param>
    /// <param name="number">The highest revision number of the commit.</param>
    protected internal abstract void Committed(long position, long number);

    /// <summary>An open store.</summary>
    /// <param name="Upgrade">The upgrade, if it had an earlier schema.</param>
    /// <param name="Life">The name of its life.</param>
    /// <param name="Position">The position of its newest revision.</param>
    /// <param name="WhyAnotherLife">Why another life of it begins; null if the earlier one continues.</param>
    protected internal sealed record Opened(Upgrade? Upgrade, string Life, long Position, string? WhyAnotherLife)
    {
        /// <summary>Where it stands, if others may move it; null if only this process does.</summary>
        public StorePoint? Point { get; init; }
    }
}
