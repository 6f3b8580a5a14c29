namespace PriceFloor.Storage;

/// <summary>What was done to keys and to the whole store, beside the revisions, which tell of documents themselves.</summary>
public static class Trail
{
    /// <summary>Who is named for a verb, which no key asked for. A key cannot be called so.</summary>
    public const string CommandLine = "command line";

    /// <summary>Who is named for a backup that was due. A key cannot be called so.</summary>
    public const string TimedBackup = "timed backup";

    /// <summary>The kind of what was done to the whole store.</summary>
    public const string WholeStore = "store";

    internal const string BackedUp = "backed-up", Restored = "restored", Forgotten = "forgotten";

    /// <summary>
    /// Tells of a backup that a verb has made, perhaps beside a service that writes. False where the store cannot be
    /// written, or is of an earlier schema.
    /// </summary>
    public static bool TellOfBackup(string store, string file, DateTimeOffset now)
    {
        try
        {
            using var connection = StoreFile.Open(store);
            if (StoreFile.SchemaOf(connection, store) < Migrations.Newest)
                return false;
            using var session = SqliteSession.On(connection, deferred: false);
            Tell(session, (CommandLine, WholeStore, Path.GetFileName(file), BackedUp), TimeOf(session, now));
            session.Keep();
            return true;
        }
        catch (Exception e) when (e is StoreTroubleException or StoreException)
        {
            return false;
        }
    }

    /// <summary>Appends a row, which has no earlier time than the one before it.</summary>
    internal static void Tell(Session session, (string By, string Kind, string Name, string What) row, long at) => session.Execute(
            "INSERT INTO event (at, by, kind, name, what) VALUES (max(@at, coalesce((SELECT at FROM event ORDER BY position DESC LIMIT 1), 0)), @By, "
            + "@Kind, @Name, @What)",
            new { at, row.By, row.Kind, row.Name, row.What });

    /// <summary>The time of what is done now: later than that of the newest revision even if the clock jumped back.</summary>
    internal static long TimeOf(Session session, DateTimeOffset now) => long.Max(
        Moment.Of(now),
        (session.ExecuteScalar<long?>("SELECT saved_at FROM revision ORDER BY position DESC LIMIT 1") ?? 0) + 1);
}
