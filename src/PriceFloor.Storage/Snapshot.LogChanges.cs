namespace PriceFloor.Storage;

/// <summary>What became of the log since a position, for those who keep what its lines say.</summary>
public partial class Snapshot
{
    /// <summary>
    /// The designs of lines that came or ended after one end of the log and up to another, each once; null for work away from pieces. A line that was
    /// corrected is of its former design too.
    /// </summary>
    public async ValueTask<List<long?>> DesignsTouched(LogPosition after, LogPosition upTo) =>
    [
        .. (await Touched(LogList.Movements, after.Movements, upTo.Movements))
            .Concat(await Touched(LogList.Bench, after.Bench, upTo.Bench)).Distinct(),
    ];

    /// <summary>
    /// Hands on movements that are of an order and have positions after one and up to another, in order of position; ended ones too, since they were
    /// there.
    /// </summary>
    public ValueTask OrderRows(long after, long upTo, Action<OrderRow> take) => Session.Read(
        """
        SELECT position, design, order_mark FROM movement
        WHERE position > @after AND position <= @upTo AND order_mark IS NOT NULL ORDER BY position
        """, [("@after", after), ("@upTo", upTo)], row => take(OrderOf(row)));

    /// <summary>Hands on movements that were of an order and ended after one position and up to another.</summary>
    public ValueTask EndedOrderRows(long after, long upTo, Action<OrderRow> take) => Session.Read(
        """
        SELECT position, design, order_mark FROM movement
        WHERE ended > @after AND ended <= @upTo AND order_mark IS NOT NULL
        """, [("@after", after), ("@upTo", upTo)], row => take(OrderOf(row)));

    /// <summary>Hands on the movements at some positions, as far as they stood.</summary>
    public async ValueTask MovementRowsAt(IReadOnlyCollection<long> positions, LogRowQuestion question, Action<MovementRow> take)
    {
        foreach (var some in positions.Chunk(Together))
            await Session.Read(
                $"{s_movements} WHERE line.position IN ({string.Join(',', some)}) AND {question.Condition} ORDER BY line.position",
                question.Parameters, row => take(new MovementRow(row)));
    }

    /// <summary>The designs of movements at some positions, each once; ended ones too.</summary>
    public async ValueTask<List<long>> DesignsAt(IReadOnlyCollection<long> positions)
    {
        var designs = new HashSet<long>();
        foreach (var some in positions.Chunk(Together))
            designs.UnionWith(await Query<long>("SELECT DISTINCT design FROM movement WHERE position IN @some", new { some }));
        return [.. designs];
    }

    private const int Together = 1000;

    private static OrderRow OrderOf(Row row) => new(row.Number(0), row.Number(1), row.EightBytes(2)!.Value);

    private ValueTask<List<long?>> Touched(LogList list, long after, long upTo) => Query<long?>(
        $"""
         SELECT DISTINCT design FROM {list.Table} WHERE position > @after AND position <= @upTo
         UNION SELECT DISTINCT design FROM {list.Table} WHERE ended > @after AND ended <= @upTo
         """, new { after, upTo });
}
