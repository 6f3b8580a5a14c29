namespace PriceFloor.Storage;

/// <summary>
/// Append-only revisions of documents, and keys, kept by an <see cref="Engine"/>: the only way to the stored data. It owns its engine.
/// </summary>
public sealed class Store : IDisposable
{
    private readonly Engine _engine;
    private readonly TimeProvider _clock;
    private readonly SharedCommits _writes;
    private readonly SemaphoreSlim _appending = new(1, 1);
    private readonly Polling? _polling;
    private Mark? _mark;
    private bool _isClosed;
    private long _logChanges;
    private StorePoint _point = new("", 0, 0);

    public Store(Engine engine, TimeProvider clock)
    {
        (_engine, _clock) = (engine, clock);
        _writes = new SharedCommits(engine, clock, Advance);
        _polling = engine is { IsShared: true, AsksEvery: { } every } ? new Polling(every, AskAsync) : null;
    }

    /// <summary>The name of the store's life when it was opened: positions of another life mean nothing in it.</summary>
    public string LifeName { get; private set; } = "";

    /// <summary>Why this is not the store that was served here last, so another life began when it was opened; null if it is.</summary>
    public string? WhyAnotherLife { get; private set; }

    /// <summary>How much it may hold; null: as much as there is room for.</summary>
    public StoreLimits? Limits { get; set; }

    /// <summary>The position of the newest revision that is committed.</summary>
    public long Position => Point.Position;

    /// <summary>Where the store stands, as far as this process has heard.</summary>
    public StorePoint Point => Volatile.Read(ref _point);

    /// <summary>
    /// Where the log stands, asked of nobody; null where other processes may write to it, so only a <see cref="Snapshot"/> knows. What is read after
    /// this was asked holds at least every line up to it.
    /// </summary>
    public LogPoint? LogPoint => _engine.IsShared ? null : new LogPoint("", Interlocked.Read(ref _logChanges));

    /// <summary>Whether other processes may serve the same store.</summary>
    public bool IsShared => _engine.IsShared;

    /// <summary>How many processes serve the store, this one included.</summary>
    public int Processes => _engine.Processes;

    /// <summary>How many writes the engine has refused since the store was opened.</summary>
    public long RefusedWrites => _writes.Refused;

    /// <summary>Whether the engine refused the last write for another reason than a lock: no space, no permission, a broken disk.</summary>
    public bool IsRefusingWrites => _writes.IsRefusing;

    /// <summary>
    /// True if every question is answered before its call returns; false if each waits, so many documents are better read together.
    /// </summary>
    public bool AnswersAtOnce => _engine.AnswersAtOnce;

    /// <summary>Its size on the disk.</summary>
    public long Bytes => _engine.Bytes;

    /// <summary>True if it has an earlier schema, so opening it takes a while. A file of another program is refused.</summary>
    public bool IsBehind() => _engine.IsBehind();

    /// <summary>Makes the store if there is none and upgrades it to the newest schema; reports an upgrade.</summary>
    public Upgrade? Open() => Opened(_engine.Open(_clock.GetUtcNow()));

    /// <summary>The same for a studio that a request waits for.</summary>
    public async Task<Upgrade?> OpenAsync() => Opened(await _engine.OpenAsync(_clock.GetUtcNow()));

    private Upgrade? Opened(Engine.Opened opened)
    {
        (LifeName, WhyAnotherLife) = (opened.Life, opened.WhyAnotherLife);
        _point = opened.Point ?? new StorePoint("", opened.Position, 0);
        return opened.Upgrade;
    }

    /// <summary>
    /// The mark of the history up to a position: twelve letters that another store, or the same one after other writes, does not have there.
    /// </summary>
    public ValueTask<string> MarkAt(long position) =>
        Volatile.Read(ref _mark) is { } known && known.Position == position && known.History == Point.History ? new(known.Text) : ReadMark(position);

    /// <summary>
    /// Ends when <see cref="Point"/> holds everything that any process acknowledged before the call, or before the pause that the setting allows.
    /// Costs nothing where no other process can write.
    /// </summary>
    public ValueTask Fresh() => !_engine.IsShared || _polling?.IsRecent == true ? default : new(AskAsync());

