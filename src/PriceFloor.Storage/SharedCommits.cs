using System.Collections.Concurrent;
using System.Runtime.ExceptionServices;

namespace PriceFloor.Storage;

/// <summary>
/// One writer at a time; writes that arrive meanwhile are done together in the next transaction and share its wait for the disk. Each is still
/// independent: one that throws or is undone is rolled back to its start. None returns before it is committed.
/// </summary>
internal sealed class SharedCommits(Engine engine, TimeProvider clock, Action<StorePoint, long> committed) : IDisposable
{
    private const int Most = 256;
    private const string Beginning = "beginning";

    private static readonly StorePoint s_alone = new("", 0, 0);
    private static readonly TimeSpan s_untilAskedAgain = TimeSpan.FromSeconds(1);

    private readonly WriterGate _gate = new();
    private readonly CancellationTokenSource _ending = new();
    private readonly ConcurrentQueue<WaitingWrite> _waiting = new();
    private long _refused;
    private Heads? _heads;

    /// <summary>How many writes the engine has refused: a full disk, a read-only file, a lock.</summary>
    public long Refused => Interlocked.Read(ref _refused);

    /// <summary>Whether somebody waits for the writer to end.</summary>
    public bool IsWanted => !_waiting.IsEmpty || _gate.IsWanted;

    /// <summary>Whether the last write was refused.</summary>
    public bool IsRefusing { get; private set; }

    public T Write<T>(string savedBy, Func<Writing, ValueTask<T>> write)
    {
        var work = Added(savedBy, write);
        _gate.Wait();
        return DoneAsync(work).GetAwaiter().GetResult();
    }

    public async Task<T> WriteAsync<T>(string savedBy, Func<Writing, ValueTask<T>> write)
    {
        var work = Added(savedBy, write);
        await _gate.WaitAsync();
        return await DoneAsync(work);
    }

    /// <summary>Writes in a transaction that it shares with nobody: one that has been prepared on its own connection.</summary>
    public async Task<T> WriteAloneAsync<T>(string savedBy, Func<ValueTask<Session>> begin, Func<Writing, ValueTask<T>> write)
    {
        await _gate.EnterAlone(Timeout.InfiniteTimeSpan);
        try
        {
            await using var session = await begin();
            var writing = await Writing.Begin(session, savedBy, clock.GetUtcNow());
            var result = await write(writing);
            if (!writing.IsUndone)
                await CommitAsync(session);
            return result;
        }
        catch (Exception fault)
        {
            Note(fault);
            throw;
        }
        finally
        {
            _gate.Release();
        }
    }

    /// <summary>Runs an action while nobody writes; false if that moment does not come in time.</summary>
    public async ValueTask<bool> Alone(TimeSpan within, Func<ValueTask> act)
    {
        if (!await _gate.EnterAlone(within))
            return false;
        try
        {
            await act();
            return true;
        }
        finally
        {
            _gate.Release();
        }
    }

    public void Dispose()
    {
        _ending.Cancel();
        _ending.Dispose();
        _gate.Dispose();
    }

    private WaitingWrite<T> Added<T>(string savedBy, Func<Writing, ValueTask<T>> write)
    {
        var work = new WaitingWrite<T>(savedBy, write);
        _waiting.Enqueue(work);
        return work;
    }

    /// <summary>Called by the holder of the gate: does waiting work until its own is done, which an earlier holder may have done already.</summary>
    private async Task<T> DoneAsync<T>(WaitingWrite<T> work)
    {
        try
        {
            while (!work.IsDone)
                await DoTogetherAsync(Next());
        }
        finally
        {
            _gate.Release();
        }

        if (work.Fault is { } fault)
            ExceptionDispatchInfo.Throw(fault);
        return work.Result!;
    }

    private List<WaitingWrite> Next()
    {
        var together = new List<WaitingWrite>();
        while (together.Count < Most && _waiting.TryDequeue(out var one))
            together.Add(one);
        return together;
    }

    private async Task DoTogetherAsync(List<WaitingWrite> together)
    {
        try
        {
            await using var session = await BeginAsync();
            long? savedAt = null;
            foreach (var work in together)
                savedAt = await DoAsync(work, session, savedAt, isLone: together.Count == 1);
            if (together.Exists(work => work.IsKept))
                await CommitAsync(session); // else disposing of it rolls everything back
            if (session is HeldBack { Written: var written })
                _heads!.Take(written);
            if (together.Max(work => work.LastPosition) is > 0 and var last)
                committed((session.Point ?? s_alone) with { Position = last }, together.Max(work => work.HighestNumber));
        }
        catch (Exception fault)
        {
            _heads = null; // nobody knows whether it was kept
            Note(fault);
            foreach (var work in together)
                work.Fault ??= fault; // none of their writes were kept
        }

        foreach (var work in together)
            work.IsDone = true;
    }

    /// <summary>What is written to an engine behind a network is held back, and sent together.</summary>
    private async ValueTask<Session> BeginAsync()
    {
        var session = await engine.BeginWriting();
        if (engine.AnswersAtOnce)
            return session;
        try
        {
            var standing = await session.Standing();
            _heads = await Heads.At(session, standing, _heads);
            return new HeldBack(session, _heads, standing);
        }
        catch
        {
            await session.DisposeAsync();
            throw;
        }
    }

    private async ValueTask CommitAsync(Session session)
    {
        try
        {
            await session.Keep();
        }
        catch (StoreTroubleException) when (!engine.AnswersAtOnce)
        {
            _ = FindOutAsync(); // it may have been kept, and only the answer was lost
            throw;
        }

        IsRefusing = false;
    }

    /// <summary>Asks how far the store has come, once it can be asked, so what is in memory is brought up to it.</summary>
    private async Task FindOutAsync()
    {
        while (!_ending.IsCancellationRequested)
            try
            {
                await Alone(Timeout.InfiniteTimeSpan, async () =>
                {
                    await using var session = await engine.BeginReading();
                    committed(await new Snapshot(session).Point(), 0);
                });
                return;
            }
            catch (StoreTroubleException)
            {
                await Task.Delay(s_untilAskedAgain, _ending.Token).ContinueWith(_ => { }, TaskScheduler.Default);
            }
            catch (ObjectDisposedException)
            {
                return; // the store is closed
            }
    }

    private void Note(Exception fault)
    {
        if (fault is not StoreTroubleException refused)
            return;
        Interlocked.Increment(ref _refused);
        IsRefusing = refused.Trouble != StoreTrouble.Busy; // a lock ends as soon as it is released
    }

    /// <summary>Takes and returns the time that no revision is later than, if it is known.</summary>
    private async ValueTask<long?> DoAsync(WaitingWrite work, Session session, long? savedAt, bool isLone)
    {
        var held = session as HeldBack;
        if (held is not null)
            held.BeginWork(isLone);
        else if (!isLone)
            await session.Mark(Beginning);
        var writing = await Writing.Begin(session, work.SavedBy, clock.GetUtcNow(), savedAt);
        try
        {
            await work.Run(writing);
        }
        catch (Exception fault)
        {
            Note(fault);
            work.Fault = fault;
        }

        if (work.Fault is null && !writing.IsUndone)
            (work.IsKept, work.LastPosition, work.HighestNumber) = (true, writing.LastPosition, writing.HighestNumber);
        else if (session.HasEnded)
            throw work.Fault ?? new InvalidOperationException("The transaction ended by itself."); // a full disk rolls all of it back
        else if (held is not null)
            await held.TakeBack();
        else if (!isLone)
            await session.GoBackTo(Beginning);
        return writing.LastSavedAt;
    }
}
