namespace PriceFloor.Storage;

/// <summary>The end of a list of the log. What was written behind it, by an appending that was stopped, is not there for anybody.</summary>
internal static class EndOfLog
{
    private const int Together = 10_000;

    /// <summary>The last position of a list; 0 if it never had a line.</summary>
    public static ValueTask<long> Of(Session session, LogList list) =>
        session.ExecuteScalar<long>("SELECT coalesce(max(last), 0) FROM log_batch WHERE list = @Table", new { list.Table });

    /// <summary>The lists of which lines are coming.</summary>
    public static async ValueTask<List<LogList>> Unfinished(Session session)
    {
        var coming = await session.Query<string>("SELECT list FROM log_batch WHERE list IN @all",
            new { all = LogList.All.Select(list => list.Coming) });
        return [.. LogList.All.Where(list => coming.Contains(list.Coming))];
    }

    /// <summary>Removes some of what is behind the end of a list; false if that was all.</summary>
    public static async ValueTask<bool> Clear(Session session, LogList list)
    {
        var those = new { end = await Of(session, list), list.Coming, Together };
        var (table, some) = (list.Table, $"(SELECT position FROM {list.Table} WHERE ended > @end LIMIT @Together)");
        if (await session.Execute(
                $"DELETE FROM {table} WHERE position IN (SELECT position FROM {table} WHERE position > @end LIMIT @Together)", those) > 0
            || await session.Execute($"UPDATE {table} SET ended = NULL WHERE position IN {some}", those) > 0) // after those that took their refs
            return true;
        await session.Execute("DELETE FROM log_batch WHERE list = @Coming", those);
        return false;
    }
}
