using System.Runtime.CompilerServices;
using Dapper;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace PriceFloor.Storage.Sqlite;

/// <summary>
/// Every call of the engine is made here, so its exceptions leave the store as a <see cref="StoreTroubleException"/>. A test fails on a call
/// elsewhere.
/// </summary>
internal static class EngineCalls
{
    private static readonly ConditionalWeakTable<sqlite3, object?> s_withSettings = [];

    /// <summary>
    /// What Dapper makes for a statement serves all files, since they have one schema; else each would have its own. The engine guards no connection:
    /// each is used by one thread at a time, and its locks would be taken for every column. A process that has used the engine before keeps them.
    /// </summary>
    static EngineCalls()
    {
        SqlMapper.ConnectionStringComparer = new OneSchema(SqlMapper.ConnectionStringComparer);
        Batteries_V2.Init();
        raw.sqlite3_config(raw.SQLITE_CONFIG_MULTITHREAD);
    }

    public static SqliteConnection Open(string connectionString)
    {
        var connection = new SqliteConnection(connectionString);
        try
        {
            connection.Open();
            return connection;
        }
        catch (SqliteException e)
        {
            connection.Dispose();
            throw AsTrouble(e);
        }
    }

    /// <summary>
    /// A connection with settings. The engine's own connection stays open between uses and keeps them: to set them again would be a tenth of a
    /// write's time.
    /// </summary>
    public static SqliteConnection Open(string connectionString, string settings)
    {
        var connection = Open(connectionString);
        try
        {
            if (!s_withSettings.TryGetValue(connection.Handle!, out _))
            {
                connection.Execute(settings);
                s_withSettings.AddOrUpdate(connection.Handle!, null);
            }

            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    public static int Execute(this SqliteConnection connection, string sql, object? parameters = null, SqliteTransaction? transaction = null)
    {
        try
        {
            return SqlMapper.Execute(connection, sql, parameters, transaction);
        }
        catch (SqliteException e)
        {
            throw AsTrouble(e);
        }
    }

    public static T? ExecuteScalar<T>(this SqliteConnection connection, string sql, object? parameters = null, SqliteTransaction? transaction = null)
    {
        try
        {
            return SqlMapper.ExecuteScalar<T>(connection, sql, parameters, transaction);
        }
        catch (SqliteException e)
        {
            throw AsTrouble(e);
        }
    }

    public static List<T> Query<T>(this SqliteConnection connection, string sql, object? parameters = null, SqliteTransaction? transaction = null)
    {
        try
        {
            return SqlMapper.Query<T>(connection, sql, parameters, transaction).AsList();
        }
        catch (SqliteException e)
        {
            throw AsTrouble(e);
        }
    }

    /// <summary>The same for many rows of numbers, without an object for each of them.</summary>
    public static void Read(this SqliteConnection connection, string sql, IReadOnlyList<(string Name, long? Value)> parameters, Action<Row> take)
    {
        Check(connection, raw.sqlite3_prepare_v2(connection.Handle, sql, out var statement));
        using (statement)
        {
            foreach (var (name, value) in parameters)
                if (raw.sqlite3_bind_parameter_index(statement, name) is > 0 and var place)
                    Check(connection, Bind(statement, place, value));
            var row = new SqliteRow(statement.DangerousGetHandle());
            int result;
            while ((result = raw.sqlite3_step(statement)) == raw.SQLITE_ROW)
                take(row);
            Check(connection, result);
        }
    }

    /// <summary>Inserts rows by one statement that is compiled once: a row of twenty numbers takes a microsecond instead of ten.</summary>
    public static void Fill(this SqliteConnection connection, string table, IReadOnlyList<string> columns, IEnumerable<object?[]> rows)
    {
        var (values, bound) = (string.Join(", ", Enumerable.Repeat("?", columns.Count)), new object?[columns.Count]);
        Check(connection, raw.sqlite3_prepare_v2(connection.Handle, $"INSERT INTO {table} ({string.Join(", ", columns)}) VALUES ({values})",
            out var statement));
        using (statement)
            foreach (var row in rows)
            {
                for (var i = 0; i < row.Length; i++)
                    if (!Equals(row[i], bound[i]))
                        Check(connection, Bind(statement, i + 1, bound[i] = row[i])); // what is bound stays for the next row
                Check(connection, raw.sqlite3_step(statement));
                Check(connection, raw.sqlite3_reset(statement));
            }
    }

    public static SqliteTransaction Begin(this SqliteConnection connection, bool deferred)
    {
        try
        {
            return connection.BeginTransaction(deferred);
        }
        catch (SqliteException e)
        {
            throw AsTrouble(e);
        }
    }

    /// <summary>Commits.</summary>
    public static void Keep(this SqliteTransaction transaction)
    {
        try
        {
            transaction.Commit();
        }
        catch (SqliteException e)
        {
            throw AsTrouble(e);
        }
    }

    /// <summary>Sets a savepoint in the transaction.</summary>
    public static void Mark(this SqliteTransaction transaction, string moment)
    {
        try
        {
            transaction.Save(moment);
        }
        catch (SqliteException e)
        {
            throw AsTrouble(e);
        }
    }

    /// <summary>Rolls back to that savepoint.</summary>
    public static void GoBackTo(this SqliteTransaction transaction, string moment)
    {
        try
        {
            transaction.Rollback(moment);
        }
        catch (SqliteException e)
        {
            throw AsTrouble(e);
        }
    }

    /// <summary>Whether the engine has ended the transaction by itself: a full disk rolls all of it back.</summary>
    public static bool HasEndedTransaction(this SqliteConnection connection) => raw.sqlite3_get_autocommit(connection.Handle) != 0;

    private static int Bind(sqlite3_stmt statement, int place, object? value) => value switch
    {
        long number => raw.sqlite3_bind_int64(statement, place, number),
        byte[] bytes => raw.sqlite3_bind_blob(statement, place, bytes),
        string text => raw.sqlite3_bind_text(statement, place, text),
        _ => raw.sqlite3_bind_null(statement, place),
    };

    private static void Check(SqliteConnection connection, int result)
    {
        if (result is not (raw.SQLITE_OK or raw.SQLITE_DONE))
            throw AsTrouble(new SqliteException(raw.sqlite3_errmsg(connection.Handle).utf8_to_string(), result));
    }

    private static StoreTroubleException AsTrouble(SqliteException fault) => new(TroubleOf(fault.SqliteErrorCode & 0xFF), fault);

    private static StoreTrouble TroubleOf(int code) => code switch
    {
        // SQLITE_PROTOCOL: for ten seconds other connections took the log's locks first, as on a starved machine
        raw.SQLITE_BUSY or raw.SQLITE_LOCKED or raw.SQLITE_PROTOCOL => StoreTrouble.Busy,
        raw.SQLITE_FULL => StoreTrouble.Full,
        raw.SQLITE_CORRUPT or raw.SQLITE_NOTADB => StoreTrouble.Damaged,
        raw.SQLITE_READONLY => StoreTrouble.ReadOnly,
        raw.SQLITE_CANTOPEN => StoreTrouble.CannotOpen,
        raw.SQLITE_IOERR => StoreTrouble.Disk,
        _ => StoreTrouble.Unexpected,
    };

    /// <summary>Takes all connection strings of files for the same; others stay as they were.</summary>
    private sealed class OneSchema(IEqualityComparer<string> others) : IEqualityComparer<string>
    {
        private const string OfFile = "Data Source=";

        public bool Equals(string? x, string? y) => others.Equals(x, y) || (IsOfFile(x) && IsOfFile(y));

        public int GetHashCode(string text) => IsOfFile(text) ? OfFile.Length : others.GetHashCode(text);

        private static bool IsOfFile(string? text) => text?.StartsWith(OfFile, StringComparison.Ordinal) == true;
    }
}
