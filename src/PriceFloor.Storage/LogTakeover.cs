namespace PriceFloor.Storage;

/// <summary>A step in writing to the log, by whom and when that is.</summary>
internal delegate ValueTask LogStep(Session session, string by, long now);

/// <summary>
/// Writes staged lines behind the end of the log, where nobody reads, in steps that may be transactions of their own. The last of them moves the
/// end: then all lines are there at once.
/// </summary>
internal sealed class LogTakeover<T>(LogStage<T> stage, LogDifference difference) where T : LogLine
{
    private const int Together = LogAppend<T>.MostWhileOthersWait;

    private static readonly LogList s_list = LogList.Of<T>();

    private long _before, _last, _batch;

    private LogAppend<T> Append => stage.Append;

    /// <summary>Its steps, in order: one if it is small.</summary>
    public IEnumerable<LogStep> Steps()
    {
        if (difference.Written + difference.Leaving == 0)
            return [(session, _, _) => Say(session)];
        var parts = Parts().ToList();
        return difference.Written + difference.Leaving > Together ? [Begin, .. parts, End]
            : [async (session, by, now) =>
            {
                await Begin(session, by, now);
                foreach (var part in parts)
                    await part(session, by, now);
                await End(session, by, now);
            }];
    }

    private IEnumerable<LogStep> Parts()
    {
        for (var from = 0; from < Append.Lines.Count && difference.Written > 0; from += Together)
        {
            var lines = new { from, to = from + Together };
            yield return (session, _, _) => Write(session, lines.from, lines.to);
        }

        for (var left = 0; left < difference.Leaving; left += Together)
        {
            var skipped = left;
            yield return (session, _, _) => Leave(session, skipped);
        }
    }

    private async ValueTask Begin(Session session, string by, long now)
    {
        _before = await EndOfLog.Of(session, s_list);
        _last = _before + difference.Written + (difference.Leaving > 0 ? 1 : 0); // those that leave together end at one position
        _batch = await session.ExecuteScalar<long>("INSERT INTO log_batch (list, at, by, last) VALUES (@Coming, @now, @by, @_last) RETURNING id",
            new { s_list.Coming, now, by, _last });
    }

    private async ValueTask Write(Session session, int from, int to)
    {
        await session.Execute(
            $"""
             UPDATE {s_list.Table} SET ended = @_before + staged.nth FROM staged
             WHERE staged.n >= @from AND staged.n < @to AND staged.state = 2 AND {s_list.Table}.position = staged.old
             """, new { _before, from, to });
        await session.Execute(
            $"""
             INSERT INTO {s_list.Table} (position, {s_list.Listed()}, batch)
             SELECT @_before + nth, {s_list.Listed()}, @_batch FROM staged WHERE n >= @from AND n < @to AND state IN (0, 2) ORDER BY n
             """, new { _before, _batch, from, to });
    }

    private async ValueTask Leave(Session session, int skipped) => await session.Execute(
        $"""
         UPDATE {s_list.Table} SET ended = @_last
         WHERE position IN (SELECT old FROM leaving ORDER BY old LIMIT {Together} OFFSET @skipped)
         """, new { _last, skipped });

    private async ValueTask End(Session session, string by, long now)
    {
        await Say(session);
        var at = long.Max(now, await session.ExecuteScalar<long>("SELECT coalesce(max(at), 0) FROM log_batch"));
        await session.Execute("UPDATE log_batch SET list = @Table, at = @at, by = @by WHERE id = @_batch", new { s_list.Table, at, by, _batch });
    }

    private async ValueTask Say(Session session)
    {
        if (Append.SaysSomething)
            await session.Execute(
                """
                INSERT INTO log_source (source, whole_days, counts_as_made) VALUES (@Source, coalesce(@WholeDays, 0), coalesce(@CountsAsMade, 0))
                ON CONFLICT (source) DO UPDATE SET whole_days = coalesce(@WholeDays, log_source.whole_days),
                    counts_as_made = coalesce(@CountsAsMade, log_source.counts_as_made)
                """, new { stage.Source, WholeDays = NumberOf(Append.WholeDays), CountsAsMade = NumberOf(Append.CountsAsMade) });
    }

    private static long? NumberOf(bool? said) => said is { } yes ? yes ? 1 : 0 : null;
}
