namespace PriceFloor.Storage;

/// <summary>A transaction that writes. All its writes have one time, later than every earlier write's even if the clock jumped back.</summary>
public sealed class Writing : Snapshot
{
    internal const string MoveHead =
        """
        INSERT INTO head (kind, key, position, deleted) VALUES (@kind, @key, @position, @deleted)
        ON CONFLICT (kind, key) DO UPDATE SET position = excluded.position, deleted = excluded.deleted
        """;

    private readonly string _savedBy;
    private readonly HeldBack? _heldBack;
    private bool _wroteBeside;

    private Writing(Session session, string savedBy, long savedAt)
        : base(session) => (_savedBy, SavedAt, _heldBack) = (savedBy, savedAt, session as HeldBack);

    /// <param name="session">The transaction.</param>
    /// <param name="savedBy">Who writes.</param>
    /// <param name="now">The clock's time.</param>
    /// <param name="last">The time of the last write, if it is known; else the engine is asked.</param>
    internal static async ValueTask<Writing> Begin(Session session, string savedBy, DateTimeOffset now, long? last = null)
    {
        var known = session is HeldBack held ? held.SavedAt : last;
        return new(session, savedBy, known is { } earlier ? long.Max(Moment.Of(now), earlier + 1) : await Trail.TimeOf(session, now));
    }

    public override ValueTask<long> Position => _heldBack is { } held ? new(held.Position) : base.Position;

    public override ValueTask<long> Documents => _heldBack is { } held && !_wroteBeside ? new(held.Documents) : base.Documents;

    internal override ValueTask<long> Bytes() => _heldBack is { } held && !_wroteBeside ? held.Bytes() : base.Bytes();

    /// <summary>The time of everything in this transaction.</summary>
    public DateTimeOffset Now => Moment.ToTime(SavedAt);

    /// <summary>The same as the engine keeps it.</summary>
    internal long SavedAt { get; }

    /// <summary>The time that no revision is later than; null if this has taken in what another store wrote, which has times of its own.</summary>
    internal long? LastSavedAt => _wroteBeside ? null : SavedAt;

    /// <summary>The position of the last revision written here; 0 if there is none.</summary>
    internal long LastPosition { get; private set; }

    /// <summary>The highest number of a revision written here; 0 if there is none.</summary>
    internal long HighestNumber { get; private set; }

    /// <summary>Keeps nothing: the transaction is rolled back when its work returns.</summary>
    public void Undo() => IsUndone = true;

    internal bool IsUndone { get; private set; }

    /// <summary>Appends a revision of a document and records its references.</summary>
    public ValueTask<Revision> Save(string kind, string key, string body, IEnumerable<DocumentName> references) =>
        Append(kind, key, body, [.. references.Distinct()]);

    /// <summary>Appends a revision that hides the document; its history stays.</summary>
    public ValueTask<Revision> Delete(string kind, string key) => Append(kind, key, body: null, []);

    public override ValueTask<Revision?> Newest(string kind, string key) =>
        _heldBack is { } held ? new(held.Newest(new DocumentName(kind, key))) : base.Newest(kind, key);

    public override ValueTask<List<Revision>> List(string kind, string prefix = "", string after = "", int limit = int.MaxValue, long? asOf = null) =>
        _heldBack is { } held && asOf is null ? new(held.List(kind, prefix, after, limit)) : base.List(kind, prefix, after, limit, asOf);

    public override ValueTask<List<Revision>> NewestSince(long position) =>
        _heldBack is { } held ? new(held.NewestSince(position)) : base.NewestSince(position);

    public override ValueTask<List<DocumentName>> UsersOf(string kind, string key) =>
        _heldBack is { } held ? new(held.UsersOf(new DocumentName(kind, key))) : base.UsersOf(kind, key);

    public async ValueTask AddKey(StoredKey key)
    {
        await Session.Execute(
            "INSERT INTO access_key (name, hash, scopes, created_at, expires_at, profiles) VALUES (@Name, @Hash, @Scopes, @CreatedAt, @ExpiresAt, "
            + "@Profiles)", key);
        await Remember(key.Name, "created");
    }

    /// <summary>Gives a key a new secret; the old one works until the given time.</summary>
    public async ValueTask RotateKey(string name, byte[] hash, long previousUntil)
    {
        await Session.Execute(
            "UPDATE access_key SET previous_hash = hash, previous_until = @previousUntil, hash = @hash WHERE name = @name",
            new { name, hash, previousUntil });
        await Remember(name, "rotated");
    }

