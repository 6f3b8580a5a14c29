using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>How much a store may hold.</summary>
public abstract class LimitContract<TEngine> : StoreContract<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public async Task Documents_are_counted_and_limited_without_those_that_are_deleted()
    {
        Store.Limits = new StoreLimits(Documents: 2);
        await Save("a");
        await Save("b");
        await Save("b"); // another revision is no other document
        var refused = await Assert.ThrowsAsync<QuotaException>(() => Save("c"));
        Assert.Equal(("documents", 2L, 2L), (refused.What, refused.Limit, refused.Used));
        Assert.Equal(2, Store.Read(snapshot => snapshot.Documents));
        await Store.WriteAsync("test", writing => writing.Delete("design", "a"));
        Assert.Equal(1, Store.Read(snapshot => snapshot.Documents));
        await Save("c");
        Assert.Null(Store.Read(snapshot => snapshot.Find("design", "a")));
    }

    [Fact]
    public async Task A_store_that_is_as_large_as_it_may_be_takes_no_more()
    {
        await Save("a");
        Store.Limits = new StoreLimits(Bytes: 1);
        var refused = await Assert.ThrowsAsync<QuotaException>(() => Save("b"));
        Assert.Equal(("bytes", 1L), (refused.What, refused.Limit));
        Assert.True(refused.Used > 1);
        await Store.WriteAsync("test", async writing => // a key is no document
        {
            await writing.AddKey(new StoredKey("shop", [1], "check", 5, null));
            return true;
        });
        Store.Limits = StoreLimits.None;
        await Save("b");
    }

    [Fact]
    public async Task Keys_are_counted_before_another_is_made()
    {
        var limits = new StoreLimits(Keys: 1);
        await Store.ReadAsync(async snapshot =>
        {
            await limits.CheckKeys(snapshot);
            return true;
        });
        await Store.WriteAsync("test", async writing =>
        {
            await writing.AddKey(new StoredKey("shop", [1], "check", 5, null));
            var refused = await Assert.ThrowsAsync<QuotaException>(() => limits.CheckKeys(writing).AsTask());
            Assert.Equal(("keys", 1L, 1L), (refused.What, refused.Limit, refused.Used));
            return true;
        });
    }

    [Fact]
    public async Task What_is_put_in_at_once_is_counted_as_a_whole()
    {
        await Save("a");
        await Save("b");
        Store.Limits = new StoreLimits(Documents: 1);
        await Store.WriteAsync("test", async writing =>
        {
            var refused = await Assert.ThrowsAsync<QuotaException>(() => Store.CheckLimits(writing).AsTask());
            Assert.Equal(("documents", 1L, 2L), (refused.What, refused.Limit, refused.Used));
            Store.Limits = new StoreLimits(Documents: 2);
            await Store.CheckLimits(writing);
            return true;
        });
    }

    private Task<Revision> Save(string key) => Store.WriteAsync("test", writing =>
        writing.Save("design", key, $$"""{"n":"{{Guid.NewGuid():N}}"}""", []));
}
