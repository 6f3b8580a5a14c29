using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>Checks the log of a store.</summary>
internal static class LogCheck
{
    /// <summary>What is wrong with it; nothing in a store whose schema has no log.</summary>
    public static IEnumerable<string> Of(SqliteConnection connection) =>
        connection.ExecuteScalar<long>("SELECT count(*) FROM sqlite_master WHERE name = 'log_batch'") == 0 ? []
        : Lines(connection, LogList.Movements, ["design", "place", "currency", "stall", "piece"])
            .Concat(Lines(connection, LogList.Bench, ["design", "step"])).Concat(Batches(connection)).Concat(Secret(connection));

    private static IEnumerable<string> Lines(SqliteConnection connection, LogList list, string[] named)
    {
        var names = string.Join("\nUNION ALL ", named.Append("source").Select(column =>
            $"""
             SELECT 'line ' || position || ' of {list.Table}: its {column} has no name.' FROM {list.Table}
             WHERE {column} IS NOT NULL AND {column} NOT IN (SELECT id FROM name)
             """));
        return connection.Query<string>(
            $"""
             {names}
             UNION ALL SELECT 'line ' || position || ' of {list.Table}: it ends before it begins.' FROM {list.Table} WHERE ended <= position
             UNION ALL SELECT 'line ' || position || ' of {list.Table}: it is not in a batch of this list.' FROM {list.Table} AS line
                 WHERE NOT EXISTS (SELECT 1 FROM log_batch AS b
                     WHERE b.id = line.batch AND b.list IN ('{list.Table}', '{list.Coming}') AND b.last >= line.position)
             UNION ALL SELECT 'line ' || position || ' of {list.Table}: it ends after the last batch.' FROM {list.Table}
                 WHERE ended > (SELECT max(last) FROM log_batch WHERE list IN ('{list.Table}', '{list.Coming}'))
             """);
    }

    private static IEnumerable<string> Batches(SqliteConnection connection) => connection.Query<string>(
        """
        SELECT 'batch ' || id || ' of ' || list || ': has an earlier time or position than the one before it.'
        FROM (SELECT id, list, last, at, lag(at) OVER (PARTITION BY list ORDER BY id) AS time_before, lag(last) OVER (PARTITION BY list ORDER BY id) AS before
              FROM log_batch) WHERE at < time_before OR last <= before
        """);

    private static IEnumerable<string> Secret(SqliteConnection connection) =>
        connection.ExecuteScalar<long>("SELECT count(*) FROM log_secret WHERE length(secret) = 32") == 1 ? []
            : ["The secret of the log is missing: its lines and orders cannot be known again."];
}
