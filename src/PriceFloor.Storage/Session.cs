namespace PriceFloor.Storage;

/// <summary>
/// A transaction of the engine, on its own connection: a <see cref="Snapshot"/> reads and a <see cref="Writing"/> writes through it. Everything
/// that may wait for the engine is awaited. The engine's exceptions leave it as a <see cref="StoreTroubleException"/>. Disposing of it rolls back
/// what was not kept.
/// </summary>
public abstract class Session : IAsyncDisposable
{
    /// <summary>Returns the number of rows that it changed.</summary>
    public abstract ValueTask<int> Execute(string sql, object? parameters = null);

    /// <summary>Makes an empty temporary table, in place of one of the same name.</summary>
    /// <param name="table">The table.</param>
    /// <param name="columns">Its columns: whole numbers, or bytes. The first is the key.</param>
    public abstract ValueTask MakeTemporary(string table, IReadOnlyList<TemporaryColumn> columns);

    /// <summary>Adds many rows to a temporary table, in the fastest way that the engine has.</summary>
    /// <param name="table">The table.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="rows">For each column a whole number, a text, bytes or null.</param>
    public abstract ValueTask Fill(string table, IReadOnlyList<string> columns, IEnumerable<object?[]> rows);

    /// <summary>Adds rows to a table of the store. A <see cref="StoreTroubleException"/> says which row the engine refused, if it knows.</summary>
    /// <param name="table">The table.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="rows">For each column a whole number, a text, bytes or null.</param>
    public virtual ValueTask Insert(string table, IReadOnlyList<string> columns, IReadOnlyList<object?[]> rows) => Fill(table, columns, rows);

    public abstract ValueTask<T?> ExecuteScalar<T>(string sql, object? parameters = null);

    public abstract ValueTask<List<T>> Query<T>(string sql, object? parameters = null);

    /// <summary>The same for answers of many rows, in the fastest way that the engine has.</summary>
    /// <param name="sql">The question.</param>
    /// <param name="parameters">Its parameters by name: whole numbers or null.</param>
    /// <param name="take">Takes what it needs of each row, whose columns are in the question's order. There is one row at a time.</param>
    public abstract ValueTask Read(string sql, IReadOnlyList<(string Name, long? Value)> parameters, Action<Row> take);

    /// <summary>Where the store stands. A transaction that writes is asked before it has written.</summary>
    internal virtual ValueTask<Standing> Standing() => StandingByRows();

    /// <summary>The same, looked for in the rows of revisions and actions.</summary>
    internal async ValueTask<Standing> StandingByRows() => (await Query<Standing>(
        """
        SELECT name AS Life, coalesce((SELECT max(position) FROM revision), 0) AS Position,
            coalesce((SELECT saved_at FROM revision ORDER BY position DESC LIMIT 1), 0) AS SavedAt, numbers_above AS NumbersAbove,
            coalesce((SELECT max(position) FROM event), 0) AS Events
        FROM life
        """)).Single();

    /// <summary>
    /// Joins each head h with r, the revision that was the newest of its document at @asOf: looked up for each, however long the histories are.
    /// </summary>
    internal virtual string NewestAt =>
        """
        JOIN revision r ON r.position = (SELECT p.position FROM revision p WHERE p.kind = h.kind AND p.key = h.key AND p.saved_at <= @asOf
            ORDER BY p.saved_at DESC, p.number DESC LIMIT 1)
        """;

    /// <summary>
    /// Asks for the position of the newest revision at @asOf. Times rise with positions, so it is found by halves: by some thirty looks, however many
    /// revisions there are.
    /// </summary>
    internal virtual string PositionAt =>
        """
        WITH RECURSIVE half (reached, width) AS (SELECT CAST(0 AS bigint), CAST(4294967296 AS bigint) UNION ALL
            SELECT CASE WHEN (SELECT saved_at FROM revision WHERE position >= reached + width ORDER BY position LIMIT 1) <= @asOf
                THEN reached + width ELSE reached END, width / 2 FROM half WHERE width > 0)
        SELECT reached FROM half WHERE width = 0
        """;

    /// <summary>Where the store stands for whoever keeps something of it in memory, if the engine says so unasked.</summary>
    internal virtual StorePoint? Point => null;

    /// <summary>About how many bytes the revisions up to a position take, where many studios share a disk.</summary>
    internal virtual ValueTask<long> BytesOfDocuments(long upTo) => throw new NotSupportedException();

    /// <summary>The same of the log.</summary>
    internal virtual ValueTask<long> BytesOfLog() => throw new NotSupportedException();

    /// <summary>Writes revisions that have their numbers, in order of position.</summary>
    internal virtual async ValueTask Append(IReadOnlyList<Held> held)
    {
        foreach (var (revision, references, before) in held)
        {
            var (kind, key, position) = (revision.Kind, revision.Key, revision.Position);
            await Execute("INSERT INTO revision (position, kind, key, number, saved_at, saved_by, body) "
                + "VALUES (@Position, @Kind, @Key, @Number, @SavedAt, @SavedBy, @Body)", revision);
            await Execute(Writing.MoveHead, new { kind, key, position, deleted = revision.IsDeletion ? 1 : 0 });
            if (!references.ToHashSet().SetEquals(before))
                await Refer(kind, key, references);
        }
    }

    /// <summary>What a document refers to, as recorded.</summary>
    internal ValueTask<List<DocumentName>> ReferencesOf(string kind, string key) =>
        Query<DocumentName>("SELECT to_kind AS kind, to_key AS key FROM reference WHERE from_kind = @kind AND from_key = @key", new { kind, key });

    /// <summary>Records what a document refers to, in place of what was recorded.</summary>
    internal async ValueTask Refer(string kind, string key, IReadOnlyList<DocumentName> references)
    {
        await Execute("DELETE FROM reference WHERE from_kind = @kind AND from_key = @key", new { kind, key });
        foreach (var to in references)
            await Execute("INSERT INTO reference (from_kind, from_key, to_kind, to_key) VALUES (@kind, @key, @toKind, @toKey)",
                new { kind, key, toKind = to.Kind, toKey = to.Key });
    }

    /// <summary>Commits; complete when everything written is safe on the disk.</summary>
    public abstract ValueTask Keep();

    /// <summary>
    /// Writes the last revisions and commits. A <see cref="StoreTroubleException"/> says whether they may have been kept all the same.
    /// </summary>
    internal virtual async ValueTask Keep(IReadOnlyList<Held> last)
    {
        if (last.Count > 0)
            await Append(last);
        try
        {
            await Keep();
        }
        catch (StoreTroubleException e)
        {
            throw new StoreTroubleException(e.Trouble, e.InnerException ?? e) { MayBeKept = true };
        }
    }

    /// <summary>Sets a savepoint.</summary>
    public abstract ValueTask Mark(string moment);

    /// <summary>Rolls back to that savepoint.</summary>
    public abstract ValueTask GoBackTo(string moment);

    /// <summary>Whether the engine has ended the transaction by itself: a full disk rolls all of it back.</summary>
    public abstract bool HasEnded { get; }

    public abstract ValueTask DisposeAsync();
}