    /// <summary>Reads from one moment: what others write meanwhile is not seen.</summary>
    public async ValueTask<T> ReadAsync<T>(Func<Snapshot, ValueTask<T>> read)
    {
        await using var session = await _engine.BeginReading();
        return await read(new Snapshot(session));
    }

    /// <summary>The same for the start and the verbs, which have nothing else to do: blocks the thread until the engine has answered.</summary>
    public T Read<T>(Func<Snapshot, ValueTask<T>> read) => ReadAsync(read).AtOnce();

    /// <summary>
    /// Reads and writes as one: kept when <paramref name="write"/> returns, rolled back when it throws or calls <see cref="Writing.Undo"/>. Returns
    /// when it is committed, often together with what others wrote meanwhile.
    /// </summary>
    public Task<T> WriteAsync<T>(string savedBy, Func<Writing, ValueTask<T>> write) => _writes.WriteAsync(savedBy, Within(Limits, write));

    /// <summary>The same for the start and the verbs: blocks the thread until it is committed.</summary>
    public T Write<T>(string savedBy, Func<Writing, ValueTask<T>> write) => _writes.Write(savedBy, write);

    /// <summary>Adds lines to the log, corrects and withdraws some.</summary>
    /// <param name="savedBy">Name of the key that sent them.</param>
    /// <param name="append">The lines.</param>
    /// <param name="allow">Asked within each transaction; throws if nothing may be written.</param>
    public Task<LogAppended> AppendAsync<T>(string savedBy, LogAppend<T> append, Func<Writing, ValueTask> allow) where T : LogLine =>
        new LogAppending(this, _engine, _writes, _appending, savedBy).Append(append, Limits is not { } limits ? allow : async writing =>
        {
            await limits.CheckBytes(() => BytesFor(writing));
            await allow(writing);
        });

    /// <summary>Called after each transaction that may have changed the log, before anybody hears that it did.</summary>
    internal void LogChanged() => Interlocked.Increment(ref _logChanges);

    /// <summary>Throws a <see cref="QuotaException"/> if what was put in at once is more than the store may hold.</summary>
    public ValueTask CheckLimits(Writing writing) => Limits?.CheckAll(writing, () => BytesFor(writing)) ?? default;

    /// <summary>Writes a row that means nothing; false if other writes leave no moment for it. A store that cannot be written throws.</summary>
    public ValueTask<bool> Probe(TimeSpan within) => _writes.Alone(within, () => _engine.Probe(within, _clock.GetUtcNow()));

    /// <summary>Closes the engine, so its files can be copied as they are.</summary>
    public void Dispose()
    {
        if (Interlocked.Exchange(ref _isClosed, true))
            return; // its studio and a container may both close it
        _polling?.Dispose();
        _engine.Dispose();
        _writes.Dispose();
        _appending.Dispose();
    }

    private Func<Writing, ValueTask<T>> Within<T>(StoreLimits? limits, Func<Writing, ValueTask<T>> write) => limits is null ? write : async writing =>
    {
        var result = await write(writing);
        if (!writing.IsUndone)
            await limits.Check(writing, () => BytesFor(writing));
        return result;
    };

    /// <summary>What limits count: a file is the store of one studio, a database has many.</summary>
    private ValueTask<long> BytesFor(Snapshot snapshot) => _engine.IsShared ? snapshot.Bytes() : new(_engine.Bytes);

    private async ValueTask<string> ReadMark(long position)
    {
        var (history, text) = await ReadAsync(async snapshot => ((await snapshot.Point()).History, await snapshot.MarkAt(position)));
        Volatile.Write(ref _mark, new Mark(history, position, text));
        return text;
    }

    /// <summary>Called after each commit, by one thread at a time.</summary>
    private void Advance(StorePoint point, long number)
    {
        Note(point);
        _engine.Committed(point.Position, number);
    }

    private async Task AskAsync() => Note(await _engine.Ask());

    /// <summary>Within a history a store only goes forward, so what was asked before another commit takes nothing back.</summary>
    private void Note(StorePoint heard)
    {
        while (true)
        {
            var known = Point;
            var next = known.History != heard.History ? heard
                : known with { Position = long.Max(known.Position, heard.Position), Events = long.Max(known.Events, heard.Events) };
            if (next == known || Interlocked.CompareExchange(ref _point, next, known) == known)
                return;
        }
    }

    private sealed record Mark(string History, long Position, string Text);
}
