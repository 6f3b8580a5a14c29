using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>
/// Whether the store is the one that was served here last. If somebody put another in its place without <see cref="Restoring"/>, callers hold
/// cursors and revision numbers of a history that is gone; another <see cref="StoreEpoch"/> begins then, as after a restore.
/// </summary>
internal static class Continuity
{
    /// <summary>Continues the store, or begins another life of it and says why.</summary>
    public static (HighWater Now, string? WhyAnother) Resume(SqliteConnection connection, string store)
    {
        var note = HighWater.Beside(store);
        var why = note?.WhyNot(connection, store);
        if (why is not null)
            BeginAnother(connection, note!);
        var now = HighWater.Of(connection, store, earlier: why is null ? note : null);
        if (now != note)
            now.Write(store, flush: true); // a stop before this begins one more life at the next start
        return (now, why);
    }

    /// <summary>The highest revision number that may have been given in a store, or in one that it replaced by hand.</summary>
    public static long Given(SqliteConnection connection, string store)
    {
        var own = NumberIn(connection);
        return HighWater.Beside(store) is { } note && note.WhyNot(connection, store) is not null ? long.Max(own, note.MayHaveGiven) : own;
    }

    private static void BeginAnother(SqliteConnection connection, HighWater note)
    {
        using var session = SqliteSession.On(connection, deferred: false);
        StoreEpoch.BeginAnother(session, note.MayHaveGiven).AtOnce();
        session.Keep().AtOnce();
    }

    private static long NumberIn(SqliteConnection connection)
    {
        using var session = SqliteSession.On(connection, deferred: true);
        var knowsLives = session.ExecuteScalar<long>("SELECT count(*) FROM sqlite_master WHERE name = 'life'").AtOnce() > 0; // not those of schema 1
        return (knowsLives ? StoreEpoch.HighestNumber(session) : StoreEpoch.HighestStored(session)).AtOnce();
    }
}
