using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>One store, several programs or several threads; and what is left after a stop.</summary>
public abstract class SharingContract<TEngine> : StoreContract<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public async Task Two_programs_that_write_to_one_store_lose_nothing()
    {
        using var one = Engine.Open();
        using var two = Engine.Open();
        await Task.WhenAll(new[] { one, two, one, two }.Select((store, writer) => Task.Run(() =>
        {
            for (var i = 0; i < 25; i++)
                Save(store, "shared", $"{writer}-{i}");
        }, TestContext.Current.CancellationToken)));
        var history = one.Read(snapshot => snapshot.History("design", "shared"));
        Assert.Equal(Enumerable.Range(1, 100).Select(number => (long)number), history.Select(revision => revision.Number));
        Assert.Equal(100, history.Select(revision => revision.SavedAt).Distinct().Count());
        Assert.Equal(history.OrderBy(revision => revision.Position), history.OrderBy(revision => revision.SavedAt));
    }

    [Fact]
    public async Task Readers_beside_a_writer_always_see_whole_transactions()
    {
        var writing = Task.Run(() =>
        {
            for (var i = 0; i < 60; i++)
                Store.Write("test", async write => (await write.Save("design", "a", $"{i}", []), await write.Save("design", "b", $"{i}", [])));
        }, TestContext.Current.CancellationToken);
        while (!writing.IsCompleted)
            Store.Read(async snapshot =>
            {
                var a = (await snapshot.Find("design", "a"))?.Body;
                Thread.Yield();
                Assert.Equal(a, (await snapshot.Find("design", "b"))?.Body);
                Assert.Equal((await snapshot.Find("design", "a"))?.SavedAt, (await snapshot.Find("design", "b"))?.SavedAt);
                return true;
            });
        await writing;
        Assert.Equal("59", Store.Read(snapshot => snapshot.Find("design", "b"))!.Body);
    }

    [Fact]
    public void Stored_documents_are_there_after_a_restart_and_a_clock_set_back_by_a_year()
    {
        var before = Save("a", "1").SavedAt;
        Close();
        Clock.AdjustTime(Clock.GetUtcNow().AddYears(-1));
        Assert.Equal(("1", "test"), Store.Read(snapshot => snapshot.Find("design", "a")) is { } found ? (found.Body, found.SavedBy) : default);
        Assert.Equal(before + 1, Save("b", "1").SavedAt);
    }

    [Fact]
    public void A_rolled_back_write_leaves_heads_references_and_keys_as_they_were()
    {
        Store.Write("test", writing => writing.Save("design", "a", "1", [new DocumentName("profile", "main")]));
        Assert.Throws<InvalidOperationException>(() => Store.Write<bool>("test", async writing =>
        {
            await writing.Save("design", "a", "2", [new DocumentName("profile", "other")]);
            await writing.Delete("design", "a");
            await writing.AddKey(new StoredKey("k", [1], "read", 1, null));
            throw new InvalidOperationException();
        }));
        Store.Read(async snapshot =>
        {
            Assert.Equal("1", (await snapshot.Find("design", "a"))!.Body);
            Assert.Single(await snapshot.History("design", "a"));
            Assert.Single(await snapshot.UsersOf("profile", "main"));
            Assert.Empty(await snapshot.UsersOf("profile", "other"));
            Assert.Empty(await snapshot.Keys);
            return true;
        });
    }

    [Fact]
    public void A_writer_that_failed_does_not_keep_the_next_one_out()
    {
        for (var i = 0; i < 3; i++)
            Assert.Throws<InvalidOperationException>(() => Store.Write<bool>("test", _ => throw new InvalidOperationException()));
        Assert.Equal(1, Save("a", "1").Number);
    }

    [Fact]
    public void What_another_program_holds_is_reported_as_busy_and_nothing_is_half_done()
    {
        using (Engine.Hold())
        {
            Assert.Equal(StoreTrouble.Busy, Assert.Throws<StoreTroubleException>(() => Save("a", "1")).Trouble);
            Assert.Equal((1, false), (Store.RefusedWrites, Store.IsRefusingWrites)); // it is over when the other lets go
            Assert.True(Store.Read(snapshot => snapshot.IsEmpty));
        }

        Assert.True(Store.Read(snapshot => snapshot.IsEmpty));
        Assert.Equal(1, Save("a", "1").Number);
    }

    private static Revision Save(Store store, string key, string body) => store.Write("test", writing => writing.Save("design", key, body, []));
}