    /// <summary>False if there is no such key.</summary>
    public async ValueTask<bool> DeleteKey(string name)
    {
        var deleted = await Session.Execute("DELETE FROM access_key WHERE name = @name", new { name }) > 0;
        if (deleted)
            await Remember(name, "deleted");
        return deleted;
    }

    /// <summary>
    /// Whether a key's secret is still valid when this is written: it may have been deleted, rotated away or have expired while a request came in.
    /// </summary>
    public ValueTask<bool> Opens(byte[] hash) => _heldBack is { Keys: { } keys } ? new(keys.Any(key => Opens(key, hash))) : Single<bool>(
        """
        SELECT EXISTS (SELECT 1 FROM access_key WHERE (expires_at IS NULL OR expires_at > @now) AND (hash = @hash OR (previous_hash = @hash AND previous_until > @now)))
        """, new { hash, now = SavedAt });

    /// <summary>Records when a key was last used; another process may have recorded a later use.</summary>
    public async ValueTask KeyWasUsed(string name, long at) =>
        await Session.Execute("UPDATE access_key SET last_used = @at WHERE name = @name AND coalesce(last_used, 0) < @at", new { name, at });

    /// <summary>Records a backup of the whole store.</summary>
    public ValueTask BackedUp(string file) =>
        Trail.Tell(Session, (_savedBy, Trail.WholeStore, Path.GetFileName(file), Trail.BackedUp), SavedAt);

    /// <summary>Writes to the log, by whom and when this is.</summary>
    internal ValueTask WriteLog(LogStep write)
    {
        _wroteBeside = true; // an import writes documents too, and nothing in memory counts them
        return write(Session, _savedBy, SavedAt);
    }

    /// <summary>Removes some of what an appending left that was stopped; false if that was all.</summary>
    internal ValueTask<bool> ClearLog(LogList list) => EndOfLog.Clear(Session, list);

    /// <summary>Gives names of the log their numbers.</summary>
    internal async ValueTask<bool> AddNames(LogNames names, IReadOnlyCollection<(string Kind, string Key)> missing)
    {
        await LogNames.Add(Session, missing);
        await names.Find(Session, missing);
        return true;
    }

    private bool Opens(StoredKey key, byte[] hash) => (key.ExpiresAt is not { } end || end > SavedAt)
        && (hash.AsSpan().SequenceEqual(key.Hash) || (hash.AsSpan().SequenceEqual(key.PreviousHash) && key.PreviousUntil > SavedAt));

    private ValueTask Remember(string name, string what)
    {
        _heldBack?.ChangeKeys();
        return Trail.Tell(Session, (_savedBy, "key", name, what), SavedAt);
    }

    private async ValueTask<Revision> Append(string kind, string key, string? body, IReadOnlyList<DocumentName> references)
    {
        var given = new Revision(0, kind, key, 0, SavedAt, _savedBy, body);
        var revision = _heldBack is { } held ? held.Append(given, references) : await AppendNow(given, references);
        (LastPosition, HighestNumber) = (revision.Position, long.Max(HighestNumber, revision.Number));
        return revision;
    }

    private async ValueTask<Revision> AppendNow(Revision given, IReadOnlyList<DocumentName> references)
    {
        var (kind, key) = (given.Kind, given.Key);
        var (position, number) = await Single<(long, long)>(
            """
            INSERT INTO revision (kind, key, number, saved_at, saved_by, body)
            SELECT @kind, @key, max(given.number) + 1, @SavedAt, @SavedBy, @Body FROM (
                SELECT numbers_above AS number FROM life
                UNION ALL SELECT r.number FROM head h JOIN revision r ON r.position = h.position WHERE h.kind = @kind AND h.key = @key) AS given
            RETURNING position, number
            """,
            new { kind, key, given.SavedAt, given.SavedBy, given.Body });
        await Session.Execute(MoveHead, new { kind, key, position, deleted = given.IsDeletion ? 1 : 0 });
        if (number == 1 ? references.Count > 0 : !references.ToHashSet().SetEquals(await Session.ReferencesOf(kind, key)))
            await Session.Refer(kind, key, references);
        return given with { Position = position, Number = number };
    }
}
