using System.Data;
using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>A transaction of PostgreSQL for one studio, on a connection of its own or on that of a <see cref="PostgresStaging"/>.</summary>
internal sealed class PostgresSession : Session
{
    private readonly NpgsqlConnection _connection;
    private readonly NpgsqlTransaction _transaction;
    private readonly bool _isOwner;

    private PostgresSession(NpgsqlConnection connection, NpgsqlTransaction transaction, bool isOwner) =>
        (_connection, _transaction, _isOwner) = (connection, transaction, isOwner);

    public override bool HasEnded => _connection.IsBroken();

    /// <summary>A transaction that reads, all of it from one moment.</summary>
    public static ValueTask<PostgresSession> Reading(NpgsqlConnection connection, ServedStudio studio, bool isOwner = true) =>
        Begin(connection, IsolationLevel.RepeatableRead, isOwner,
            ("SELECT set_config('pf.studio', $1, true)", studio.Number), (ServedStudio.Standing, null), studio);

    /// <summary>
    /// A transaction that writes: it locks the row of the studio's life first, and each statement reads what was committed before it. A snapshot
    /// would be older than the lock.
    /// </summary>
    public static ValueTask<PostgresSession> Writing(NpgsqlConnection connection, ServedStudio studio, bool isOwner = true) =>
        Begin(connection, IsolationLevel.ReadCommitted, isOwner,
            ("SELECT set_config('pf.studio', $1, true), set_config('lock_timeout', '5s', true)", studio.Number),
            (ServedStudio.Standing + " FOR UPDATE", null), studio);

    public override ValueTask<int> Execute(string sql, object? parameters = null) => _connection.Execute(sql, parameters);

    public override async ValueTask MakeTemporary(string table, IReadOnlyList<TemporaryColumn> columns)
    {
        var listed = columns.Select((column, n) => $"{column.Name} {(column.IsBytes ? "bytea" : "bigint")}{(n == 0 ? " PRIMARY KEY" : "")}");
        await _connection.Run($"DROP TABLE IF EXISTS pg_temp.{table}; CREATE TEMPORARY TABLE {table} ({string.Join(", ", listed)})");
    }

    /// <summary>Also counts the rows, so the engine knows how to join them.</summary>
    public override async ValueTask Fill(string table, IReadOnlyList<string> columns, IEnumerable<object?[]> rows)
    {
        await _connection.Fill(table, columns, rows);
        await _connection.Run($"ANALYZE {table}");
    }

    public override ValueTask<T?> ExecuteScalar<T>(string sql, object? parameters = null) where T : default =>
        _connection.ExecuteScalar<T>(sql, parameters);

    public override ValueTask<List<T>> Query<T>(string sql, object? parameters = null) => _connection.Query<T>(sql, parameters);

    public override ValueTask<List<T>> Read<T>(string sql, IReadOnlyList<(string Name, long? Value)> parameters, Func<Row, T> of) =>
        _connection.Read(sql, parameters, of);

    public override ValueTask Keep() => _transaction.Keep();

    public override ValueTask Mark(string moment) => _transaction.Mark(moment);

    public override ValueTask GoBackTo(string moment) => _transaction.GoBackTo(moment);

    public override async ValueTask DisposeAsync()
    {
        await _transaction.End();
        if (_isOwner)
            await _connection.DisposeAsync();
    }

    private static async ValueTask<PostgresSession> Begin(NpgsqlConnection connection, IsolationLevel level, bool isOwner,
        (string Sql, object? Value) first, (string Sql, object? Value) standing, ServedStudio studio)
    {
        NpgsqlTransaction? transaction = null;
        try
        {
            transaction = await connection.Begin(level);
            studio.MustStand(await connection.Together(first, standing) as string);
            return new PostgresSession(connection, transaction, isOwner);
        }
        catch
        {
            if (transaction is not null)
                await transaction.End();
            if (isOwner)
                await connection.DisposeAsync();
            throw;
        }
    }
}
