using System.Security.Cryptography;
using System.Text;

namespace PriceFloor.Storage;

/// <summary>The store as it is at one moment. Each question may wait for the engine, one after another.</summary>
public partial class Snapshot
{
    private const string Columns = "position, kind, key, number, saved_at AS SavedAt, saved_by AS SavedBy, body";

    internal Snapshot(Session session) => Session = session;

    private protected Session Session { get; }

    /// <summary>The newest revision of a document, deletions included; null if there never was one.</summary>
    public virtual ValueTask<Revision?> Newest(string kind, string key) => One<Revision>(
        $"SELECT {Prefixed} FROM head h JOIN revision r ON r.position = h.position WHERE h.kind = @kind AND h.key = @key", new { kind, key });

    /// <summary>The document as it is, or as it was at a moment; null if it did not exist.</summary>
    public async ValueTask<Revision?> Find(string kind, string key, long? asOf = null)
    {
        var found = await (asOf is null ? Newest(kind, key) : One<Revision>(
            $"SELECT {Columns} FROM revision WHERE kind = @kind AND key = @key AND saved_at <= @asOf ORDER BY saved_at DESC, number DESC LIMIT 1",
            new { kind, key, asOf }));
        return found is { IsDeletion: false } ? found : null;
    }

    /// <summary>Documents of a kind in order of key, after a key, as they are or as they were.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="prefix">Only keys that start with this.</param>
    /// <param name="after">Only keys after this one.</param>
    /// <param name="limit">At most this many.</param>
    /// <param name="asOf">At that moment; now if null.</param>
    public virtual ValueTask<List<Revision>> List(string kind, string prefix = "", string after = "", int limit = int.MaxValue, long? asOf = null) =>
        Query<Revision>(
            asOf is null
                ? $"""
                   SELECT {Prefixed} FROM head h JOIN revision r ON r.position = h.position
                   WHERE h.kind = @kind AND h.key > @after AND h.key >= @prefix AND substr(h.key, 1, length(@prefix)) = @prefix AND h.deleted = 0
                   ORDER BY h.key LIMIT @limit
                   """
                : $"""
                   SELECT {Prefixed} FROM head h {Session.NewestAt}
                   WHERE h.kind = @kind AND h.key > @after AND h.key >= @prefix AND substr(h.key, 1, length(@prefix)) = @prefix AND r.body IS NOT NULL
                   ORDER BY h.key LIMIT @limit
                   """,
            new { kind, prefix, after, limit, asOf });

    /// <summary>The position of the newest revision of all; 0 if nothing was ever stored.</summary>
    public virtual ValueTask<long> Position => Whole("SELECT coalesce(max(position), 0) FROM revision");

    /// <summary>Which history it is of, as <see cref="StorePoint"/> has it.</summary>
    public string HistoryName => Session.Point?.History ?? "";

    /// <summary>Where the store stands.</summary>
    public async ValueTask<StorePoint> Point() => Session.Point ?? new StorePoint("", await Position, 0);

    /// <summary>The name of the store's life.</summary>
    internal ValueTask<string> LifeName => Single<string>("SELECT name FROM life", new { });

    /// <summary>The mark of the history up to a position: the time of the write there says which of two files it is in.</summary>
    internal async ValueTask<string> MarkAt(long position)
    {
        var history = await One<string>(
            "SELECT saved_at || ' ' || kind || ' ' || key || ' ' || number FROM revision WHERE position <= @position ORDER BY position DESC LIMIT 1",
            new { position }) ?? "";
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{await LifeName} {history}")).AsSpan(0, 6));
    }

    /// <summary>The highest number of a revision that was written after a position; 0 if there is none.</summary>
    internal ValueTask<long> HighestNumberSince(long position) =>
        Whole("SELECT coalesce(max(number), 0) FROM revision WHERE position > @position", new { position });

    /// <summary>The newest revision of each document that was written after a position, deletions included.</summary>
    public virtual ValueTask<List<Revision>> NewestSince(long position) => Query<Revision>(
        $"SELECT {Prefixed} FROM head h JOIN revision r ON r.position = h.position WHERE h.position > @position", new { position });

