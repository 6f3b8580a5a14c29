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
        bool mayStand = false) =>
        Within(store, (connection, given) => Erase(connection, (kind, key, kindsBelow ?? [], mayStand), given, now));

    /// <summary>Erases every line that a source has ever sent to the log, with its name, and returns the number of erased lines.</summary>
    /// <param name="store">The store's file.</param>
    /// <param name="source">The source's name.</param>
    /// <param name="now">The time. The trail lists it without the source's name, which would be a trace.</param>
    public static int ForgetSource(string store, string source, DateTimeOffset now) =>
        Within(store, (connection, given) => EraseSource(connection, source, given, now));

    private static int Within(string store, Func<SqliteConnection, long, int> erase)
    {
        try
        {
            using var connection = StoreFile.Open(store);
            if (StoreFile.SchemaOf(connection, store) < Migrations.Newest)
                throw new StoreException($"The store {Path.GetFullPath(store)} has an older schema. Start the service once, "
                    + "so that it is upgraded, and stop it again.");
            connection.Execute("PRAGMA foreign_keys=ON; PRAGMA synchronous=FULL; PRAGMA secure_delete=ON");
            var given = Continuity.Given(connection, store);
            var gone = erase(connection, given);
            WriteAnew(connection);
            HighWater.Renew(connection, store);
            return gone;
        }
        catch (StoreTroubleException e)
        {
            throw StoreFaults.CannotOpen(store, e);
        }
    }

    private static void WriteAnew(SqliteConnection connection) => connection.Execute("VACUUM; PRAGMA wal_checkpoint(TRUNCATE)");

    private static int Erase(SqliteConnection connection, (string Kind, string Key, IReadOnlyList<string> KindsBelow, bool MayStand) what, long given,
        DateTimeOffset now)
    {
        var (kind, key, kindsBelow, mayStand) = what;
        using var session = SqliteSession.On(connection, deferred: false);
        var snapshot = new Snapshot(session);
        if (snapshot.Newest(kind, key).AtOnce() is not { } newest)
        {
            session.TakeBack();
            WriteAnew(connection); // one that was stopped midway may have got no further than this
            throw new StoreException($"There never was a {kind} \"{key}\" in this store (case counts), or it is already forgotten; "
                + "the file was rewritten all the same.");
        }

        if (!newest.IsDeletion && !mayStand)
            throw new StoreException(
                $"The {kind} \"{key}\" is still there. Delete it first (DELETE over HTTP, which also reports what still uses it), then forget it.");
        if (snapshot.UsersOf(kind, key).AtOnce() is { Count: > 0 } users)
            throw new StoreException($"The {kind} \"{key}\" is still used by {string.Join(", ", users.Select(user => $"{user.Kind} {user.Key}"))}. "
                + "Change or delete those first.");
        if (kindsBelow.SelectMany(below => snapshot.List(below, key + "/", limit: 1).AtOnce()).FirstOrDefault() is { } standing)
            throw new StoreException($"The {standing.Kind} \"{standing.Key}\" is still there. Delete it first, then forget the {kind}.");

        const string Those = "((kind = @kind AND key = @key) OR (kind IN @kindsBelow AND (key = @key OR substr(key, 1, length(@below)) = @below)))";
        var document = new { kind, key, kindsBelow, below = key + "/" };
        session.Execute("DELETE FROM reference WHERE from_kind = @kind AND from_key = @key", document).AtOnce();
        session.Execute($"DELETE FROM head WHERE {Those}", document).AtOnce();
        var gone = session.Execute($"DELETE FROM revision WHERE {Those}", document).AtOnce();
        EraseLines(session, kind, key);
        StoreEpoch.BeginAnother(session, given);
        Trail.Tell(session, (Trail.CommandLine, kind, "", Trail.Forgotten), Trail.TimeOf(session, now).AtOnce()).AtOnce();
        session.Keep().AtOnce();
        return gone;
    }

    private static int EraseSource(SqliteConnection connection, string source, long given, DateTimeOffset now)
    {
        using var session = SqliteSession.On(connection, deferred: false);
        if (session.ExecuteScalar<long?>("SELECT id FROM name WHERE kind = @kind AND key = @source", new { kind = LogNames.Source, source }).AtOnce()
                is not { } id)
        {
            session.TakeBack();
            WriteAnew(connection); // one that was stopped midway may have got no further than this
            throw new StoreException($"The source \"{source}\" never sent a line to the log of this store (case counts), or it is already forgotten; "
                + "the file was rewritten all the same.");
        }

        var gone = session.Execute("DELETE FROM movement WHERE source = @id", new { id }).AtOnce()
            + session.Execute("DELETE FROM bench WHERE source = @id", new { id }).AtOnce();
        session.Execute("DELETE FROM log_source WHERE source = @id", new { id }).AtOnce();
        EraseUnusedNames(session);
        StoreEpoch.BeginAnother(session, given);
        Trail.Tell(session, (Trail.CommandLine, Trail.Log, "", Trail.Forgotten), Trail.TimeOf(session, now).AtOnce()).AtOnce();
        session.Keep().AtOnce();
        return gone;
    }

    /// <summary>A line says nothing without its design or the channel where it moved.</summary>
    private static void EraseLines(SqliteSession session, string kind, string key)
    {
        const string Those = "(SELECT id FROM name WHERE kind = @kind AND key = @key)";
        if (kind == LogNames.Design)
            session.Execute($"DELETE FROM movement WHERE design IN {Those}; DELETE FROM bench WHERE design IN {Those}", new { kind, key }).AtOnce();
        else if (kind == LogNames.Channel)
            session.Execute($"DELETE FROM movement WHERE place IN {Those}", new { kind, key }).AtOnce();
        EraseUnusedNames(session);
    }

    private static void EraseUnusedNames(SqliteSession session) =>
        session.Execute(
            """
            DELETE FROM name WHERE id NOT IN (SELECT source FROM movement UNION SELECT source FROM bench UNION SELECT source FROM log_source
                UNION SELECT design FROM movement UNION SELECT design FROM bench WHERE design IS NOT NULL
                UNION SELECT place FROM movement WHERE place IS NOT NULL UNION SELECT currency FROM movement WHERE currency IS NOT NULL
                UNION SELECT stall FROM movement WHERE stall IS NOT NULL UNION SELECT piece FROM movement WHERE piece IS NOT NULL
                UNION SELECT step FROM bench WHERE step IS NOT NULL)
            """).AtOnce();
}
