using System.Globalization;
using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>
/// One SQLite file. Write-ahead log, synchronous=FULL: what was acknowledged survives a power cut. SQLite works synchronously, so everything
/// that is awaited is done when its call returns; one writer at a time, any number of readers.
/// </summary>
internal sealed class SqliteEngine : Engine
{
    /// <summary>Milliseconds.</summary>
    private const int BusyTimeout = 5000;

    private readonly string _path;
    private readonly string _connectionString;
    private readonly string _beginning;
    private readonly HighWaterKeeper _highWater;
    private bool _isOpen;
    private volatile bool _keepsConnections;

    /// <param name="path">The file.</param>
    /// <param name="clock">The clock.</param>
    /// <param name="cacheKibibytes">
    /// How much of the file each connection keeps in memory, if it is one file of many. Then connections are kept only once something is written:
    /// most studios are only asked for prices, which are in memory.
    /// </param>
    public SqliteEngine(string path, TimeProvider clock, int? cacheKibibytes = null)
    {
        _keepsConnections = cacheKibibytes is null;
        _beginning = $"PRAGMA foreign_keys=ON; PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA busy_timeout={BusyTimeout};"
            + (cacheKibibytes is { } cache ? string.Create(CultureInfo.InvariantCulture, $" PRAGMA cache_size=-{cache};") : "");
        _path = path;
        _connectionString = new SqliteConnectionStringBuilder { DataSource = path, DefaultTimeout = 5, Pooling = true }.ToString();
        _highWater = new HighWaterKeeper(path, clock, MarkAt);
    }

    public override bool AnswersAtOnce => true;

    public override long Bytes => SizeOf(_path) + SizeOf(_path + "-wal");

    /// <summary>Loads the code that reads and writes a store, by using one in memory.</summary>
    public static void Load()
    {
        using var connection = EngineCalls.Open("Data Source=:memory:");
        connection.ExecuteScalar<long>("SELECT @one", new { one = 1L });
    }

    /// <summary>A file of another program is refused.</summary>
    public override bool IsBehind()
    {
        if (!HasContent)
            return false;
        try
        {
            using var connection = StoreFile.Open(_path);
            return !IsUnbegun(connection) && StoreFile.SchemaOf(connection, _path) < Migrations.Newest;
        }
        catch (StoreTroubleException)
        {
            return false;
        }
    }

    protected internal override Opened Open(DateTimeOffset now)
    {
        try
        {
            DataFolder.Create(Path.GetDirectoryName(Path.GetFullPath(_path))!);
            if (!File.Exists(_path))
                StoreFile.Create(_path).Dispose(); // SQLite would make it readable for everybody
            using var connection = StoreFile.Open(_path);
            RefuseAlienFile(connection);
            connection.Execute(_beginning);
            var upgrade = Upgrading.Bring(connection, _path, now);
            var (standing, why) = Continuity.Resume(connection, _path);
            _highWater.Begin(standing);
            _isOpen = true;
            return new Opened(upgrade, standing.Life, standing.Position, why);
        }
        catch (Exception e) when (e is StoreTroubleException or IOException or UnauthorizedAccessException)
        {
            throw StoreFaults.CannotOpen(_path, e);
        }
    }

    protected internal override ValueTask<Session> BeginReading() => new(SqliteSession.Alone(Connect(), deferred: true));

    protected internal override ValueTask<Session> BeginWriting()
    {
        _keepsConnections = true;
        return new(SqliteSession.Alone(Connect(), deferred: false));
    }

    /// <summary>Of its own: its temporary tables go when it closes.</summary>
    protected internal override ValueTask<Staging> BeginStaging() => new(new SqliteStaging(Connect(keeps: false)));

    protected internal override ValueTask Probe(TimeSpan within, DateTimeOffset now)
    {
        using var connection = Connect();
        connection.DefaultTimeout = int.Max(1, (int)within.TotalSeconds);
        connection.Execute(string.Create(CultureInfo.InvariantCulture, $"PRAGMA busy_timeout={within.TotalMilliseconds:0}"));
        try
        {
            connection.Execute(
                "INSERT INTO probe (only, written_at) VALUES (1, @now) ON CONFLICT (only) DO UPDATE SET written_at = excluded.written_at",
                new { now = Moment.Of(now) });
            return ValueTask.CompletedTask;
        }
        finally
        {
            connection.Execute($"PRAGMA busy_timeout={BusyTimeout}"); // the connection is used again
        }
    }

    protected internal override void Committed(long position, long number) => _highWater.Advance(position, number);

    /// <summary>Closes the connections and moves the write-ahead log into the file, so the file can be copied as it is.</summary>
    public override void Dispose()
    {
        _highWater.Dispose(); // reads its last mark
        using var connection = new SqliteConnection(_connectionString);
        SqliteConnection.ClearPool(connection);
        if (_isOpen)
            Checkpoint();
    }

    private string MarkAt(long position)
    {
        using var session = SqliteSession.Alone(Connect(), deferred: true);
        return new Snapshot(session).MarkAt(position).AtOnce();
    }

    private void Checkpoint()
    {
        try
        {
            using var connection = StoreFile.Open(_path);
            connection.Execute("PRAGMA wal_checkpoint(TRUNCATE)");
        }
        catch (Exception e) when (e is StoreTroubleException or StoreException)
        {
            // Nothing is lost: the log stays, and whoever opens the store next reads it.
        }
    }

    private bool HasContent => SizeOf(_path) > 0;

    private static long SizeOf(string path) => new FileInfo(path) is { Exists: true } file ? file.Length : 0;

    /// <summary>A file of another program, or one that lost its end, is left unchanged. An empty file is a store that was never begun.</summary>
    private void RefuseAlienFile(SqliteConnection connection)
    {
        if (!HasContent || IsUnbegun(connection))
            return;
        StoreFile.SchemaOf(connection, _path);
        if (connection.ExecuteScalar<string>("PRAGMA quick_check(1)") is var found && found != "ok")
            throw StoreFaults.NotAStore(_path, found ?? "it cannot be read.");
    }

    /// <summary>Made, but stopped before its first table.</summary>
    private static bool IsUnbegun(SqliteConnection connection) =>
        connection.ExecuteScalar<long>("SELECT count(*) FROM sqlite_master") == 0 && connection.ExecuteScalar<int>("PRAGMA user_version") == 0;

    private SqliteConnection Connect() => Connect(_keepsConnections);

    private SqliteConnection Connect(bool keeps) => EngineCalls.Open(keeps ? _connectionString : _connectionString + ";Pooling=False", _beginning);
}