    /// <summary>The position of the newest revision at a moment; 0 if there was none.</summary>
    public ValueTask<long> PositionAt(long asOf) => Whole(Session.PositionAt, new { asOf });

    /// <summary>
    /// Each document that was written after one position and up to another, as it was at both: null if it did not exist.
    /// </summary>
    public async ValueTask<List<Change>> ChangesBetween(long after, long upTo)
    {
        var changes = new List<Change>();
        foreach (var document in await Query<DocumentName>("SELECT DISTINCT kind, key FROM revision WHERE position > @after AND position <= @upTo",
                new { after, upTo }))
            changes.Add(new Change(document, await Standing(document, after), await Standing(document, upTo)));
        return changes;
    }

    /// <summary>The position of the last revision of some kinds up to a position; 0 if there is none.</summary>
    public ValueTask<long> LastOf(IReadOnlyList<string> kinds, long upTo) =>
        Whole("SELECT coalesce(max(position), 0) FROM revision WHERE position <= @upTo AND kind IN @kinds", new { kinds, upTo });

    /// <summary>Every document that existed at a moment.</summary>
    public ValueTask<List<Revision>> All(long asOf) => Query<Revision>(
        $"SELECT {Prefixed} FROM head h {Session.NewestAt} WHERE r.body IS NOT NULL", new { asOf });

    /// <summary>The revisions of a document in order, after a number, up to a moment.</summary>
    public ValueTask<List<Revision>> History(string kind, string key, long after = 0, int limit = int.MaxValue, long? asOf = null) =>
        Query<Revision>(
            $"SELECT {Columns} FROM revision WHERE kind = @kind AND key = @key AND number > @after AND saved_at <= @upTo "
            + "ORDER BY number LIMIT @limit",
            new { kind, key, after, limit, upTo = asOf ?? long.MaxValue });

    /// <summary>The newest revisions of a document that were written after one moment and up to another, newest first.</summary>
    public ValueTask<List<Revision>> Latest(DocumentName document, int limit, long after = -1, long upTo = long.MaxValue) => Query<Revision>(
        $"SELECT {Columns} FROM revision WHERE kind = @Kind AND key = @Key AND saved_at > @after AND saved_at <= @upTo ORDER BY saved_at DESC, "
        + "number DESC LIMIT @limit",
        new { document.Kind, document.Key, after, upTo, limit });

    /// <summary>The keys of a kind that start with a prefix, deleted ones included, in order.</summary>
    public ValueTask<List<string>> KeysEver(string kind, string prefix) => Query<string>(
        "SELECT key FROM head WHERE kind = @kind AND key >= @prefix AND substr(key, 1, length(@prefix)) = @prefix ORDER BY key",
        new { kind, prefix });

    /// <summary>One revision of a document by its number.</summary>
    public ValueTask<Revision?> RevisionOf(string kind, string key, long number) => One<Revision>(
        $"SELECT {Columns} FROM revision WHERE kind = @kind AND key = @key AND number = @number", new { kind, key, number });

    /// <summary>The present documents that refer to something, in order.</summary>
    public virtual ValueTask<List<DocumentName>> UsersOf(string kind, string key) => Query<DocumentName>(
        "SELECT from_kind AS kind, from_key AS key FROM reference WHERE to_kind = @kind AND to_key = @key ORDER BY from_kind, from_key",
        new { kind, key });

    /// <summary>True if nothing was ever stored.</summary>
    public ValueTask<bool> IsEmpty => Single<bool>("SELECT NOT EXISTS (SELECT 1 FROM revision)", new { });

    /// <summary>All keys, by name.</summary>
    public ValueTask<List<StoredKey>> Keys => Query<StoredKey>(
        """
        SELECT name, hash, scopes, created_at AS CreatedAt, expires_at AS ExpiresAt, profiles, last_used AS LastUsed, previous_hash AS PreviousHash, previous_until AS PreviousUntil
        FROM access_key ORDER BY name
        """, new { });

