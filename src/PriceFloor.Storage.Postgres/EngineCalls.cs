using System.Data;
using System.Net.Sockets;
using Dapper;
using Npgsql;
using NpgsqlTypes;

namespace PriceFloor.Storage.Postgres;

/// <summary>
/// Every call of the engine is made here, so its exceptions leave the store as a <see cref="StoreTroubleException"/>. A test fails on a call
/// elsewhere.
/// </summary>
internal static class EngineCalls
{
    public static ValueTask<NpgsqlConnection> Connect(this NpgsqlDataSource source) => Asked(() => source.OpenConnectionAsync().AsTask());

    public static ValueTask<int> Execute(this NpgsqlConnection connection, string sql, object? parameters = null) =>
        parameters is IEnumerable<object> each ? ExecuteEach(connection, sql, each)
            : Asked(() => SqlMapper.ExecuteAsync(connection, Statement.Of(sql).Text, Parameters(sql, parameters)));

    public static ValueTask<T?> ExecuteScalar<T>(this NpgsqlConnection connection, string sql, object? parameters = null) =>
        Asked(() => SqlMapper.ExecuteScalarAsync<T>(connection, Statement.Of(sql).Text, Parameters(sql, parameters)));

    public static async ValueTask<List<T>> Query<T>(this NpgsqlConnection connection, string sql, object? parameters = null) =>
        (await Asked(() => SqlMapper.QueryAsync<T>(connection, Statement.Of(sql).Text, Parameters(sql, parameters)))).AsList();

    /// <summary>A script of many statements, as it is.</summary>
    public static ValueTask<int> Run(this NpgsqlConnection connection, string script) => Asked(() => SqlMapper.ExecuteAsync(connection, script));

    /// <summary>Statements on the way to the server at once, and the first row of the last one's answer; null if it has none.</summary>
    public static ValueTask<object?[]?> Together(this NpgsqlConnection connection, IReadOnlyList<(string Sql, object?[] Values)> statements) =>
        Asked(async () => (await AnswersTo(connection, statements))[^1].FirstOrDefault());

    /// <summary>
    /// The last statements of a transaction and its commit at once. After an error of the server nothing is kept; nobody knows if the connection
    /// ends before the answer.
    /// </summary>
    public static async ValueTask Keep(this NpgsqlConnection connection, IReadOnlyList<(string Sql, object?[] Values)> last)
    {
        try
        {
            await AnswersTo(connection, [.. last, ("COMMIT", [])]);
        }
        catch (Exception e) when (IsOfEngine(e))
        {
            throw new StoreTroubleException(TroubleOf(e), e) { MayBeKept = e is not PostgresException { InvariantSeverity: "ERROR" } };
        }
    }

    /// <summary>All rows of a statement's answer.</summary>
    public static ValueTask<List<object?[]>> Rows(this NpgsqlConnection connection, string sql, params object[] values) =>
        Asked(async () => (await AnswersTo(connection, [(sql, values)]))[0]);

    /// <summary>The same for many rows of numbers, without an object for each of them.</summary>
    public static async ValueTask Read(this NpgsqlConnection connection, string sql, IReadOnlyList<(string Name, long? Value)> parameters,
        Action<Row> take) => await Asked(async () =>
    {
        var statement = Statement.Of(sql);
        await using var command = new NpgsqlCommand(statement.Text, connection);
        foreach (var (name, value) in parameters.Where(one => statement.Names.Contains(one.Name.TrimStart('@'))))
            command.Parameters.Add(new NpgsqlParameter(name, NpgsqlDbType.Bigint) { Value = value ?? (object)DBNull.Value });
        await using var reader = await command.ExecuteReaderAsync();
        var row = new PostgresRow(reader);
        while (await reader.ReadAsync())
            take(row);
        return true;
    });

    /// <summary>Copies rows into a table.</summary>
    public static async ValueTask Fill(this NpgsqlConnection connection, string table, IReadOnlyList<string> columns, IEnumerable<object?[]> rows) =>
        await Asked(async () =>
        {
            await using var copy = await connection.BeginBinaryImportAsync($"COPY {table} ({string.Join(", ", columns)}) FROM STDIN (FORMAT BINARY)");
            foreach (var row in rows)
            {
                await copy.StartRowAsync();
                foreach (var value in row)
                    await (value switch
                    {
                        long number => copy.WriteAsync(number, NpgsqlDbType.Bigint),
                        byte[] bytes => copy.WriteAsync(bytes, NpgsqlDbType.Bytea),
                        string text => copy.WriteAsync(text, NpgsqlDbType.Text),
                        _ => copy.WriteNullAsync(),
                    });
            }

            return await copy.CompleteAsync();
        });

    /// <summary>
    /// Inserts rows into a table with a wall around each studio, into which nothing can be copied: many statements on the way at once.
    /// </summary>
    public static async ValueTask Insert(this NpgsqlConnection connection, string table, IReadOnlyList<string> columns,
        IReadOnlyList<object?[]> rows)
    {
        await using var batch = new NpgsqlBatch(connection);
        var sql = $"INSERT INTO {table} ({string.Join(", ", columns)}) VALUES ({string.Join(", ", columns.Select((_, n) => $"${n + 1}"))})";
        foreach (var row in rows)
        {
            var one = new NpgsqlBatchCommand(sql);
            foreach (var value in row)
                one.Parameters.Add(new NpgsqlParameter { Value = value ?? DBNull.Value });
            batch.BatchCommands.Add(one);
        }

        try
        {
            await batch.ExecuteNonQueryAsync();
        }
        catch (NpgsqlException e)
        {
            var row = e.BatchCommand is NpgsqlBatchCommand refused ? batch.BatchCommands.IndexOf(refused) : (int?)null;
            throw new StoreTroubleException(TroubleOf(e), e) { Row = row };
        }
        catch (Exception e) when (IsOfEngine(e))
        {
            throw new StoreTroubleException(TroubleOf(e), e);
        }
    }

