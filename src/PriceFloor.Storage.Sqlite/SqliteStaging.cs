using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>A connection of SQLite that is closed when it has served, and its temporary tables, which are in memory, with it.</summary>
internal sealed class SqliteStaging : Staging
{
    private readonly SqliteConnection _connection;

    public SqliteStaging(SqliteConnection connection)
    {
        _connection = connection;
        _connection.Execute("PRAGMA temp_store=MEMORY; PRAGMA cache_size=-32768");
    }

    public override ValueTask<Session> BeginPreparing() => new(SqliteSession.On(_connection, deferred: true));

    public override ValueTask<Session> BeginWriting(bool isLarge)
    {
        _connection.Execute(isLarge ? "PRAGMA wal_autocheckpoint=0" : "PRAGMA wal_autocheckpoint=1000"); // pages; 1,000 is usual
        return new(SqliteSession.On(_connection, deferred: false));
    }

    public override ValueTask Settle()
    {
        _connection.Execute("PRAGMA wal_checkpoint(PASSIVE)");
        return ValueTask.CompletedTask;
    }

    public override ValueTask DisposeAsync()
    {
        _connection.Dispose();
        return ValueTask.CompletedTask;
    }
}
