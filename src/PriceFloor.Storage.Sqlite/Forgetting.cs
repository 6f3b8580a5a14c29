using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage.Sqlite;

/// <summary>
/// Really erases a document: every revision, its head, its references, the lines of the log that name it; then the file is rewritten, so no free page
/// holds a trace. Another <see cref="StoreEpoch"/> of the store begins. The caller holds the data folder's lock.
/// </summary>
internal static class Forgetting
{
    /// <summary>Erases a document, and returns the number of erased revisions.</summary>
    /// <param name="store">The store's file.</param>
    /// <param name="kind">The document's kind.</param>
    /// <param name="key">The document's key.</param>
    /// <param name="now">The time. The trail lists it with the document's kind, but not its key, which would be a trace.</param>
    /// <param name="kindsBelow">Documents of these kinds are erased with it if they have its key, or one that begins with it and a slash.</param>
    /// <param name="mayStand">Whether it is also erased if it was not deleted before.</param>
    public static int Forget(string store, string kind, string key, DateTimeOffset now, IReadOnlyList<string>? kindsBelow = null,
        bool mayStand = false)
    {
        var document = new DocumentName(kind, key);
        return Within(store, kind, now, session => Erasing.Document(session, document, kindsBelow ?? [], mayStand), Erasing.NeverWas(document));
    }

    /// <summary>Erases every line that a source has ever sent to the log, with its name, and returns the number of erased lines.</summary>
    /// <param name="store">The store's file.</param>
    /// <param name="source">The source's name.</param>
    /// <param name="now">The time. The trail lists it without the source's name, which would be a trace.</param>
    public static int ForgetSource(string store, string source, DateTimeOffset now) =>
        Within(store, Trail.Log, now, session => Erasing.Source(session, source), Erasing.NeverSent(source));

    private static int Within(string store, string kind, DateTimeOffset now, Func<Session, ValueTask<int?>> erase, string nothing)
    {
        try
        {
            using var connection = StoreFile.Open(store);
            if (StoreFile.SchemaOf(connection, store) < Migrations.Newest)
                throw new StoreException($"The store {Path.GetFullPath(store)} has an older schema. Start the service once, "
                    + "so that it is upgraded, and stop it again.");
            connection.Execute("PRAGMA foreign_keys=ON; PRAGMA synchronous=FULL; PRAGMA secure_delete=ON");
            var given = Continuity.Given(connection, store);
            var gone = Erase(connection, kind, now, erase, given);
            WriteAnew(connection); // one that was stopped midway may have got no further than this
            if (gone is null)
                throw new StoreException($"{nothing}; the file was rewritten all the same.");
            HighWater.Renew(connection, store);
            return gone.Value;
        }
        catch (StoreTroubleException e)
        {
            throw StoreFaults.CannotOpen(store, e);
        }
    }

    private static void WriteAnew(SqliteConnection connection) => connection.Execute("VACUUM; PRAGMA wal_checkpoint(TRUNCATE)");

    private static int? Erase(SqliteConnection connection, string kind, DateTimeOffset now, Func<Session, ValueTask<int?>> erase, long given)
    {
        using var session = SqliteSession.On(connection, deferred: false);
        var gone = erase(session).AtOnce();
        if (gone is null)
            return null;
        Erasing.Finish(session, kind, given, now).AtOnce();
        session.Keep().AtOnce();
        return gone;
    }
}
