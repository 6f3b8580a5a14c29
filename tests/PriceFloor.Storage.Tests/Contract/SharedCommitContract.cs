using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>Writers that wait for one another share a commit, without any visible effect.</summary>
public abstract class SharedCommitContract<TEngine> : StoreContract<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public async Task Those_that_came_while_another_wrote_are_committed_together_and_no_reader_sees_them_before()
    {
        var (seenBySecond, seenOutside) = ("", "");
        await WhileOneWrites(
            () => SaveAsync("a", "1"),
            () => Store.WriteAsync("test", async writing =>
            {
                seenBySecond = (await writing.Find("design", "a"))?.Body;
                seenOutside = Store.Read(snapshot => snapshot.Find("design", "a"))?.Body;
                return await writing.Save("design", "b", "2", []);
            }));
        Assert.Equal("1", seenBySecond);
        Assert.Null(seenOutside);
        Assert.Equal(["1", "2"], Store.Read(snapshot => snapshot.List("design")).Select(one => one.Body));
    }

    [Fact]
    public async Task One_that_fails_takes_back_only_its_own()
    {
        var failing = Task.FromResult(false);
        await WhileOneWrites(
            () => SaveAsync("a", "1"),
            () => failing = Store.WriteAsync<bool>("test", async writing =>
            {
                await writing.Save("design", "a", "spoilt", [new DocumentName("profile", "main")]);
                await writing.Delete("design", "a");
                throw new InvalidOperationException("mine");
            }),
            () => SaveAsync("b", "2"));
        Assert.Equal("mine", (await Assert.ThrowsAsync<InvalidOperationException>(() => failing)).Message);
        Assert.Equal(["1", "2"], Store.Read(snapshot => snapshot.List("design")).Select(one => one.Body));
        Assert.Empty(Store.Read(snapshot => snapshot.UsersOf("profile", "main")));
    }

    [Fact]
    public async Task One_that_fails_after_all_kinds_of_questions_takes_back_only_its_own()
    {
        var failing = Task.FromResult(false);
        await WhileOneWrites(
            () => SaveAsync("a", "1"),
            () => failing = Store.WriteAsync<bool>("test", async writing =>
            {
                await writing.Save("design", "a", "2", [new DocumentName("profile", "main")]);
                await writing.Save("design", "b", "spoilt", []);
                Assert.Equal(["1", "2"], (await writing.History("design", "a")).Select(one => one.Body));
                Assert.Equal(["2", "spoilt"], (await writing.List("design")).Select(one => one.Body));
                Assert.Equal(["a", "b"], (await writing.KeysEver("design", "")).Order());
                Assert.Equal([new DocumentName("design", "a")], await writing.UsersOf("profile", "main"));
                Assert.Equal(3, await writing.Position);
                await writing.Delete("design", "b");
                Assert.Equal("2", Assert.Single(await writing.NewestSince(1), one => !one.IsDeletion).Body);
                throw new InvalidOperationException("mine");
            }),
            () => SaveAsync("b", "3"));
        Assert.Equal("mine", (await Assert.ThrowsAsync<InvalidOperationException>(() => failing)).Message);
        Assert.Equal(["1", "3"], Store.Read(snapshot => snapshot.List("design")).Select(one => one.Body));
        Assert.Equal(2, Store.Read(snapshot => snapshot.Position));
        Assert.Empty(Store.Read(snapshot => snapshot.UsersOf("profile", "main")));
    }

    [Fact]
    public async Task One_that_is_undone_returns_its_result_and_leaves_nothing()
    {
        var undone = Task.FromResult(0L);
        await WhileOneWrites(
            () => SaveAsync("a", "1"),
            () => undone = Store.WriteAsync("test", async writing =>
            {
                writing.Undo();
                return (await writing.Save("design", "a", "spoilt", [])).Number;
            }),
            () => SaveAsync("a", "2"));
        Assert.Equal(2, await undone);
        Assert.Equal(["1", "2"], Store.Read(snapshot => snapshot.History("design", "a")).Select(one => one.Body));
    }

    [Fact]
    public async Task One_that_is_undone_alone_returns_its_result_and_leaves_nothing()
    {
        Assert.Equal(1, await Store.WriteAsync("test", async writing =>
        {
            writing.Undo();
            return (await writing.Save("design", "a", "spoilt", [])).Number;
        }));
        Assert.Empty(Store.Read(snapshot => snapshot.History("design", "a")));
        Assert.Equal(1, (await SaveAsync("a", "1")).Number);
    }

    [Fact]
    public async Task However_many_write_each_revision_is_whole_numbered_in_order_and_later_than_the_one_before()
    {
        var written = await Task.WhenAll(Enumerable.Range(0, 400).Select(i => Task.Run(async () =>
        {
            try
            {
                return await Store.WriteAsync("test", async writing =>
                {
                    var saved = await writing.Save("design", $"D-{i % 7}", $"{i}", []);
                    if (i % 5 == 0)
                        throw new InvalidOperationException();
                    return saved;
                });
            }
            catch (InvalidOperationException) when (i % 5 == 0)
            {
                return null;
            }
        })));
        var acknowledged = written.OfType<Revision>().OrderBy(one => one.Position).ToList();
        Assert.Equal(320, acknowledged.Count);
        Assert.Equal(acknowledged, Enumerable.Range(0, 7)
            .SelectMany(i => Store.Read(snapshot => snapshot.History("design", $"D-{i}"))).OrderBy(one => one.Position));
        Assert.All(acknowledged.Zip(acknowledged.Skip(1)), pair => Assert.True(pair.First.SavedAt < pair.Second.SavedAt));
        Assert.All(acknowledged.GroupBy(one => one.Key), revisions =>
            Assert.Equal(Enumerable.Range(1, revisions.Count()).Select(number => (long)number), revisions.Select(one => one.Number)));
        Assert.Equal(acknowledged[^1].Position, Store.Position);
    }

    [Fact]
    public async Task A_probe_writes_where_nobody_else_does_and_gives_way_where_somebody_does()
    {
        Assert.True(await Store.Probe(TimeSpan.FromSeconds(5)));
        Assert.Equal(0, Store.Position);
        var found = true;
        await WhileOneWrites(() =>
        {
            found = Store.Probe(TimeSpan.FromMilliseconds(1)).AtOnce(); // over before the write goes on
            return Task.CompletedTask;
        });
        Assert.False(found);
    }

    private Task<Revision> SaveAsync(string key, string body) => Store.WriteAsync("test", writing => writing.Save("design", key, body, []));

    /// <summary>Makes one write hold the store until all the others wait for it, in this order.</summary>
    private async Task WhileOneWrites(params Func<Task>[] others)
    {
        using var holds = new ManualResetEventSlim();
        using var goOn = new ManualResetEventSlim();
        var first = Task.Run(() => Store.Write("test", _ =>
        {
            holds.Set();
            return new ValueTask<bool>(goOn.Wait(TimeSpan.FromSeconds(30)));
        }));
        holds.Wait(TestContext.Current.CancellationToken);
        var waiting = others.Select(one => one()).ToList();
        goOn.Set();
        Assert.True(await first);
        foreach (var one in waiting)
            await Task.WhenAny(one); // its caller checks what it throws
    }
}
