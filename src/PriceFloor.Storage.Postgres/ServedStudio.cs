namespace PriceFloor.Storage.Postgres;

/// <summary>How the rows of a studio are asked for, and where it stands.</summary>
/// <param name="number">The studio.</param>
/// <param name="losesNothing">
/// Whether a standby that takes over has everything that was acknowledged, so no other life begins then: what was written as positions and numbers
/// still means the same.
/// </param>
internal sealed class ServedStudio(int number, bool losesNothing)
{
    /// <summary>The studio that exists unasked, the first row of its table: the only one, or the host of the others.</summary>
    public const int First = 1;

    /// <summary>
    /// Of each studio that is there its life; the timeline of the database, which is another after a promotion or a restored base backup, and the one
    /// that the row remembers; what else a <see cref="Standing"/> has; and its number.
    /// </summary>
    public const string AllStand = "SELECT * FROM standings($1)";

    /// <summary>The same of one, after it has kept every other writer away.</summary>
    private const string Begin = "SELECT * FROM begin_writing($1)";

    public int Number => number;

    public bool LosesNothing => losesNothing;

    /// <summary>Names the studio, and asks where it stands: at once, as all of a transaction or at its beginning.</summary>
    public IReadOnlyList<(string Sql, object?[] Values)> Reading { get; } = [(AllStand, [new[] { number }])];

    /// <summary>The same behind the lock of writers.</summary>
    public IReadOnlyList<(string Sql, object?[] Values)> Writing { get; } = [(Begin, [number])];

    /// <summary>What was answered, and whether the row remembers another timeline: then a standby took over and nobody has written since.</summary>
    /// <exception cref="StoreGoneException">There is no row.</exception>
    public static (Standing Standing, bool TookOver) Of(object?[]? row)
    {
        if (row is null)
            throw new StoreGoneException();
        var (life, timeline, remembered) = ((string)row[0]!, (string)row[1]!, (string)row[2]!);
        return (new Standing($"{life} {timeline}", (long)row[3]!, (long)row[4]!, (long)row[5]!, (long)row[6]!), timeline != remembered);
    }
}
