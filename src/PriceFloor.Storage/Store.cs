using Dapper;
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
    private readonly SemaphoreSlim _gate = new(1, 1);
    private long _position;

    public Store(string path, TimeProvider clock)
    {
        Path = path;
        _clock = clock;
        _connectionString = new SqliteConnectionStringBuilder { DataSource = path, ForeignKeys = true, DefaultTimeout = 5, Pooling = true }.ToString();
    }

    /// <summary>The store's file.</summary>
    public string Path { get; }

    /// <summary>The name of the store's life, which goes on as long as it is open: positions of another life mean nothing in it.</summary>
    public string LifeName { get; private set; } = "";

    /// <summary>The position of the newest revision that is committed.</summary>
    public long Position => Interlocked.Read(ref _position);

    /// <summary>Creates the file where there is none and brings it to the newest schema.</summary>
    public void Open()
    {
        try
        {
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(Path))!);
            RefuseAlienFile();
            using var connection = Connect();
            Migrations.Apply(connection);
            _position = connection.ExecuteScalar<long>("SELECT coalesce(max(position), 0) FROM revision");
            LifeName = connection.ExecuteScalar<string>("SELECT name FROM life")!;
        }
        catch (Exception e) when (e is SqliteException or IOException or UnauthorizedAccessException)
        {
            throw DataFolder.CannotOpenStore(Path, e);
        }
    }

    /// <summary>Reads from one moment: what others write meanwhile is not seen.</summary>
    public T Read<T>(Func<Snapshot, T> read)
    {
        using var connection = Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return read(new Snapshot(connection, transaction));
    }

    /// <summary>Reads and writes in one transaction, committed when <paramref name="write"/> returns, and rolled back when it throws or says <see cref="Writing.Undo"/>.</summary>
    public T Write<T>(string savedBy, Func<Writing, T> write)
    {
        _gate.Wait();
        try
        {
            using var connection = Connect();
            using var transaction = connection.BeginTransaction(deferred: false);
            var writing = new Writing(connection, transaction, savedBy, _clock.GetUtcNow());
            var result = write(writing);
            if (writing.IsUndone)
                return result; // disposing of the transaction rolls it back
            transaction.Commit();
            if (writing.LastPosition > 0)
                Interlocked.Exchange(ref _position, writing.LastPosition);
            return result;
        }
        finally
        {
            _gate.Release();
        }
    }

    public void Dispose()
    {
        using var connection = new SqliteConnection(_connectionString);
        SqliteConnection.ClearPool(connection);
        _gate.Dispose();
    }

    /// <summary>A file of another program, or one that lost its end, is left as it is. An empty one is a store that was never begun.</summary>
    private void RefuseAlienFile()
    {
        if (new FileInfo(Path) is not { Exists: true, Length: > 0 })
            return;
        using var connection = StoreFile.Open(Path);
        if (connection.ExecuteScalar<long>("SELECT count(*) FROM sqlite_master") == 0 && connection.ExecuteScalar<int>("PRAGMA user_version") == 0)
            return; // made, but stopped before its first table
        StoreFile.SchemaOf(connection, Path);
        if (connection.ExecuteScalar<string>("PRAGMA quick_check(1)") is var found && found != "ok")
            throw DataFolder.NotAStore(Path, found ?? "it cannot be read.");
    }

    private SqliteConnection Connect()
    {
        var connection = new SqliteConnection(_connectionString);
        connection.Open();
        connection.Execute("PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA busy_timeout=5000;");
        return connection;
    }
}
