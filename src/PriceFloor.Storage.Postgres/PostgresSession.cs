using System.Data;
using Npgsql;

namespace PriceFloor.Storage.Postgres;

/// <summary>A transaction of PostgreSQL for one studio, on a connection of its own or on that of a <see cref="PostgresStaging"/>.</summary>
internal sealed class PostgresSession : Session
{
    private readonly NpgsqlConnection _connection;
    private readonly NpgsqlTransaction _transaction;
    private Standing _standing;
    private readonly bool _isOwner, _isReading;
    private bool _tellsLater;

    private PostgresSession(NpgsqlConnection connection, NpgsqlTransaction transaction, Standing standing, bool isOwner, bool isReading) =>
        (_connection, _transaction, _standing, _isOwner, _isReading) = (connection, transaction, standing, isOwner, isReading);

    /// <summary>Why another life began with this transaction; null if none did.</summary>
    public string? WhyAnotherLife { get; private set; }

    public override bool HasEnded => _connection.IsBroken();

    /// <summary>A transaction that reads, all of it from one moment.</summary>
    public static ValueTask<PostgresSession> Reading(NpgsqlConnection connection, ServedStudio studio, bool isOwner = true) =>
        Begin(connection, IsolationLevel.RepeatableRead, isOwner, studio.Reading, _ => default);

    /// <summary>
    /// A transaction that writes: it locks the row of the studio's life first, and each statement reads what was committed before it. A snapshot
    /// would be older than the lock. The first one after a standby took over begins another life, unless it has lost nothing.
    /// </summary>
    public static ValueTask<PostgresSession> Writing(NpgsqlConnection connection, ServedStudio studio, bool isOwner = true) =>
        Begin(connection, IsolationLevel.ReadCommitted, isOwner, studio.Writing, async session => await session.Resume(studio));

    /// <summary>A join by position would read all revisions of the studio, to compare them with those that were found.</summary>
    internal override string NewestAt =>
        """
        CROSS JOIN LATERAL (SELECT p.* FROM revision p WHERE p.kind = h.kind AND p.key = h.key AND p.saved_at <= @asOf
            ORDER BY p.saved_at DESC, p.number DESC LIMIT 1) r
        """;

    /// <summary>Here is an index on the times of a studio.</summary>
    internal override string PositionAt =>
        "SELECT coalesce((SELECT position FROM revision WHERE saved_at <= @asOf ORDER BY saved_at DESC, position DESC LIMIT 1), 0)";

    internal override StorePoint? Point => _standing.Point;

    internal override ValueTask<Standing> Standing() => new(_standing);

    internal override ValueTask<long> BytesOfDocuments(long upTo) => ExecuteScalar<long>(
        "SELECT coalesce(sum(octet_length(body)), 0) + count(*) * @BytesOfRow FROM revision WHERE position <= @upTo", new { upTo, Held.BytesOfRow });

    internal override ValueTask<long> BytesOfLog() => ExecuteScalar<long>(
        """
        SELECT (coalesce((SELECT max(position) FROM movement), 0) + coalesce((SELECT max(position) FROM bench), 0)) * @BytesOfRow
        """, new { Held.BytesOfRow });

    internal override async ValueTask Append(IReadOnlyList<Held> held) => await _connection.Together(Appending.Of(held));

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

    public override async ValueTask Insert(string table, IReadOnlyList<string> columns, IReadOnlyList<object?[]> rows)
    {
        if (!_tellsLater)
            await _connection.Run("SELECT set_config('pf.told_later', 'yes', true)");
        _tellsLater = true;
        await _connection.Insert(table, columns, rows);
    }

    public override ValueTask<T?> ExecuteScalar<T>(string sql, object? parameters = null) where T : default =>
        _connection.ExecuteScalar<T>(sql, parameters);

    public override ValueTask<List<T>> Query<T>(string sql, object? parameters = null) => _connection.Query<T>(sql, parameters);

    public override ValueTask Read(string sql, IReadOnlyList<(string Name, long? Value)> parameters, Action<Row> take) =>
        _connection.Read(sql, parameters, take);

    /// <summary>Rows that were inserted one by one told nobody where the studio stands.</summary>
    public override async ValueTask Keep()
    {
        if (_tellsLater)
            await _connection.Run("SELECT tell_where_it_stands()");
        await _transaction.Keep();
    }

    /// <summary>All of it is one round trip.</summary>
    internal override ValueTask Keep(IReadOnlyList<Held> last) =>
        last.Count == 0 || _tellsLater ? base.Keep(last) : _connection.Keep(Appending.Of(last));

    public override ValueTask Mark(string moment) => _transaction.Mark(moment);

    public override ValueTask GoBackTo(string moment) => _transaction.GoBackTo(moment);

    /// <summary>Nobody waits for the end of a transaction that only read.</summary>
    public override ValueTask DisposeAsync()
    {
        var ending = EndAsync();
        return _isOwner && _isReading ? default : ending;
    }

    private async ValueTask EndAsync()
    {
        await _transaction.End();
        if (_isOwner)
            await _connection.DisposeAsync();
    }

    private static async ValueTask<PostgresSession> Begin(NpgsqlConnection connection, IsolationLevel level, bool isOwner,
        IReadOnlyList<(string Sql, object?[] Values)> first, Func<PostgresSession, ValueTask> tookOver)
    {
        NpgsqlTransaction? transaction = null;
        try
        {
            transaction = await connection.Begin(level);
            var (standing, isAnother) = ServedStudio.Of(await connection.Together(first));
            var session = new PostgresSession(connection, transaction, standing, isOwner, level == IsolationLevel.RepeatableRead);
            if (isAnother)
                await tookOver(session);
            return session;
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

    /// <summary>Continues the studio, or begins another life of it and says why.</summary>
    public async ValueTask<string?> Resume(ServedStudio studio)
    {
        WhyAnotherLife = await Continuity.Resume(this, studio.LosesNothing);
        (_standing, _) = ServedStudio.Of(await _connection.Together(studio.Reading));
        return WhyAnotherLife;
    }
}
