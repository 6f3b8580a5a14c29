using Dapper;
using Microsoft.Data.Sqlite;

namespace PriceFloor.Storage;

/// <summary>
/// Really erases a document: every revision, its head, its references; then the file is written anew, so that no free page holds a trace.
/// The caller holds the data folder's lock.
/// <para>
/// Positions are cursors that callers keep, and SQLite gives the next row the highest position plus one. Were the highest rows simply
/// gone, the next write would bear a position that a caller has already passed, and they would never hear of it. So where the last row
/// of all goes, a marker takes its position and its time, and says nothing of what was there; the next write is one higher, and later.
/// A marker below the last row holds nothing back, and goes the next time.
/// </para>
/// </summary>
public static class Forgetting
{
    /// <summary>The kind of a marker; it has no head, and nobody is told of it.</summary>
    internal const string Marker = "forgotten";

    /// <summary>Erases a document that is deleted already, and says how many revisions went.</summary>
    public static int Forget(string store, string kind, string key)
    {
        try
        {
            using var connection = StoreFile.Open(store);
            if (StoreFile.SchemaOf(connection, store) < Migrations.Newest)
                throw new StoreException($"The store {Path.GetFullPath(store)} has an older schema. Start the service once, so that it is brought up to date, and stop it again.");
            connection.Execute("PRAGMA foreign_keys=ON; PRAGMA synchronous=FULL; PRAGMA secure_delete=ON");
            var gone = Erase(connection, kind, key);
            connection.Execute("VACUUM");
            connection.Execute("PRAGMA wal_checkpoint(TRUNCATE)");
            return gone;
        }
        catch (SqliteException e)
        {
            throw DataFolder.CannotOpenStore(store, e);
        }
    }

    private static int Erase(SqliteConnection connection, string kind, string key)
    {
        using var transaction = connection.BeginTransaction(deferred: false);
        var snapshot = new Snapshot(connection, transaction);
        if (snapshot.Newest(kind, key) is not { } newest)
            throw new StoreException($"There never was a {kind} \"{key}\" in this store (case counts), or it is forgotten already.");
        if (!newest.IsDeletion)
            throw new StoreException($"The {kind} \"{key}\" is still there. Delete it first (DELETE over HTTP, which also tells what still uses it), then forget it.");
        if (snapshot.UsersOf(kind, key) is { Count: > 0 } users)
            throw new StoreException($"The {kind} \"{key}\" is still used by {string.Join(", ", users.Select(user => $"{user.Kind} {user.Key}"))}. Change or delete those first.");

        var last = connection.QuerySingle<(long Position, long SavedAt)>("SELECT position, saved_at FROM revision ORDER BY position DESC LIMIT 1", transaction: transaction);
        connection.Execute("DELETE FROM head WHERE kind = @kind AND key = @key", new { kind, key }, transaction);
        connection.Execute("DELETE FROM reference WHERE from_kind = @kind AND from_key = @key", new { kind, key }, transaction);
        var gone = connection.Execute("DELETE FROM revision WHERE kind = @kind AND key = @key", new { kind, key }, transaction);
        connection.Execute("DELETE FROM revision WHERE kind = @marker AND position < @position", new { marker = Marker, position = last.Position }, transaction);
        connection.Execute(
            """
            INSERT INTO revision (position, kind, key, number, saved_at, saved_by)
            SELECT @position, @marker, '', @position, @savedAt, 'forget' WHERE NOT EXISTS (SELECT 1 FROM revision WHERE position = @position)
            """,
            new { position = last.Position, marker = Marker, savedAt = last.SavedAt }, transaction);
        transaction.Commit();
        return gone;
    }
}
