namespace PriceFloor.Storage;

/// <summary>The rows of the log for those who calculate with many of them.</summary>
public partial class Snapshot
{
    private static readonly string s_movements = $"SELECT {MovementRow.Columns} FROM movement AS line";

    /// <summary>All names but those of single pieces.</summary>
    public ValueTask<List<LogName>> NamesOfLog() => Query<LogName>(
        "SELECT id, kind, key FROM name WHERE kind IN ('source', 'design', 'channel', 'currency', 'stall', 'step')", new { });

    /// <summary>Hands on movements in order of position, or of day where they are of one design.</summary>
    public ValueTask MovementRows(LogRowQuestion question, Action<MovementRow> take) => Session.Read(
        $"{s_movements} WHERE {question.Condition} ORDER BY {(question.Design is null ? "" : "line.day, ")}line.position", question.Parameters,
        row => take(new MovementRow(row)));

    /// <summary>How many movements each design ever had up to a position, ended ones too. It reads an index only.</summary>
    public ValueTask<List<LinesOfDesign>> MovementsByDesign(long upTo) => Query<LinesOfDesign>(
        "SELECT design, count(*) AS lines FROM movement WHERE position <= @upTo GROUP BY design", new { upTo });

    /// <summary>Bench entries, in order of day where they are of one design.</summary>
    public async ValueTask<List<BenchRow>> BenchRows(LogRowQuestion question)
    {
        var rows = new List<BenchRow>();
        await Session.Read(
            $"""
             SELECT line.position, line.source, line.design, line.day, line.step, line.started, line.good, line.minutes
             FROM bench AS line WHERE {question.Condition}
             """ + (question.Design is null ? "" : " ORDER BY line.day, line.position"), question.Parameters, row => rows.Add(BenchOf(row)));
        return rows;
    }

    /// <summary>The days of movements of one kind on a channel, each stall's once.</summary>
    /// <param name="question">The channel and the days.</param>
    /// <param name="what">Number of what happened.</param>
    /// <param name="designs">Only those of these designs; null: all.</param>
    public async ValueTask<List<(int Day, long? Stall)>> StallDays(LogRowQuestion question, int what, IReadOnlyCollection<long>? designs) =>
        (await Query<(long Day, long? Stall)>(
            $"SELECT DISTINCT line.day, line.stall FROM movement AS line WHERE {question.Condition} AND line.what = @what"
            + (designs is null ? "" : " AND line.design IN @designs"),
            new { question.UpTo, question.Place, question.From, question.To, what, designs })).ConvertAll(day => ((int)day.Day, day.Stall));

    /// <summary>The last day of any line up to a day, as the log stood; null if there is none. A look-up for each design.</summary>
    public ValueTask<int?> NewestDay(LogPosition end, int to) => Single<int?>(
        $"""
         SELECT max(day) FROM (
             SELECT ({NewestIn("movement", "line.design = name.id", "@Movements")}) AS day FROM name WHERE name.kind = 'design'
             UNION ALL SELECT ({NewestIn("bench", "line.design = name.id", "@Bench")}) FROM name WHERE name.kind = 'design'
             UNION ALL SELECT ({NewestIn("bench", "line.design IS NULL", "@Bench")})) AS days
         """, new { end.Movements, end.Bench, to });

    /// <summary>
    /// The last day, up to one, of lines that came after one end of the log and stand at another, and that of lines that ended until then; null if
    /// there are none.
    /// </summary>
    public async ValueTask<(int? Came, int? Ended)> NewestDaySince(LogPosition after, LogPosition upTo, int to)
    {
        var movements = await NewestIn(LogList.Movements, after.Movements, upTo.Movements, to);
        var bench = await NewestIn(LogList.Bench, after.Bench, upTo.Bench, to);
        return (Later(movements.Came, bench.Came), Later(movements.Ended, bench.Ended));
    }

    private static int? Later(int? one, int? other) => one > other || other is null ? one : other;

    private async ValueTask<(int? Came, int? Ended)> NewestIn(LogList list, long after, long upTo, int to)
    {
        var those = new { after, upTo, to };
        return after == upTo ? default : (
            await Single<int?>(
                $"""
                 SELECT max(day) FROM {list.Table}
                 WHERE position > @after AND position <= @upTo AND day <= @to AND (ended IS NULL OR ended > @upTo)
                 """, those),
            await Single<int?>($"SELECT max(day) FROM {list.Table} WHERE ended > @after AND ended <= @upTo AND day <= @to", those));
    }

    private static BenchRow BenchOf(Row row) => new()
    {
        Position = row.Number(0),
        Source = row.Number(1),
        Design = row.NumberOrNull(2),
        Day = (int)row.Number(3),
        Step = row.NumberOrNull(4),
        Started = (int?)row.NumberOrNull(5),
        Good = (int?)row.NumberOrNull(6),
        Minutes = row.NumberOrNull(7),
    };

    private static string NewestIn(string table, string which, string end) =>
        $"SELECT line.day FROM {table} AS line WHERE {which} AND line.day <= @to AND line.position <= {end} "
        + $"AND (line.ended IS NULL OR line.ended > {end}) ORDER BY line.day DESC LIMIT 1";
}
