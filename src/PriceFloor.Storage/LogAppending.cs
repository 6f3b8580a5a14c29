namespace PriceFloor.Storage;

/// <summary>
/// Adds lines to the log: at most 10,000 in one transaction unless they are all of some days. They are prepared beside the other writers, who wait
/// only while one transaction takes them over.
/// </summary>
/// <param name="store">The store.</param>
/// <param name="engine">Its engine.</param>
/// <param name="writes">Its writers.</param>
/// <param name="by">Name of the key that sent them.</param>
internal sealed class LogAppending(Store store, Engine engine, SharedCommits writes, string by)
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
        await using (var preparing = await staging.BeginPreparing())
        {
            await stage.Prepare(preparing);
            await preparing.Keep();
        }

        return await writes.WriteAloneAsync(by, staging.BeginWriting, async writing =>
        {
            await allow(writing);
            return await writing.TakeOver(stage);
        });
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
