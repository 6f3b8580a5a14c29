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
    /// Movements that are of an order and have positions after one and up to another, in order of position; ended ones too, since they were there.
    /// </summary>
    public ValueTask<List<OrderRow>> OrderRows(long after, long upTo, int limit) => Session.Read(
        """
        SELECT position, design, order_mark FROM movement
        WHERE position > @after AND position <= @upTo AND order_mark IS NOT NULL ORDER BY position LIMIT @limit
        """, [("@after", after), ("@upTo", upTo), ("@limit", limit)], OrderOf);

    /// <summary>Movements that were of an order and ended after one position and up to another.</summary>
    public ValueTask<List<OrderRow>> EndedOrderRows(long after, long upTo) => Session.Read(
        """
        SELECT position, design, order_mark FROM movement
        WHERE ended > @after AND ended <= @upTo AND order_mark IS NOT NULL
        """, [("@after", after), ("@upTo", upTo)], OrderOf);

    /// <summary>The movements at some positions, as far as they stood.</summary>
    public async ValueTask<List<MovementRow>> MovementRowsAt(IReadOnlyCollection<long> positions, LogRowQuestion question)
    {
        var rows = new List<MovementRow>();
        foreach (var some in positions.Chunk(Together))
            rows.AddRange(await Session.Read(
                $"""
                 SELECT {MovementColumns} FROM movement AS line LEFT JOIN name AS piece ON piece.id = line.piece
                 WHERE line.position IN ({string.Join(',', some)}) AND {question.Condition} ORDER BY line.position
                 """, question.Parameters, MovementOf));
        return rows;
    }

    private const int Together = 1000;

    private static OrderRow OrderOf(Row row) => new() { Position = row.Number(0), Design = row.Number(1), OrderMark = row.Bytes(2)! };

    private ValueTask<List<long?>> Touched(LogList list, long after, long upTo) => Query<long?>(
        $"""
         SELECT DISTINCT design FROM {list.Table} WHERE position > @after AND position <= @upTo
         UNION SELECT DISTINCT design FROM {list.Table} WHERE ended > @after AND ended <= @upTo
         """, new { after, upTo });
}
