namespace PriceFloor.Storage;

/// <summary>The short transaction that takes staged lines into the log.</summary>
internal static class LogTakeover
{
    /// <summary>What became of the lines, and whether anything was written.</summary>
    public static async ValueTask<(LogAppended Done, bool IsKept)> TakeOver<T>(Session session, LogStage<T> stage, string by, long now)
        where T : LogLine
    {
        var (list, append) = (LogList.Of<T>(), stage.Append);
        if (append.SaysSomething)
            await Say(session, stage);
        await stage.CompareAgain(session);
        var states = (await session.Query<int>("SELECT state FROM staged ORDER BY n")).ConvertAll(state => (LogState)state);
        var gone = (await session.Query<int>("SELECT n FROM leaving WHERE n IS NOT NULL")).ToHashSet();
        var leaving = (int)await session.ExecuteScalar<long>("SELECT count(*) FROM leaving");
        var done = new LogAppended(states, [.. append.Withdrawn.Select((_, n) => gone.Contains(n))], leaving - gone.Count);
        if (append.Whole is not null && states.Exists(state => state is LogState.MadeTwice or LogState.OfAnother))
            return (done, false);
        var written = states.Count(state => state is LogState.Stored or LogState.Corrected);
        if (written + leaving > 0)
            await Write(session, list, (written, leaving), by, now);
        return (done, written + leaving > 0 || append.SaysSomething);
    }

    private static async ValueTask Write(Session session, LogList list, (int Written, int Leaving) count, string by, long now)
    {
        var before = await session.ExecuteScalar<long>("SELECT coalesce(max(last), 0) FROM log_batch WHERE list = @Table", new { list.Table });
        var last = before + count.Written + (count.Leaving > 0 ? 1 : 0); // those that leave together end at one position
        var at = long.Max(now, await session.ExecuteScalar<long>("SELECT coalesce(max(at), 0) FROM log_batch"));
        var batch = await session.ExecuteScalar<long>("INSERT INTO log_batch (list, at, by, last) VALUES (@Table, @at, @by, @last) RETURNING id",
            new { list.Table, at, by, last });
        await session.Execute(
            $"UPDATE {list.Table} SET ended = @before + staged.nth FROM staged WHERE staged.state = 2 AND {list.Table}.position = staged.old",
            new { before });
        await session.Execute($"UPDATE {list.Table} SET ended = @last WHERE position IN (SELECT old FROM leaving)", new { last });
        await session.Execute(
            $"""
             INSERT INTO {list.Table} (position, {list.Listed()}, batch)
             SELECT @before + nth, {list.Listed()}, @batch FROM staged WHERE state IN (0, 2) ORDER BY n
             """, new { before, batch });
    }

    private static async ValueTask Say<T>(Session session, LogStage<T> stage) where T : LogLine => await session.Execute(
        """
        INSERT INTO log_source (source, whole_days, counts_as_made) VALUES (@Source, coalesce(@WholeDays, 0), coalesce(@CountsAsMade, 0))
        ON CONFLICT (source) DO UPDATE SET whole_days = coalesce(@WholeDays, whole_days), counts_as_made = coalesce(@CountsAsMade, counts_as_made)
        """, new { stage.Source, stage.Append.WholeDays, stage.Append.CountsAsMade });
}
