using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage;

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

    public override ValueTask<Session> BeginWriting() => new(SqliteSession.On(_connection, deferred: false));

    public override ValueTask DisposeAsync()
    {
        _connection.Dispose();
        return ValueTask.CompletedTask;
    }
}
