namespace PriceFloor.Storage;

/// <summary>
/// The engine of a store: makes and owns the connections, and knows what only one engine has. A <see cref="Store"/> works with any engine.
/// </summary>
public abstract class Engine : IDisposable
{
    /// <summary>A store in one file, beside the service.</summary>
    /// <param name="path">The file, which is made if it does not exist.</param>
    /// <param name="clock">The clock of the store.</param>
    public static Engine InFile(string path, TimeProvider clock) => new SqliteEngine(path, clock);

    /// <summary>Loads the libraries of a store in a file, so opening one is faster.</summary>
    public static void LoadLibraries() => SqliteEngine.Load();

    /// <summary>The size of the store on the disk.</summary>
    public abstract long Bytes { get; }

    /// <summary>True if the store has an earlier schema, so opening it takes a while.</summary>
    public abstract bool IsBehind();

    public abstract void Dispose();

    /// <summary>Makes the store if there is none, upgrades it to the newest schema, and continues it.</summary>
    internal abstract Opened Open(DateTimeOffset now);

    /// <summary>A transaction that reads, all of it from one moment.</summary>
    internal abstract Session BeginReading();

    /// <summary>The same without blocking a thread while it waits for the engine.</summary>
    internal abstract ValueTask<Session> BeginReadingAsync();

    /// <summary>A transaction that writes: no other does until it ends.</summary>
    internal abstract ValueTask<Session> BeginWritingAsync();

    /// <summary>Writes a row that means nothing, through a connection of its own, or throws.</summary>
    internal abstract void Probe(TimeSpan within, DateTimeOffset now);

    /// <summary>Called after each commit, by one thread at a time.</summary>
    /// <param name="position">The position of the newest revision.</param>
    /// <param name="number">The highest revision number of the commit.</param>
    internal abstract void Committed(long position, long number);

    /// <summary>An open store.</summary>
    /// <param name="Upgrade">The upgrade, if it had an earlier schema.</param>
    /// <param name="Life">The name of its life.</param>
    /// <param name="Position">The position of its newest revision.</param>
    /// <param name="WhyAnotherLife">Why another life of it begins; null if the earlier one continues.</param>
    internal sealed record Opened(Upgrade? Upgrade, string Life, long Position, string? WhyAnotherLife);
}
