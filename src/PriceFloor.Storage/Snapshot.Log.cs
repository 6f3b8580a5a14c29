namespace PriceFloor.Storage;

/// <summary>The log as it is at one moment.</summary>
public partial class Snapshot
{
    /// <summary>What ids are hashed with in this store.</summary>
    public async ValueTask<LogMarks> Marks() => new(await Single<byte[]>("SELECT secret FROM log_secret", new { }));

    /// <summary>How far the two lists of the log have come, now or at a moment; as quickly after a million batches as after one.</summary>
    public async ValueTask<LogPosition> LogPosition(long? asOf = null)
    {
        var (movements, bench) = (await EndOf(LogList.Movements, asOf), await EndOf(LogList.Bench, asOf));
        return new(movements.Last, bench.Last, long.Max(movements.At, bench.At));
    }

    /// <summary>Movements in order of position.</summary>
    public ValueTask<List<MovementLine>> Movements(LogQuestion question) => Query<MovementLine>(
        $"""
         SELECT line.position, source.key AS Source, line.ref, design.key AS Design, line.day, line.what, place.key AS Place, currency.key AS Currency,
             line.pieces, line.paid, line.listed, line.fees, line.shipping_charged AS ShippingCharged, line.shipping_cost AS ShippingCost,
             stall.key AS Stall, line.grade, line.resale, piece.key AS Piece, line.order_mark AS OrderMark
         FROM movement AS line {LogQuestion.Joined} LEFT JOIN name AS place ON place.id = line.place LEFT JOIN name AS currency ON currency.id = line.currency
             LEFT JOIN name AS stall ON stall.id = line.stall LEFT JOIN name AS piece ON piece.id = line.piece
         WHERE {question.Condition} ORDER BY line.position LIMIT @Limit
         """, question);

    /// <summary>Bench entries in order of position.</summary>
    public ValueTask<List<BenchLine>> BenchEntries(LogQuestion question) => Query<BenchLine>(
        $"""
         SELECT line.position, source.key AS Source, line.ref, design.key AS Design, line.day, step.key AS Step, line.started, line.good, line.minutes
         FROM bench AS line {LogQuestion.Joined} LEFT JOIN name AS step ON step.id = line.step
         WHERE {question.Condition} ORDER BY line.position LIMIT @Limit
         """, question);

    /// <summary>What was last said of each source.</summary>
    public ValueTask<List<LogSource>> LogSources() => Query<LogSource>(
        """
        SELECT name.key AS Name, whole_days AS IsWholeDays, counts_as_made AS CountsAsMade FROM log_source JOIN name ON name.id = log_source.source
        ORDER BY name.key
        """, new { });

    internal async ValueTask<bool> FindNames(LogNames names, IEnumerable<(string Kind, string Key)> wanted)
    {
        await names.Find(Session, wanted);
        return true;
    }

    private async ValueTask<(long Last, long At)> EndOf(LogList list, long? asOf) => (await Query<(long, long)>(
        "SELECT last, at FROM log_batch WHERE list = @Table AND at <= @asOf ORDER BY at DESC, last DESC LIMIT 1",
        new { list.Table, asOf = asOf ?? long.MaxValue })).FirstOrDefault();
}

/// <summary>How far the log has come.</summary>
/// <param name="Movements">The last position of movements; 0 if there never was any.</param>
/// <param name="Bench">The last position of bench entries; 0 if there never was any.</param>
/// <param name="At">When the last of them was written, in microseconds since 1970 UTC.</param>
public sealed record LogPosition(long Movements, long Bench, long At);

/// <summary>What is said of a source.</summary>
public sealed record LogSource
{
    public string Name { get; init; } = "";

    /// <summary>Its minutes are all the minutes of its days.</summary>
    public bool IsWholeDays { get; init; }

    /// <summary>Good pieces of its last step are made.</summary>
    public bool CountsAsMade { get; init; }
}
