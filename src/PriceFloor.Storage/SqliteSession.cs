using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage;

/// <summary>A transaction of SQLite, which works synchronously.</summary>
internal sealed class SqliteSession : Session
{
    private readonly SqliteConnection _connection;
    private readonly SqliteTransaction _transaction;
    private readonly bool _isOwner;

    private SqliteSession(SqliteConnection connection, bool deferred, bool isOwner)
    {
        (_connection, _isOwner) = (connection, isOwner);
        _transaction = connection.Begin(deferred);
    }

    public override bool HasEnded => _connection.HasEndedTransaction();

    /// <summary>A transaction on a connection that stays open after it.</summary>
    public static SqliteSession On(SqliteConnection connection, bool deferred) => new(connection, deferred, isOwner: false);

    /// <summary>A transaction that closes its connection when it ends.</summary>
    public static SqliteSession Alone(SqliteConnection connection, bool deferred)
    {
        try
        {
            return new SqliteSession(connection, deferred, isOwner: true);
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    public override int Execute(string sql, object? parameters = null) => _connection.Execute(sql, parameters, _transaction);

    public override T? ExecuteScalar<T>(string sql, object? parameters = null) where T : default =>
        _connection.ExecuteScalar<T>(sql, parameters, _transaction);

    public override List<T> Query<T>(string sql, object? parameters = null) => _connection.Query<T>(sql, parameters, _transaction);

    public void Keep() => _transaction.Keep();

    public override ValueTask KeepAsync()
    {
        Keep();
        return ValueTask.CompletedTask;
    }

    /// <summary>Rolls all of it back.</summary>
    public void TakeBack() => _transaction.TakeBack();

    public override void Mark(string moment) => _transaction.Mark(moment);

    public override void GoBackTo(string moment) => _transaction.GoBackTo(moment);

    public override void Dispose()
    {
        _transaction.Dispose();
        if (_isOwner)
            _connection.Dispose();
    }
}