    /// <summary>Begins with the first statement that follows.</summary>
    public static ValueTask<NpgsqlTransaction> Begin(this NpgsqlConnection connection, IsolationLevel level) =>
        Asked(() => connection.BeginTransactionAsync(level).AsTask());

    /// <summary>Commits.</summary>
    public static async ValueTask Keep(this NpgsqlTransaction transaction) => await Asked(() => Done(transaction.CommitAsync()));

    /// <summary>Sets a savepoint in the transaction.</summary>
    public static async ValueTask Mark(this NpgsqlTransaction transaction, string moment) => await Asked(() => Done(transaction.SaveAsync(moment)));

    /// <summary>Rolls back to that savepoint.</summary>
    public static async ValueTask GoBackTo(this NpgsqlTransaction transaction, string moment) =>
        await Asked(() => Done(transaction.RollbackAsync(moment)));

    /// <summary>Rolls back what was not kept. A connection that is broken has nothing left to roll back.</summary>
    public static async ValueTask End(this NpgsqlTransaction transaction)
    {
        try
        {
            await transaction.DisposeAsync();
        }
        catch (Exception e) when (IsOfEngine(e) || e is InvalidOperationException or ObjectDisposedException)
        {
            // The server rolls back when it notices.
        }
    }

    /// <summary>Whether nothing more can be asked on a connection.</summary>
    public static bool IsBroken(this NpgsqlConnection connection) => connection.FullState is not ConnectionState.Open;

    private static async ValueTask<int> ExecuteEach(NpgsqlConnection connection, string sql, IEnumerable<object> each) => await Asked(async () =>
    {
        await using var batch = new NpgsqlBatch(connection);
        var text = Statement.Of(sql).Text;
        foreach (var one in each)
        {
            var command = new NpgsqlBatchCommand(text);
            foreach (var property in Statement.PropertiesOf(one))
                command.Parameters.Add(new NpgsqlParameter(property.Name, property.GetValue(one) ?? DBNull.Value));
            batch.BatchCommands.Add(command);
        }

        return batch.BatchCommands.Count == 0 ? 0 : await batch.ExecuteNonQueryAsync();
    });

    private static async Task<List<List<object?[]>>> AnswersTo(NpgsqlConnection connection, IReadOnlyList<(string Sql, object?[] Values)> statements)
    {
        await using var batch = new NpgsqlBatch(connection);
        foreach (var (sql, values) in statements)
        {
            var one = new NpgsqlBatchCommand(sql);
            foreach (var value in values)
                one.Parameters.Add(new NpgsqlParameter { Value = value ?? DBNull.Value });
            batch.BatchCommands.Add(one);
        }

        await using var reader = await batch.ExecuteReaderAsync();
        var answers = new List<List<object?[]>>();
        do
        {
            answers.Add([]);
            while (await reader.ReadAsync())
            {
                var row = new object?[reader.FieldCount];
                reader.GetValues(row!);
                answers[^1].Add(row);
            }
        }
        while (await reader.NextResultAsync());
        return answers;
    }

    private static object? Parameters(string sql, object? parameters)
    {
        if (Bound.Of(Statement.Of(sql), parameters) is not { } bound)
            return parameters;
        var given = new DynamicParameters();
        foreach (var (name, value, type) in bound)
            given.Add(name, value, type);
        return given;
    }

    private static async Task<bool> Done(Task work)
    {
        await work;
        return true;
    }

    private static async ValueTask<T> Asked<T>(Func<Task<T>> ask)
    {
        try
        {
            return await ask();
        }
        catch (Exception e) when (IsOfEngine(e))
        {
            throw new StoreTroubleException(TroubleOf(e), e);
        }
    }

    private static bool IsOfEngine(Exception fault) => fault is NpgsqlException or TimeoutException or SocketException;

    private static StoreTrouble TroubleOf(Exception fault) => (fault as PostgresException)?.SqlState switch
    {
        PostgresErrorCodes.DiskFull => StoreTrouble.Full,
        PostgresErrorCodes.ReadOnlySqlTransaction => StoreTrouble.ReadOnly, // a standby
        PostgresErrorCodes.IoError => StoreTrouble.Disk,
        PostgresErrorCodes.DataCorrupted or PostgresErrorCodes.IndexCorrupted => StoreTrouble.Damaged,
        PostgresErrorCodes.InsufficientPrivilege or PostgresErrorCodes.InvalidCatalogName => StoreTrouble.CannotOpen,
        { } state when state.StartsWith("28", StringComparison.Ordinal) => StoreTrouble.CannotOpen, // who asks is not let in
        null => StoreTrouble.Busy, // the network, or no answer in time
        { } state => IsPassing(state) ? StoreTrouble.Busy : StoreTrouble.Unexpected,
    };

    /// <summary>
    /// Connections, transactions that the server ended, rollbacks for the sake of others, resources, locks, an administrator who intervenes, the
    /// system.
    /// </summary>
    private static bool IsPassing(string state) => state[..2] is "08" or "25" or "40" or "53" or "55" or "57" or "58";
}