    /// <summary>The actions on documents before a position, newest first.</summary>
    public ValueTask<List<AuditEntry>> DocumentEntries(long before, int limit) => Query<AuditEntry>(
        """
        SELECT r.position, r.saved_at AS At, r.saved_by AS By, r.kind, r.key, r.number, CASE
            WHEN r.body IS NULL THEN 'deleted'
            WHEN NOT EXISTS (SELECT 1 FROM revision p WHERE p.kind = r.kind AND p.key = r.key AND p.number = r.number - 1 AND p.body IS NOT NULL) THEN 'created'
            ELSE 'changed' END AS What
        FROM revision r WHERE r.position < @before ORDER BY r.position DESC LIMIT @limit
        """, new { before, limit });

    /// <summary>The actions on keys and on the whole store before a position, newest first.</summary>
    public ValueTask<List<AuditEntry>> OtherEntries(long before, int limit) => Query<AuditEntry>(
        "SELECT position, at, by, kind, name AS Key, 0 AS Number, what FROM event WHERE position < @before ORDER BY position DESC LIMIT @limit",
        new { before, limit });

    private ValueTask<Revision?> Standing(DocumentName document, long position) => One<Revision>(
        $"SELECT {Columns} FROM revision WHERE kind = @Kind AND key = @Key AND position <= @position ORDER BY number DESC LIMIT 1",
        new { document.Kind, document.Key, position });

    private static string Prefixed => "r.position, r.kind, r.key, r.number, r.saved_at AS SavedAt, r.saved_by AS SavedBy, r.body";

    private protected ValueTask<List<T>> Query<T>(string sql, object parameters) => Session.Query<T>(sql, parameters);

    private protected async ValueTask<T> Single<T>(string sql, object parameters) => (await Session.Query<T>(sql, parameters)).Single();

    private ValueTask<long> Whole(string sql, object? parameters = null) => Single<long>(sql, parameters ?? new { });

    /// <summary>Null if there is no such row.</summary>
    private async ValueTask<T?> One<T>(string sql, object parameters) where T : class => (await Session.Query<T>(sql, parameters)).SingleOrDefault();
}

/// <summary>A stored key: never the key itself.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Hash">SHA-256 of the key.</param>
/// <param name="Scopes">Words separated by spaces.</param>
/// <param name="CreatedAt">When it was made, in microseconds since 1970 UTC.</param>
/// <param name="ExpiresAt">When it expires; null if never.</param>
/// <param name="Profiles">Keys of the cost profiles that it is limited to, separated by spaces; null for all.</param>
/// <param name="LastUsed">The minute in which it was last used, as far as that is stored.</param>
/// <param name="PreviousHash">SHA-256 of the key before the last rotation.</param>
/// <param name="PreviousUntil">Until when that key still works.</param>
public sealed record StoredKey(
    string Name, byte[] Hash, string Scopes, long CreatedAt, long? ExpiresAt, string? Profiles = null, long? LastUsed = null,
    byte[]? PreviousHash = null, long? PreviousUntil = null);

/// <summary>Who did what to a document, a key or the whole store.</summary>
public sealed record AuditEntry
{
    /// <summary>Its place among the actions on documents, or among all others.</summary>
    public long Position { get; init; }

    /// <summary>When, in microseconds since 1970 UTC.</summary>
    public long At { get; init; }

    /// <summary>Name of the key that did it, or of the means if no key did.</summary>
    public string By { get; init; } = "";

    /// <summary>The kind of document, "key" or "store".</summary>
    public string Kind { get; init; } = "";

    /// <summary>The document's key, the key's name or the name of the backup; empty for a forgotten document.</summary>
    public string Key { get; init; } = "";

    /// <summary>The revision that it made; 0 if none.</summary>
    public long Number { get; init; }

    /// <summary>created, changed, deleted, rotated, backed-up, restored or forgotten.</summary>
    public string What { get; init; } = "";
}
