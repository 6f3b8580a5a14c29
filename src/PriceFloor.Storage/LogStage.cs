namespace PriceFloor.Storage;

/// <summary>Lines in temporary tables, beside what the store has under their refs: what is new, what is different, what leaves.</summary>
/// <param name="append">The lines.</param>
/// <param name="names">The numbers of their names.</param>
internal sealed class LogStage<T>(LogAppend<T> append, LogNames names) where T : LogLine
{
    private const string Allowed = "(present.design IS NULL OR present.design IN (SELECT design FROM allowed))";

    private static readonly LogList s_list = LogList.Of<T>();

    private readonly object _source = new
    {
        source = names[LogNames.Source, append.Source],
        from = append.Whole?.From,
        to = append.Whole?.To,
        counts = append.CountsAsMade is { } made ? made ? 1L : 0L : (long?)null,
    };

    /// <summary>The number of the source.</summary>
    public long Source => names[LogNames.Source, append.Source]!.Value;

    public LogAppend<T> Append => append;

    /// <summary>Fills the temporary tables.</summary>
    public async ValueTask Fill(Session session)
    {
        await session.MakeTemporary("staged",
            [new("n"), new("nth"), new("state"), .. s_list.Temporary, new("last_step"), new("old")]);
        await session.MakeTemporary("withdrawn", [new("n"), new("ref", IsBytes: true)]);
        await session.MakeTemporary("leaving", [new("old"), new("n")]);
        await session.MakeTemporary("allowed", [new("design")]);
        await session.Fill("staged", ["n", "nth", "state", .. s_list.Columns, "last_step"],
            append.Lines.Select((line, n) => LogRows.Of(n, line, names)));
        await session.Fill("withdrawn", ["n", "ref"], append.Withdrawn.Select((given, n) => new object?[] { (long)n, given }));
        foreach (var designs in append.Designs?.Chunk(1000) ?? [])
            await session.Execute("INSERT INTO allowed SELECT id FROM name WHERE kind = @kind AND key IN @designs",
                new { kind = LogNames.Design, designs });
    }

    /// <summary>Compares them with the store, which nobody else may append to until they are taken over.</summary>
    public async ValueTask<LogDifference> Compare(Session session)
    {
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
        var difference = await Difference(session);
        if (difference.Written > 0 && difference.Written < append.Lines.Count) // else each is the nth
            await session.Execute(
                """
                UPDATE staged SET nth = counted.nth
                FROM (SELECT n, row_number() OVER (ORDER BY n) AS nth FROM staged WHERE state IN (0, 2)) AS counted WHERE counted.n = staged.n
                """);
        return difference;
    }

    private async ValueTask<LogDifference> Difference(Session session)
    {
        var states = (await session.Query<int>("SELECT state FROM staged ORDER BY n")).ConvertAll(state => (LogState)state);
        var gone = (await session.Query<int>("SELECT n FROM leaving WHERE n IS NOT NULL")).ToHashSet();
        var leaving = (int)await session.ExecuteScalar<long>("SELECT count(*) FROM leaving");
        return new LogDifference(new LogAppended(states, [.. append.Withdrawn.Select((_, n) => gone.Contains(n))], leaving - gone.Count),
            states.Count(state => state is LogState.Stored or LogState.Corrected), leaving);
    }

    /// <summary>Pieces of a design are made that day by one list only.</summary>
    private static string MadeTwice => typeof(T) == typeof(MovementLine)
        ? $"""
           UPDATE staged SET state = 3 WHERE state IN (0, 2) AND what = {MovementLine.Made} AND EXISTS (
               SELECT 1 FROM bench AS made WHERE made.design = staged.design AND made.day = staged.day AND made.ended IS NULL AND made.good > 0
               AND (made.step IS NULL OR made.step = staged.last_step) AND {Counts("made")})
           """
        : $"""
           UPDATE staged SET state = 3 WHERE state IN (0, 2) AND good > 0 AND (step IS NULL OR step = last_step) AND {Counts("staged")}
           AND EXISTS (SELECT 1 FROM movement AS made WHERE made.design = staged.design AND made.day = staged.day AND made.ended IS NULL
               AND made.what = {MovementLine.Made})
           """;

    /// <summary>Whether the good pieces of a source count as made, with what these lines say of it.</summary>
    private static string Counts(string line) =>
        $"coalesce(CASE {line}.source WHEN @source THEN @counts END, (SELECT counts_as_made FROM log_source WHERE source = {line}.source), 0) = 1";

    private async ValueTask FindLeaving(Session session)
    {
        var allowed = append.Designs is null ? "" : $" AND {Allowed}";
        await session.Execute(
            $"""
             INSERT INTO leaving (old, n) SELECT present.position, withdrawn.n FROM withdrawn JOIN {s_list.Table} AS present
             ON present.source = @source AND present.ref = withdrawn.ref AND present.ended IS NULL{allowed} WHERE true ON CONFLICT DO NOTHING
             """, _source);
        if (append.Whole is not null)
            await session.Execute(
                $"""
                 INSERT INTO leaving (old) SELECT present.position FROM {s_list.Table} AS present
                 WHERE present.source = @source AND present.ended IS NULL AND present.day BETWEEN @from AND @to{allowed}
                 AND present.position NOT IN (SELECT old FROM staged WHERE old IS NOT NULL) ON CONFLICT DO NOTHING
                 """, _source);
    }
}

/// <summary>What taking staged lines over would do.</summary>
/// <param name="Done">What becomes of each.</param>
/// <param name="Written">How many lines are new or corrected.</param>
/// <param name="Leaving">How many present lines are withdrawn.</param>
internal sealed record LogDifference(LogAppended Done, int Written, int Leaving)
{
    /// <summary>Whether it fills more pages than are usually moved to their place with a commit.</summary>
    public bool IsLarge => Written + Leaving > 1000;

    public bool HasRefused => Done.States.Any(state => state is LogState.MadeTwice or LogState.OfAnother);
}
