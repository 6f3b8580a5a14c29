namespace PriceFloor.Storage;

/// <summary>The rows of the log for those who calculate with many of them.</summary>
public partial class Snapshot
{
    private const string MovementColumns =
        """
        line.position, line.source, line.design, line.day, line.what, line.place, line.currency, line.pieces, line.paid, line.listed, line.fees,
        line.shipping_charged AS ShippingCharged, line.shipping_cost AS ShippingCost, line.stall, line.grade, line.resale, piece.key AS Piece,
        line.order_mark AS OrderMark
        """;

    /// <summary>
    /// Where the two lists of the log end, now or at a moment, as <see cref="LogPosition"/> says it, and as quickly after a million batches as
    /// after one.
    /// </summary>
    public async ValueTask<LogPosition> LogEnd(long? asOf = null)
    {
        var (movements, bench) = (await EndOf(LogList.Movements, asOf), await EndOf(LogList.Bench, asOf));
        return new(movements.Last, bench.Last, long.Max(movements.At, bench.At));
    }

    /// <summary>All names but those of single pieces.</summary>
    public ValueTask<List<LogName>> NamesOfLog() => Query<LogName>(
        "SELECT id, kind, key FROM name WHERE kind IN ('source', 'design', 'channel', 'currency', 'stall', 'step')", new { });

    /// <summary>Movements, in order of day where they are of one design.</summary>
    public ValueTask<List<MovementRow>> MovementRows(LogRowQuestion question) => Query<MovementRow>(
        $"SELECT {MovementColumns} FROM movement AS line LEFT JOIN name AS piece ON piece.id = line.piece WHERE {question.Condition}"
        + (question.Design is null ? "" : " ORDER BY line.day, line.position"), question);

    /// <summary>Movements of other designs that are of the same orders as some of a design.</summary>
    public ValueTask<List<MovementRow>> RowsOfSameOrders(LogRowQuestion question) => Query<MovementRow>(
        $"""
         SELECT {MovementColumns} FROM movement AS line LEFT JOIN name AS piece ON piece.id = line.piece
         WHERE {(question with { Design = null }).Condition} AND line.design <> @Design AND line.order_mark IN
             (SELECT own.order_mark FROM movement AS own WHERE own.design = @Design AND own.order_mark IS NOT NULL)
         ORDER BY line.position
         """, question);

    /// <summary>Bench entries, in order of day where they are of one design.</summary>
    public ValueTask<List<BenchRow>> BenchRows(LogRowQuestion question) => Query<BenchRow>(
        $"""
         SELECT line.position, line.source, line.design, line.day, line.step, line.started, line.good, line.minutes
         FROM bench AS line WHERE {question.Condition}
         """ + (question.Design is null ? "" : " ORDER BY line.day, line.position"), question);

    /// <summary>The last day of any line as the log stood; null if there is none.</summary>
    public ValueTask<int?> NewestDay(LogPosition end, int to) => Single<int?>(
        """
        SELECT max(day) FROM (
            SELECT max(day) AS day FROM movement WHERE position <= @Movements AND (ended IS NULL OR ended > @Movements) AND day <= @to
            UNION ALL SELECT max(day) FROM bench WHERE position <= @Bench AND (ended IS NULL OR ended > @Bench) AND day <= @to)
        """, new { end.Movements, end.Bench, to });

    private async ValueTask<(long Last, long At)> EndOf(LogList list, long? asOf) => (await Query<(long, long)>(
        "SELECT last, at FROM log_batch WHERE list = @Table AND at <= @asOf ORDER BY at DESC, last DESC LIMIT 1",
        new { list.Table, asOf = asOf ?? long.MaxValue })).FirstOrDefault();
}
