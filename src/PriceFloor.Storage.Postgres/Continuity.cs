namespace PriceFloor.Storage.Postgres;

/// <summary>
/// Whether the rows are those that were served here last. After a promotion, a base backup or a dump that was put in their place, callers hold
/// cursors and revision numbers of a history that may be gone; another <see cref="StoreEpoch"/> begins then.
/// </summary>
internal static class Continuity
{
    /// <summary>The cluster, its timeline, the database and the table: a copy differs in one of them.</summary>
    private const string Here =
        """
        (SELECT system_identifier FROM pg_control_system()) || '/' || substr(pg_walfile_name(pg_current_wal_lsn()), 1, 8) || '/'
            || (SELECT oid FROM pg_database WHERE datname = current_database()) || '/' || to_regclass('revision')::oid
        """;

    /// <summary>The name of the life, and whether it goes on here; nobody needs to write then.</summary>
    public const string GoesOn = $"name AS Life, timeline = {Here} AS GoesOn";

    /// <summary>
    /// No revision of this cluster has a higher number than its newest transaction, so what was written after a dump, and lost when it was put in
    /// place, had lower ones too.
    /// </summary>
    private static async ValueTask<long> MayHaveGiven(Session session) => long.Max(await StoreEpoch.HighestNumber(session),
        await session.ExecuteScalar<long>("SELECT pg_current_xact_id()::text::bigint"));

    /// <summary>Continues the studio, or begins another life of it and says why.</summary>
    /// <param name="session">A transaction that writes.</param>
    /// <param name="losesNothing">Whether another timeline of the same database lost nothing that was acknowledged.</param>
    public static async ValueTask<string?> Resume(Session session, bool losesNothing)
    {
        var (here, known) = (await session.ExecuteScalar<string>($"SELECT {Here}"), await session.ExecuteScalar<string>("SELECT timeline FROM life"));
        if (here == known)
            return null;
        await session.Execute("UPDATE life SET timeline = @here", new { here });
        if (losesNothing && WithoutTimeline(here!) == WithoutTimeline(known!))
            return null;
        if (known is "")
        {
            await StoreEpoch.BeginAnother(session, 0); // the first one of this copy of the tables
            return null;
        }

        await StoreEpoch.BeginAnother(session, await MayHaveGiven(session) + StoreEpoch.Leap);
        return "its database is another, or went on from an earlier state: a standby that took over, or a backup or dump in its place";
    }

    private static string WithoutTimeline(string place) =>
        place.Split('/') is [var cluster, _, .. var rest] ? $"{cluster}/{string.Join('/', rest)}" : "";
}
