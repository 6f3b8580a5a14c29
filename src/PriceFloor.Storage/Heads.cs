namespace PriceFloor.Storage;

/// <summary>
/// The newest revision of every document, what refers to what, and the keys: what a write reads, in memory instead of behind a network. It is exact
/// for whoever holds the writers' lock, after comparing where the store stands.
/// </summary>
internal sealed class Heads
{
    /// <summary>Milliseconds.</summary>
    private const long LogIsAskedAfter = 10_000;

    private readonly Dictionary<DocumentName, Revision> _newest = [];
    private readonly Dictionary<DocumentName, IReadOnlyList<DocumentName>> _references = [];
    private readonly Dictionary<DocumentName, HashSet<DocumentName>> _users = [];
    private readonly string _life;
    private List<StoredKey> _keys = [];
    private long _events = -1;
    private long _position, _documents;
    private (long UpTo, long Bytes)? _size;
    private (long At, long Bytes)? _logSize;

    private Heads(string life) => _life = life;

    /// <summary>The newest revisions, deletions included.</summary>
    public IEnumerable<Revision> All => _newest.Values;

    public IReadOnlyList<StoredKey> Keys => _keys;

    /// <summary>The documents that are not deleted.</summary>
    public long Documents => _documents;

    /// <summary>
    /// About how many bytes everything up to where the store stands takes. What others added to the log is counted after a moment, so a write that
    /// is limited waits no longer than another.
    /// </summary>
    public async ValueTask<long> Bytes(Session session)
    {
        if (_size is not { } size || size.UpTo != _position)
            _size = size = (_position, await session.BytesOfDocuments(_position));
        if (_logSize is not { } log || Environment.TickCount64 - log.At > LogIsAskedAfter)
            _logSize = log = (Environment.TickCount64, await session.BytesOfLog());
        return size.Bytes + log.Bytes;
    }

    /// <summary>Brings what is known of a store up to where it stands, or reads all of it.</summary>
    /// <param name="session">A transaction that writes.</param>
    /// <param name="standing">Where the store stands.</param>
    /// <param name="known">What is known; null for nothing.</param>
    public static async ValueTask<Heads> At(Session session, Standing standing, Heads? known)
    {
        var heads = known is not null && known._life == standing.Life && known._position <= standing.Position ? known : new Heads(standing.Life);
        if (heads._position < standing.Position)
            await heads.Follow(session, standing.Position);
        if (heads._events != standing.Events)
            (heads._keys, heads._events) = (await new Snapshot(session).Keys, standing.Events);
        return heads;
    }

    public Revision? Newest(DocumentName document) => _newest.GetValueOrDefault(document);

    /// <summary>What a document refers to.</summary>
    public IReadOnlyList<DocumentName> References(DocumentName document) => _references.GetValueOrDefault(document, []);

    /// <summary>The documents that refer to something.</summary>
    public IReadOnlyCollection<DocumentName> UsersOf(DocumentName to) => _users.TryGetValue(to, out var users) ? users : [];

    /// <summary>Takes over what was committed.</summary>
    public void Take(IReadOnlyList<Held> written)
    {
        var size = _size is { } known && known.UpTo == _position ? known.Bytes + written.Sum(one => one.Bytes) : (long?)null;
        foreach (var one in written)
            Set(one.Revision, one.References);
        _size = size is { } bytes ? (_position, bytes) : null;
    }

    private async ValueTask Follow(Session session, long position)
    {
        var newest = await new Snapshot(session).NewestSince(_position);
        var references = await session.Query<Reference>(
            """
            SELECT r.from_kind AS FromKind, r.from_key AS FromKey, r.to_kind AS ToKind, r.to_key AS ToKey
            FROM head h JOIN reference r ON r.from_kind = h.kind AND r.from_key = h.key WHERE h.position > @_position
            """, new { _position });
        var of = references.ToLookup(one => new DocumentName(one.FromKind, one.FromKey), one => new DocumentName(one.ToKind, one.ToKey));
        foreach (var revision in newest)
            Set(revision, [.. of[new(revision.Kind, revision.Key)]]);
        _position = position;
    }

    private void Set(Revision revision, IReadOnlyList<DocumentName> references)
    {
        var document = new DocumentName(revision.Kind, revision.Key);
        _documents += (revision.IsDeletion ? 0 : 1) - (Newest(document) is { IsDeletion: false } ? 1 : 0);
        _newest[document] = revision;
        _position = long.Max(_position, revision.Position);
        foreach (var to in References(document))
            if (_users[to] is { } users && users.Remove(document) && users.Count == 0)
                _users.Remove(to);
        if (references.Count == 0)
            _references.Remove(document);
        else
            _references[document] = references;
        foreach (var to in references)
            if (_users.TryGetValue(to, out var users))
                users.Add(document);
            else
                _users[to] = [document];
    }

    private sealed record Reference
    {
        public string FromKind { get; init; } = "";

        public string FromKey { get; init; } = "";

        public string ToKind { get; init; } = "";

        public string ToKey { get; init; } = "";
    }
}
