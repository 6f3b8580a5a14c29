using System.Globalization;
using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage;

/// <summary>
/// The SQLite file: append-only revisions and keys. Write-ahead log, synchronous=FULL: what was acknowledged survives a power cut.
/// SQLite works synchronously, so these methods do too; one writer at a time, any number of readers.
/// </summary>
public sealed class Store : IDisposable
{
    private readonly string _connectionString;
    private readonly TimeProvider _clock;
    private readonly SharedCommits _writes;
    private readonly HighWaterKeeper _highWater;
    private Mark? _mark;
    private long _position;
    private bool _isOpen;

    public Store(string path, TimeProvider clock)
    {
        Path = path;
        _clock = clock;
        _connectionString =
            new SqliteConnectionStringBuilder { DataSource = path, ForeignKeys = true, DefaultTimeout = 5, Pooling = true }.ToString();
        _highWater = new HighWaterKeeper(path, clock, MarkAt);
        _writes = new SharedCommits(Connect, clock, Advance);
    }

    /// <summary>The store's file.</summary>
    public string Path { get; }

    /// <summary>Loads what reads and writes a store, by way of one in memory, so that opening one has less to wait for.</summary>
    public static void LoadLibraries()
    {
        using var connection = EngineCalls.Open("Data Source=:memory:");
        connection.ExecuteScalar<long>("SELECT @one", new { one = 1L });
    }

    /// <summary>The name of the store's life, which goes on as long as it is open: positions of another life mean nothing in it.</summary>
    public string LifeName { get; private set; } = "";

    /// <summary>Why this is not the store that was served here last, so that another life of it began when it was opened; null where it is.</summary>
    public string? WhyAnotherLife { get; private set; }

    /// <summary>The position of the newest revision that is committed.</summary>
    public long Position => Interlocked.Read(ref _position);

    /// <summary>How many writes the engine has refused since the store was opened.</summary>
    public long RefusedWrites => _writes.Refused;

    /// <summary>Whether the engine refused the last write for another reason than a lock: no space, no right, a broken disk.</summary>
    public bool IsRefusingWrites => _writes.IsRefusing;

    /// <summary>True where the file has an earlier schema, so that opening it takes a while. A file of another program is refused.</summary>
    public bool IsBehind()
    {
        if (!HasContent)
            return false;
        try
        {
            using var connection = StoreFile.Open(Path);
            return !IsUnbegun(connection) && StoreFile.SchemaOf(connection, Path) < Migrations.Newest;
        }
        catch (StoreTroubleException)
        {
            return false;
        }
    }

    /// <summary>Creates the file where there is none and brings it to the newest schema; says so where it had an earlier one.</summary>
    public Upgrade? Open()
    {
        try
        {
            DataFolder.Create(System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(Path))!);
            if (File.Exists(Path))
                RefuseAlienFile();
            else
                StoreFile.Create(Path).Dispose(); // SQLite would make it readable for everybody
            using var connection = Connect();
            var upgrade = Upgrading.Bring(connection, Path, _clock.GetUtcNow());
            (var now, WhyAnotherLife) = Continuity.Resume(connection, Path);
            (_position, LifeName) = (now.Position, now.Life);
            _highWater.Begin(now);
            _isOpen = true;
            return upgrade;
        }
        catch (Exception e) when (e is StoreTroubleException or IOException or UnauthorizedAccessException)
        {
            throw DataFolder.CannotOpenStore(Path, e);
        }
    }

    /// <summary>
    /// What the history up to a position is known by: twelve letters that another file, or the same one after other writes, does not have there.
    /// </summary>
    public string MarkAt(long position)
    {
        if (Volatile.Read(ref _mark) is { } known && known.Position == position)
            return known.Text;
        var text = Read(snapshot => snapshot.MarkAt(position));
        Volatile.Write(ref _mark, new Mark(position, text));
        return text;
    }

    /// <summary>Reads from one moment: what others write meanwhile is not seen.</summary>
    public T Read<T>(Func<Snapshot, T> read)
    {
        using var connection = Connect();
        using var transaction = connection.Begin(deferred: true);
        return read(new Snapshot(connection, transaction));
    }

    /// <summary>
    /// Reads and writes as one: kept when <paramref name="write"/> returns, and taken back when it throws or says <see cref="Writing.Undo"/>. Returns
    /// when it is committed, often together with what others wrote meanwhile.
    /// </summary>
    public T Write<T>(string savedBy, Func<Writing, T> write) => _writes.Write(savedBy, write);

    /// <summary>The same without holding a thread while others write.</summary>
    public Task<T> WriteAsync<T>(string savedBy, Func<Writing, T> write) => _writes.WriteAsync(savedBy, write);

    /// <summary>Writes a row that means nothing; false where other writes leave no moment for it. A store that cannot be written throws.</summary>
    public bool Probe(TimeSpan within) => _writes.Alone(within, () =>
    {
        using var connection = Connect();
        connection.DefaultTimeout = int.Max(1, (int)within.TotalSeconds);
        connection.Execute(string.Create(CultureInfo.InvariantCulture, $"PRAGMA busy_timeout={within.TotalMilliseconds:0}"));
        connection.Execute("INSERT INTO probe (only, written_at) VALUES (1, @now) ON CONFLICT (only) DO UPDATE SET written_at = excluded.written_at",
            new { now = Moment.Of(_clock.GetUtcNow()) });
    });

    /// <summary>Closes the connections and brings what stands in the write-ahead log into the file, so that it can be copied as it is.</summary>
    public void Dispose()
    {
        _highWater.Dispose(); // reads its last mark
        using var connection = new SqliteConnection(_connectionString);
        SqliteConnection.ClearPool(connection);
        if (_isOpen)
            Checkpoint();
        _writes.Dispose();
    }

    /// <summary>Called after each commit, by one at a time.</summary>
    private void Advance(long position, long number)
    {
        Interlocked.Exchange(ref _position, position);
        _highWater.Advance(position, number);
    }

    private void Checkpoint()
    {
        try
        {
            using var connection = StoreFile.Open(Path);
            connection.Execute("PRAGMA wal_checkpoint(TRUNCATE)");
        }
        catch (Exception e) when (e is StoreTroubleException or StoreException)
        {
            // Nothing is lost: the log stays, and whoever opens the store next reads it.
        }
    }

    private sealed record Mark(long Position, string Text);

    private bool HasContent => new FileInfo(Path) is { Exists: true, Length: > 0 };

    /// <summary>A file of another program, or one that lost its end, is left as it is. An empty one is a store that was never begun.</summary>
    private void RefuseAlienFile()
    {
        if (!HasContent)
            return;
        using var connection = StoreFile.Open(Path);
        if (IsUnbegun(connection))
            return;
        StoreFile.SchemaOf(connection, Path);
        if (connection.ExecuteScalar<string>("PRAGMA quick_check(1)") is var found && found != "ok")
            throw DataFolder.NotAStore(Path, found ?? "it cannot be read.");
    }

    /// <summary>Made, but stopped before its first table.</summary>
    private static bool IsUnbegun(SqliteConnection connection) =>
        connection.ExecuteScalar<long>("SELECT count(*) FROM sqlite_master") == 0 && connection.ExecuteScalar<int>("PRAGMA user_version") == 0;

    private SqliteConnection Connect()
    {
        var connection = EngineCalls.Open(_connectionString);
        connection.Execute("PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA busy_timeout=5000;");
        return connection;
    }
}
