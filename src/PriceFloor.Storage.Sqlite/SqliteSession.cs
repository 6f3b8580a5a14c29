using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>A transaction of SQLite, which works synchronously: everything is done when its call returns.</summary>
internal sealed class SqliteSession : Session, IDisposable
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

    public override ValueTask<int> Execute(string sql, object? parameters = null) => new(_connection.Execute(sql, parameters, _transaction));

    /// <summary>Only the key has a type, so that it is the row's own number: what the columns hold stays as it comes.</summary>
    public override ValueTask MakeTemporary(string table, IReadOnlyList<TemporaryColumn> columns)
    {
        var others = string.Concat(columns.Skip(1).Select(column => $", {column.Name}"));
        _connection.Execute($"DROP TABLE IF EXISTS {table}; CREATE TEMP TABLE {table} ({columns[0].Name} INTEGER PRIMARY KEY{others})",
            transaction: _transaction);
        return ValueTask.CompletedTask;
    }

    public override ValueTask Fill(string table, IReadOnlyList<string> columns, IEnumerable<object?[]> rows)
    {
        _connection.Fill(table, columns, rows);
        return ValueTask.CompletedTask;
    }

    public override ValueTask Insert(string table, IReadOnlyList<string> columns, IReadOnlyList<object?[]> rows)
    {
        var row = -1;
        try
        {
            _connection.Fill(table, columns, rows.Select(one =>
            {
                row++;
                return one;
            }));
            return ValueTask.CompletedTask;
        }
        catch (StoreTroubleException e)
        {
            throw new StoreTroubleException(e.Trouble, e.InnerException ?? e) { Row = row };
        }
    }

    public override ValueTask<T?> ExecuteScalar<T>(string sql, object? parameters = null) where T : default =>
        new(_connection.ExecuteScalar<T>(sql, parameters, _transaction));

    public override ValueTask<List<T>> Query<T>(string sql, object? parameters = null) => new(_connection.Query<T>(sql, parameters, _transaction));

    public override ValueTask Read(string sql, IReadOnlyList<(string Name, long? Value)> parameters, Action<Row> take)
    {
        _connection.Read(sql, parameters, take);
        return ValueTask.CompletedTask;
    }

    public override ValueTask Keep()
    {
        _transaction.Keep();
        return ValueTask.CompletedTask;
    }

    public override ValueTask Mark(string moment)
    {
        _transaction.Mark(moment);
        return ValueTask.CompletedTask;
    }

    public override ValueTask GoBackTo(string moment)
    {
        _transaction.GoBackTo(moment);
        return ValueTask.CompletedTask;
    }

    public override ValueTask DisposeAsync()
    {
        Dispose();
        return ValueTask.CompletedTask;
    }

    public void Dispose()
    {
        _transaction.Dispose();
        if (_isOwner)
            _connection.Dispose();
    }
}
