using System.Globalization;

namespace PriceFloor.Storage.Postgres;

/// <summary>
/// The studio that an engine serves, and what it found when it began to. If another process has begun to serve it, or the database has gone back to
/// an earlier state since, what this process has in memory means nothing: it must be started again.
/// </summary>
internal sealed class ServedStudio
{
    /// <summary>The studio that exists unasked: the first row of its table.</summary>
    public const int First = 1;

    /// <summary>
    /// Where the studio stands, as <see cref="Storage.Standing"/> has it. Its life: who serves the studio, the name, and the timeline of the
    /// database, which is another after a promotion or a restored base backup.
    /// </summary>
    public const string Standing =
        """
        SELECT coalesce(server, '') || ' ' || name || ' ' || substr(pg_walfile_name(pg_current_wal_lsn()), 1, 8),
            coalesce((SELECT max(position) FROM revision), 0), coalesce((SELECT saved_at FROM revision ORDER BY position DESC LIMIT 1), 0),
            numbers_above, coalesce((SELECT max(position) FROM event), 0)
        FROM life
        """;

    /// <summary>Keeps every other writer away. What stands is asked after it: one statement would see what was before the lock.</summary>
    public const string Lock = "SELECT 1 FROM life FOR UPDATE";

    private string? _standing;

    public string Number { get; } = First.ToString(CultureInfo.InvariantCulture);

    /// <summary>Begins to check.</summary>
    public void Begin(string standing) => Volatile.Write(ref _standing, standing);

    public void MustStand(string? now)
    {
        if (Volatile.Read(ref _standing) is { } standing && standing != now)
            throw new StoreTroubleException(StoreTrouble.Busy, new StoreException(
                "The database is not as this process began to serve it: another process serves it, or it went back to an earlier state. "
                + "Start this one again."));
    }
}
