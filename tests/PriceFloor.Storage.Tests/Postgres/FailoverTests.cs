using System.Collections.Concurrent;
using Xunit;

namespace PriceFloor.Storage.Tests.Postgres;

/// <summary>The database dies and comes back, or a standby takes over, while two processes have the store open.</summary>
public sealed class FailoverTests : IDisposable
{
    private readonly FailoverCluster _cluster = new();

    public void Dispose() => _cluster.Dispose();

    [Fact]
    public async Task A_standby_that_is_behind_loses_writes_and_nothing_that_was_given_out_for_them_is_taken_for_another()
    {
        using var one = _cluster.Opened();
        using var other = _cluster.Opened();
        await Save(one, "a", "1");
        await Wait(TimeSpan.FromSeconds(1)); // the standby has it
        var (before, kept) = (await Fresh(other), await other.MarkAt(1));
        _cluster.Do("stop b");
        var lost = await Save(other, "a", "2");
        var mark = await other.MarkAt(lost.Position);
        _cluster.Do("kill a");
        _cluster.Do("start b");
        _cluster.Do("promote b");
        Assert.Equal("1", (await Soon(() => one.ReadAsync(snapshot => snapshot.Find("design", "a")).AsTask()))!.Body);
        Assert.NotEqual(before.History, (await Soon(() => Fresh(other))).History);
        Assert.Equal(1, (await Fresh(other)).Position); // went back
        var next = await Soon(() => Save(one, "a", "3"));
        Assert.Equal(lost.Position, next.Position);
        Assert.True(next.Number > lost.Number + Leap, "its number might have been given before");
        await Fresh(other);
        Assert.NotEqual(mark, await other.MarkAt(lost.Position)); // an old cursor stays unknown
        Assert.NotEqual(kept, await other.MarkAt(1));
        Assert.Equal("3", (await other.WriteAsync("test", writing => writing.Find("design", "a")))!.Body); // not what it remembers
        Assert.Equal(next.Number + 1, (await Save(other, "a", "4")).Number);
    }

    [Fact]
    public async Task A_synchronous_standby_loses_nothing_and_what_was_given_out_stays_valid()
    {
        _cluster.Do("synchronous");
        await Wait(TimeSpan.FromSeconds(1));
        using var one = _cluster.Opened(losesNothing: true);
        using var other = _cluster.Opened(losesNothing: true);
        var acknowledged = await WhileOthersWrite([one, other], () =>
        {
            _cluster.Do("kill a");
            _cluster.Do("promote b");
        });
        foreach (var store in new[] { one, other })
            await IsAllThere(store, acknowledged);
        var last = acknowledged.MaxBy(revision => revision.Position)!;
        Assert.Equal(last.Number + 1, (await Save(one, last.Key, "next")).Number); // the same life
    }

    [Fact]
    public async Task A_killed_database_loses_nothing_that_was_acknowledged_and_is_used_again_when_it_is_back()
    {
        using var one = _cluster.Opened();
        using var other = _cluster.Opened();
        var acknowledged = await WhileOthersWrite([one, other], () =>
        {
            _cluster.Do("kill a");
            _cluster.Do("start a");
        });
        foreach (var store in new[] { one, other })
            await IsAllThere(store, acknowledged);
    }

    private const long Leap = 999;

    private static Task<Revision> Save(Store store, string key, string body) =>
        store.WriteAsync("test", writing => writing.Save("design", key, body, []));

    private static async Task<StorePoint> Fresh(Store store)
    {
        await store.Fresh();
        return store.Point;
    }

    private static Task Wait(TimeSpan time) => Task.Delay(time, TestContext.Current.CancellationToken);

    private static async Task<T> Soon<T>(Func<Task<T>> ask)
    {
        for (var tries = 0; ; tries++)
            try
            {
                return await ask();
            }
            catch (StoreTroubleException e) when (tries < 100 && e.Trouble != StoreTrouble.Unexpected)
            {
                await Wait(TimeSpan.FromMilliseconds(100));
            }
    }

    /// <summary>Writers at both, before, while and after something happens to the database. Each fault is one that passes.</summary>
    private static async Task<List<Revision>> WhileOthersWrite(Store[] stores, Action happen)
    {
        var (acknowledged, afterwards) = (new ConcurrentBag<Revision>(), new int[stores.Length]);
        var (happened, ended) = (false, false);
        var writers = Enumerable.Range(0, 6).Select(n => Task.Run(async () =>
        {
            while (!Volatile.Read(ref ended))
                try
                {
                    var since = Volatile.Read(ref happened);
                    acknowledged.Add(await Save(stores[n % stores.Length], $"W{n}", Guid.NewGuid().ToString()));
                    if (since)
                        Interlocked.Increment(ref afterwards[n % stores.Length]);
                }
                catch (StoreTroubleException e)
                {
                    Assert.NotEqual(StoreTrouble.Unexpected, e.Trouble);
                    await Task.Delay(20);
                }
        })).ToList();
        await Wait(TimeSpan.FromSeconds(1));
        happen();
        Volatile.Write(ref happened, true);
        for (var tries = 0; Array.Exists(afterwards, count => count < 10); tries++)
        {
            Assert.True(tries < 200, "It is not used again.");
            await Wait(TimeSpan.FromMilliseconds(100));
        }

        Volatile.Write(ref ended, true);
        await Task.WhenAll(writers);
        return [.. acknowledged];
    }

    private static async Task IsAllThere(Store store, List<Revision> acknowledged)
    {
        Assert.True(acknowledged.Count > 20);
        var stored = new List<Revision>();
        foreach (var key in acknowledged.Select(revision => revision.Key).Distinct())
            stored.AddRange(await store.ReadAsync(snapshot => snapshot.History("design", key)));
        Assert.Empty(acknowledged.Except(stored));
        Assert.Equal(stored.Count, stored.Select(revision => revision.Position).Distinct().Count());
    }
}
