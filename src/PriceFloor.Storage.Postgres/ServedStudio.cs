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
    /// Its life; the timeline of the database, which is another after a promotion or a restored base backup, and the one that the row remembers; and
    /// what else a <see cref="Standing"/> has.
    /// </summary>
    private const string Stands =
        """
        SELECT name, substr(pg_walfile_name(pg_current_wal_lsn()), 1, 8), split_part(timeline, '/', 2),
            coalesce((SELECT max(position) FROM revision), 0), coalesce((SELECT saved_at FROM revision ORDER BY position DESC LIMIT 1), 0),
            numbers_above, coalesce((SELECT max(position) FROM event), 0)
        FROM life
        """;

    /// <summary>Keeps every other writer away. What stands is asked after it: one statement would see what was before the lock.</summary>
    private const string Lock = "SELECT 1 FROM life FOR UPDATE";

    private readonly object[] _named = [number.ToString(System.Globalization.CultureInfo.InvariantCulture)];

    public bool LosesNothing => losesNothing;

    /// <summary>Names the studio, and asks where it stands: at once, as all of a transaction or at its beginning.</summary>
    public IReadOnlyList<(string Sql, object[] Values)> Reading => [("SELECT set_config('pf.studio', $1, true)", _named), (Stands, [])];

    /// <summary>The same behind the lock of writers.</summary>
    public IReadOnlyList<(string Sql, object[] Values)> Writing =>
    [
        ("SELECT set_config('pf.studio', $1, true), set_config('lock_timeout', '5s', true)", _named), (Lock, []), (Stands, []),
    ];

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
