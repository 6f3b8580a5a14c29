namespace PriceFloor.Storage;

/// <summary>
/// Adds lines to the log, few in one transaction while others wait to write, so that they never wait long, and many if nobody does. Lines are
/// prepared beside other writers, and compared while nobody else appends.
/// </summary>
/// <param name="store">The store.</param>
/// <param name="engine">Its engine.</param>
/// <param name="writes">Its writers.</param>
/// <param name="turns">One appends at a time.</param>
/// <param name="by">Name of the key that sent them.</param>
internal sealed class LogAppending(Store store, Engine engine, SharedCommits writes, SemaphoreSlim turns, string by)
{
    /// <param name="append">The lines.</param>
    /// <param name="allow">Asked within each transaction; throws if nothing may be written.</param>
    public async Task<LogAppended> Append<T>(LogAppend<T> append, Func<Writing, ValueTask> allow) where T : LogLine
    {
        var done = new LogAppended([], [], 0);
        await using var staging = await engine.BeginStaging();
        foreach (var part in Parts(append))
            done = done.And(await Together(staging, part, allow));
        return done;
    }

    private static IEnumerable<LogAppend<T>> Parts<T>(LogAppend<T> append) where T : LogLine
    {
        const int Most = LogAppend<T>.MostTogether;
        if (append.Whole is not null || append.Lines.Count + append.Withdrawn.Count <= Most)
            return [append];
        return append.Lines.Chunk(Most).Select(lines => append with { Lines = lines, Withdrawn = [] })
            .Concat(append.Withdrawn.Chunk(Most).Select(withdrawn => append with { Lines = [], Withdrawn = withdrawn }));
    }

    private async Task<LogAppended> Together<T>(Staging staging, LogAppend<T> append, Func<Writing, ValueTask> allow) where T : LogLine
    {
        var stage = new LogStage<T>(append, await Names(LogNames.In(append), allow));
        await Prepare(staging, async session =>
        {
            await stage.Fill(session);
            return true;
        });
        await turns.WaitAsync();
        try
        {
            await ClearUnfinished(staging);
            var difference = await Prepare(staging, stage.Compare);
            if (append.Whole is null || !difference.HasRefused)
                await TakeOver(staging, new Queue<LogStep>(new LogTakeover<T>(stage, difference).Steps()), difference.IsLarge, allow);
            return difference.Done;
        }
        finally
        {
            turns.Release();
        }
    }

    private async Task TakeOver(Staging staging, Queue<LogStep> steps, bool isLarge, Func<Writing, ValueTask> allow)
    {
        while (steps.Count > 0)
            await Write(staging, isLarge, async writing =>
            {
                await allow(writing);
                do
                    await writing.WriteLog(steps.Dequeue());
                while (steps.Count > 0 && !writes.IsWanted);
                return true;
            });
    }

    /// <summary>What an earlier appending left that was stopped, by a full disk or by the end of the process.</summary>
    private async Task ClearUnfinished(Staging staging)
    {
        foreach (var list in await Prepare(staging, EndOfLog.Unfinished))
            while (await Write(staging, isLarge: true, writing => writing.ClearLog(list)))
            {
            }
    }

    private static async Task<TResult> Prepare<TResult>(Staging staging, Func<Session, ValueTask<TResult>> prepare)
    {
        await using var preparing = await staging.BeginPreparing();
        var result = await prepare(preparing);
        await preparing.Keep();
        return result;
    }

    private async Task<TResult> Write<TResult>(Staging staging, bool isLarge, Func<Writing, ValueTask<TResult>> write)
    {
        TResult result;
        try
        {
            result = await writes.WriteAloneAsync(by, () => staging.BeginWriting(isLarge), write);
        }
        finally
        {
            store.LogChanged();
        }

        if (isLarge)
            await staging.Settle();
        return result;
    }

    private async Task<LogNames> Names(HashSet<(string Kind, string Key)> wanted, Func<Writing, ValueTask> allow)
    {
        var names = new LogNames();
        await store.ReadAsync(snapshot => snapshot.FindNames(names, wanted));
        var missing = wanted.Where(name => !names.Has(name.Kind, name.Key)).ToList();
        if (missing.Count > 0)
            await store.WriteAsync(by, async writing =>
            {
                await allow(writing);
                return await writing.AddNames(names, missing);
            });
        return names;
    }
}
