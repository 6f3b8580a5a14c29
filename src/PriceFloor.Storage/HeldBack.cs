namespace PriceFloor.Storage;

/// <summary>
/// A transaction over a network, for the writes that share it. It holds back the revisions that they append, and answers from memory what they ask
/// of the present documents; all are sent together before any other question and before the commit. A write that is taken back, and of which
/// nothing was sent, costs nothing.
/// </summary>
/// <param name="inner">The engine's transaction.</param>
/// <param name="heads">What stood before it.</param>
/// <param name="standing">Where the store stood.</param>
internal sealed class HeldBack(Session inner, Heads heads, Standing standing) : Session
{
    private const string Beginning = "beginning";

    private readonly List<Held> _held = [];
    private readonly Dictionary<DocumentName, Held> _newest = [];
    private (int Sent, int Before) _count;
    private (bool IsLone, bool IsMarked) _work;
    private bool _isSpoilt, _changesKeys;

    /// <summary>The revisions that were appended and not taken back.</summary>
    public IReadOnlyList<Held> Written => _held;

    public long Position => _held.Count > 0 ? _held[^1].Revision.Position : standing.Position;

    /// <summary>The documents that are not deleted.</summary>
    public long Documents => heads.Documents + _newest.Values.Sum(held =>
        (held.Revision.IsDeletion ? 0 : 1) - (heads.Newest(held.Document) is { IsDeletion: false } ? 1 : 0));

    /// <summary>About how many bytes everything takes.</summary>
    public async ValueTask<long> Bytes() => await heads.Bytes(inner) + _held.Sum(one => one.Bytes);

    /// <summary>When the newest revision was written.</summary>
    public long SavedAt => _held.Count > 0 ? _held[^1].Revision.SavedAt : standing.SavedAt;

    internal override string NewestAt => inner.NewestAt;

    internal override string PositionAt => inner.PositionAt;

    internal override StorePoint? Point => inner.Point is { } begun ? begun with { Position = Position } : null;

    public override bool HasEnded => _isSpoilt || inner.HasEnded;

    /// <summary>Begins the next write of the transaction.</summary>
    /// <param name="isLone">It shares the transaction with no other, so nothing of others needs to be kept if it is taken back.</param>
    public void BeginWork(bool isLone) => (_work, _count.Before) = ((isLone, false), _held.Count);

    /// <summary>Takes the present write back.</summary>
    public async ValueTask TakeBack()
    {
        if (_work.IsMarked)
            await inner.GoBackTo(Beginning);
        _held.RemoveRange(_count.Before, _held.Count - _count.Before);
        _count.Sent = int.Min(_count.Sent, _count.Before);
        _newest.Clear();
        foreach (var one in _held)
            _newest[one.Document] = one;
    }

    public Revision Append(Revision given, IReadOnlyList<DocumentName> references)
    {
        var document = new DocumentName(given.Kind, given.Key);
        var revision = given with
        {
            Position = Position + 1,
            Number = long.Max(standing.NumbersAbove, Newest(document)?.Number ?? 0) + 1,
        };
        var before = _newest.TryGetValue(document, out var held) ? held.References : heads.References(document);
        _held.Add(_newest[document] = new Held(revision, references, before));
        return revision;
    }

    public Revision? Newest(DocumentName document) => _newest.TryGetValue(document, out var held) ? held.Revision : heads.Newest(document);

    public List<Revision> NewestSince(long position) =>
        [.. Newest(revision => revision.Position > position)];

    /// <summary>The present documents of a kind whose keys begin so and come after one, in order.</summary>
    public List<Revision> List(string kind, string prefix, string after, int limit) =>
    [
        .. Newest(revision => revision is { IsDeletion: false } && revision.Kind == kind && revision.Key.StartsWith(prefix, StringComparison.Ordinal)
            && string.CompareOrdinal(revision.Key, after) > 0).OrderBy(revision => revision.Key, StringComparer.Ordinal).Take(limit),
    ];

    public List<DocumentName> UsersOf(DocumentName to) =>
    [
        .. heads.UsersOf(to).Where(user => !_newest.ContainsKey(user))
            .Concat(_newest.Values.Where(held => held.References.Contains(to)).Select(held => held.Document))
            .OrderBy(user => user.Kind, StringComparer.Ordinal).ThenBy(user => user.Key, StringComparer.Ordinal),
    ];

    /// <summary>The keys, unless some were changed here: then the engine must be asked.</summary>
    public IReadOnlyList<StoredKey>? Keys => _changesKeys ? null : heads.Keys;

    public void ChangeKeys() => _changesKeys = true;

    public override async ValueTask<int> Execute(string sql, object? parameters = null)
    {
        await Send();
        return await inner.Execute(sql, parameters);
    }

    public override async ValueTask MakeTemporary(string table, IReadOnlyList<TemporaryColumn> columns)
    {
        await Send();
        await inner.MakeTemporary(table, columns);
    }

    public override async ValueTask Fill(string table, IReadOnlyList<string> columns, IEnumerable<object?[]> rows)
    {
        await Send();
        await inner.Fill(table, columns, rows);
    }

    public override async ValueTask Insert(string table, IReadOnlyList<string> columns, IReadOnlyList<object?[]> rows)
    {
        await Send();
        await inner.Insert(table, columns, rows);
    }

    public override async ValueTask<T?> ExecuteScalar<T>(string sql, object? parameters = null) where T : default
    {
        await Send();
        return await inner.ExecuteScalar<T>(sql, parameters);
    }

    public override async ValueTask<List<T>> Query<T>(string sql, object? parameters = null)
    {
        await Send();
        return await inner.Query<T>(sql, parameters);
    }

    public override async ValueTask Read(string sql, IReadOnlyList<(string Name, long? Value)> parameters, Action<Row> take)
    {
        await Send();
        await inner.Read(sql, parameters, take);
    }

    public override ValueTask Keep() => inner.Keep(_held[_count.Sent..]);

    /// <summary>The writes that share it are taken back by <see cref="TakeBack"/>.</summary>
    public override ValueTask Mark(string moment) => throw new NotSupportedException();

    public override ValueTask GoBackTo(string moment) => throw new NotSupportedException();

    public override ValueTask DisposeAsync() => inner.DisposeAsync();

    private IEnumerable<Revision> Newest(Func<Revision, bool> wanted) =>
        heads.All.Where(revision => wanted(revision) && !_newest.ContainsKey(new(revision.Kind, revision.Key)))
            .Concat(_newest.Values.Select(held => held.Revision).Where(wanted));

    private async ValueTask Send()
    {
        if (!_work.IsLone && !_work.IsMarked)
        {
            await SendTo(_count.Before);
            await OfAll(inner.Mark(Beginning));
            _work.IsMarked = true;
        }

        await SendTo(_held.Count);
    }

    private async ValueTask SendTo(int count)
    {
        if (count <= _count.Sent)
            return;
        var some = _held[_count.Sent..count];
        if (_work.IsMarked)
            await inner.Append(some);
        else
            await OfAll(inner.Append(some));
        _count.Sent = count;
    }

    /// <summary>What fails before the savepoint fails for all.</summary>
    private async ValueTask OfAll(ValueTask sending)
    {
        _isSpoilt = true;
        await sending;
        _isSpoilt = false;
    }
}
