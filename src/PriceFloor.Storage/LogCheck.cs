namespace PriceFloor.Storage;

/// <summary>Checks the log of a store.</summary>
internal static class LogCheck
{
    /// <summary>What is wrong with it.</summary>
    public static async ValueTask<List<string>> Of(Session session) =>
    [
        .. await Lines(session, LogList.Movements, ["design", "place", "currency", "stall", "piece"]),
        .. await Lines(session, LogList.Bench, ["design", "step"]), .. await Batches(session), .. await Secret(session),
    ];

    private static ValueTask<List<string>> Lines(Session session, LogList list, string[] named)
    {
        var names = string.Join("\nUNION ALL ", named.Append("source").Select(column =>
            $"""
             SELECT 'line ' || position || ' of {list.Table}: its {column} has no name.' FROM {list.Table}
             WHERE {column} IS NOT NULL AND {column} NOT IN (SELECT id FROM name)
             """));
        return session.Query<string>(
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

    private static ValueTask<List<string>> Batches(Session session) => session.Query<string>(
        """
        SELECT 'batch ' || id || ' of ' || list || ': has an earlier time or position than the one before it.'
        FROM (SELECT id, list, last, at, lag(at) OVER (PARTITION BY list ORDER BY id) AS time_before, lag(last) OVER (PARTITION BY list ORDER BY id) AS before
              FROM log_batch) AS batch WHERE at < time_before OR last <= before
        """);

    private static async ValueTask<List<string>> Secret(Session session) =>
        await session.ExecuteScalar<long>("SELECT count(*) FROM log_secret WHERE length(secret) = 32") == 1 ? []
            : ["The secret of the log is missing: its lines and orders cannot be known again."];
}
