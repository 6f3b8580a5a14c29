namespace PriceFloor.Storage;

/// <summary>
/// What keeps a store: it makes and owns the connections, and knows what only one engine has. A <see cref="Store"/> is given one and works with any.
/// </summary>
public abstract class Engine : IDisposable
{
    /// <summary>A store in one file, beside the service.</summary>
    /// <param name="path">The file, which is made where there is none.</param>
    /// <param name="clock">The clock of the store.</param>
    public static Engine InFile(string path, TimeProvider clock) => new SqliteEngine(path, clock);

    /// <summary>Loads the libraries of a store in a file, so that opening one has less to wait for.</summary>
    public static void LoadLibraries() => SqliteEngine.Load();

    /// <summary>How much the store takes on the disk.</summary>
    public abstract long Bytes { get; }

    /// <summary>True where the store has an earlier schema, so that opening it takes a while.</summary>
    public abstract bool IsBehind();

    public abstract void Dispose();

    /// <summary>Makes the store where there is none, brings it to the newest schema, and takes it up where it was left.</summary>
    internal abstract Opened Open(DateTimeOffset now);

    /// <summary>A transaction that reads, all of it from one moment.</summary>
    internal abstract Session BeginReading();

    /// <summary>The same, without holding a thread while the engine is waited for.</summary>
    internal abstract ValueTask<Session> BeginReadingAsync();

    /// <summary>A transaction that writes: no other does until it ends.</summary>
    internal abstract ValueTask<Session> BeginWritingAsync();

    /// <summary>Writes a row that means nothing, through a connection of its own, or throws.</summary>
    internal abstract void Probe(TimeSpan within, DateTimeOffset now);

    /// <summary>Called after each commit, by one at a time.</summary>
    /// <param name="position">The position of the newest revision.</param>
    /// <param name="number">The highest revision number of the commit.</param>
    internal abstract void Committed(long position, long number);

    /// <summary>A store that is open.</summary>
    /// <param name="Upgrade">Where it had an earlier schema, what was done.</param>
    /// <param name="Life">The name of its life.</param>
    /// <param name="Position">The position of its newest revision.</param>
    /// <param name="WhyAnotherLife">Why another life of it begins; null where the one before goes on.</param>
    internal sealed record Opened(Upgrade? Upgrade, string Life, long Position, string? WhyAnotherLife);
}
