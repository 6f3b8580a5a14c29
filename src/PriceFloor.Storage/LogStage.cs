namespace PriceFloor.Storage;

/// <summary>Lines in temporary tables, beside what the store has under their refs: what is new, what is different, what leaves.</summary>
internal sealed class LogStage<T>(LogAppend<T> append, LogNames names) where T : LogLine
{
    private const string Allowed = "(present.design IS NULL OR present.design IN (SELECT design FROM allowed))";

    private static readonly LogList s_list = LogList.Of<T>();

    private readonly object _source = new
    {
        source = names[LogNames.Source, append.Source],
        from = append.Whole?.From,
        to = append.Whole?.To,
    };

    private long _seen;

    /// <summary>The number of the source.</summary>
    public long Source => names[LogNames.Source, append.Source]!.Value;

    public LogAppend<T> Append => append;

    /// <summary>Fills the temporary tables and compares them with the store.</summary>
    public async ValueTask Prepare(Session session)
    {
        await session.Execute(
            $"""
             DROP TABLE IF EXISTS staged; DROP TABLE IF EXISTS withdrawn; DROP TABLE IF EXISTS leaving; DROP TABLE IF EXISTS allowed;
             CREATE TEMP TABLE staged (n INTEGER PRIMARY KEY, {s_list.Listed()}, last_step, nth INTEGER, old INTEGER, state INTEGER NOT NULL DEFAULT 0);
             CREATE TEMP TABLE withdrawn (n INTEGER PRIMARY KEY, ref);
             CREATE TEMP TABLE leaving (old INTEGER PRIMARY KEY, n INTEGER);
             CREATE TEMP TABLE allowed (design INTEGER PRIMARY KEY);
             """);
        await session.Fill("staged", ["n", .. s_list.Columns, "last_step"], append.Lines.Select((line, n) => LogRows.Of(n, line, names)));
        await session.Fill("withdrawn", ["n", "ref"], append.Withdrawn.Select((given, n) => new object?[] { (long)n, given }));
        foreach (var designs in append.Designs?.Chunk(1000) ?? [])
            await session.Execute("INSERT INTO allowed SELECT id FROM name WHERE kind = @kind AND key IN @designs",
                new { kind = LogNames.Design, designs });
        await Compare(session);
    }

    /// <summary>Compares again if somebody has written to the log since.</summary>
    public async ValueTask CompareAgain(Session session)
    {
        if (await Newest(session) != _seen)
            await Compare(session);
    }

    private async ValueTask Compare(Session session)
    {
        _seen = await Newest(session);
        await session.Execute("UPDATE staged SET state = 0, old = NULL, nth = NULL");
        await session.Execute(
            $"""
             UPDATE staged SET old = present.position, state = CASE WHEN {s_list.Same("present", "staged")} THEN 1 ELSE 2 END
             FROM {s_list.Table} AS present WHERE present.source = @source AND present.ref = staged.ref AND present.ended IS NULL
             """, _source);
        if (append.Designs is not null)
            await session.Execute(
                $"UPDATE staged SET state = 4 WHERE EXISTS (SELECT 1 FROM {s_list.Table} AS present WHERE present.position = staged.old AND NOT {Allowed})");
        await session.Execute(MadeTwice, _source);
        await FindLeaving(session);
        await session.Execute(
            """
            UPDATE staged SET nth = counted.nth
            FROM (SELECT n, row_number() OVER (ORDER BY n) AS nth FROM staged WHERE state IN (0, 2)) AS counted WHERE counted.n = staged.n
            """);
    }

    /// <summary>Pieces of a design are made that day by one list only.</summary>
    private static string MadeTwice => typeof(T) == typeof(MovementLine)
        ? $"""
           UPDATE staged SET state = 3 WHERE state IN (0, 2) AND what = {MovementLine.Made} AND EXISTS (
               SELECT 1 FROM bench AS made JOIN log_source ON log_source.source = made.source AND counts_as_made = 1
               WHERE made.design = staged.design AND made.day = staged.day AND made.ended IS NULL AND made.good > 0
               AND (made.step IS NULL OR made.step = staged.last_step))
           """
        : $"""
           UPDATE staged SET state = 3 WHERE state IN (0, 2) AND good > 0 AND (step IS NULL OR step = last_step)
           AND EXISTS (SELECT 1 FROM log_source WHERE source = @source AND counts_as_made = 1)
           AND EXISTS (SELECT 1 FROM movement AS made WHERE made.design = staged.design AND made.day = staged.day AND made.ended IS NULL
               AND made.what = {MovementLine.Made})
           """;

    private async ValueTask FindLeaving(Session session)
    {
        var allowed = append.Designs is null ? "" : $" AND {Allowed}";
        await session.Execute("DELETE FROM leaving");
        await session.Execute(
            $"""
             INSERT INTO leaving (old, n) SELECT present.position, withdrawn.n FROM withdrawn JOIN {s_list.Table} AS present
             ON present.source = @source AND present.ref = withdrawn.ref AND present.ended IS NULL{allowed} WHERE true ON CONFLICT (old) DO NOTHING
             """, _source);
        if (append.Whole is not null)
            await session.Execute(
                $"""
                 INSERT INTO leaving (old) SELECT present.position FROM {s_list.Table} AS present
                 WHERE present.source = @source AND present.ended IS NULL AND present.day BETWEEN @from AND @to{allowed}
                 AND present.position NOT IN (SELECT old FROM staged WHERE old IS NOT NULL) ON CONFLICT (old) DO NOTHING
                 """, _source);
    }

    private static ValueTask<long> Newest(Session session) => session.ExecuteScalar<long>("SELECT coalesce(max(id), 0) FROM log_batch");
}
