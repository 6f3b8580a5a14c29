namespace PriceFloor.Storage;

/// <summary>The actions on keys and on the whole store; the revisions themselves record those on documents.</summary>
public static class Trail
{
    /// <summary>The name for a verb, which no key requested. No key can have this name.</summary>
    public const string CommandLine = "command line";

    /// <summary>The name for a scheduled backup. No key can have this name.</summary>
    public const string TimedBackup = "timed backup";

    /// <summary>The kind of actions on the whole store.</summary>
    public const string WholeStore = "store";

    /// <summary>The kind of actions on the log.</summary>
    public const string Log = "log";

    internal const string BackedUp = "backed-up", Restored = "restored", Forgotten = "forgotten";

    /// <summary>Appends a row, whose time is never earlier than that of the row before it.</summary>
    internal static async ValueTask Tell(Session session, (string By, string Kind, string Name, string What) row, long at)
    {
        var last = await session.ExecuteScalar<long?>("SELECT at FROM event ORDER BY position DESC LIMIT 1") ?? 0;
        await session.Execute("INSERT INTO event (at, by, kind, name, what) VALUES (@at, @By, @Kind, @Name, @What)",
            new { at = long.Max(at, last), row.By, row.Kind, row.Name, row.What });
    }

    /// <summary>The time for a present action: later than that of the newest revision even if the clock jumped back.</summary>
    internal static async ValueTask<long> TimeOf(Session session, DateTimeOffset now) => long.Max(
        Moment.Of(now),
        (await session.ExecuteScalar<long?>("SELECT saved_at FROM revision ORDER BY position DESC LIMIT 1") ?? 0) + 1);
}
