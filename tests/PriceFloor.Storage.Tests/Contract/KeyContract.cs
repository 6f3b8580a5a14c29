using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>Keys: their hashes, their expiry, and when they were last used.</summary>
public abstract class KeyContract<TEngine> : StoreContract<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public void Keys_are_kept_by_name_once_each()
    {
        Store.Write("test", async writing =>
        {
            await writing.AddKey(new StoredKey("shop", [1, 2], "check", 5, 9));
            await writing.AddKey(new StoredKey("Shop", [3], "read write", 6, null));
            return true;
        });
        var keys = Store.Read(snapshot => snapshot.Keys);
        Assert.Equal(
            [("Shop", "read write", 6L, null), ("shop", "check", 5L, 9L)],
            keys.Select(key => (key.Name, key.Scopes, key.CreatedAt, key.ExpiresAt)));
        Assert.Equal([1, 2], keys[1].Hash);
        Assert.Throws<StoreTroubleException>(() => Store.Write("test", writing => Add(writing, new StoredKey("shop", [9], "read", 1, null))));
        Assert.Throws<StoreTroubleException>(() => Store.Write("test", writing => Add(writing, new StoredKey("other", [3], "read", 1, null))));
        Assert.True(Store.Write("test", writing => writing.DeleteKey("shop")));
        Assert.False(Store.Write("test", writing => writing.DeleteKey("shop")));
        Assert.Equal("Shop", Assert.Single(Store.Read(snapshot => snapshot.Keys)).Name);
    }

    [Fact]
    public void A_key_is_kept_with_all_that_it_says()
    {
        var key = new StoredKey("shop", [1, 2, 255], "check read", 5, 9, "main other");
        Store.Write("test", writing => Add(writing, key));
        Close();
        var kept = Assert.Single(Store.Read(snapshot => snapshot.Keys));
        Assert.Equal([1, 2, 255], kept.Hash);
        Assert.Equal(key with { Hash = kept.Hash }, kept);
    }

    [Fact]
    public void A_key_opens_until_it_ends_and_one_that_was_rotated_for_a_while()
    {
        var now = Moment.Of(Clock.GetUtcNow());
        Store.Write("test", writing => Add(writing, new StoredKey("shop", [1], "check", now, now + 2_000_000)));
        Store.Write("test", writing => Add(writing, new StoredKey("forever", [2], "read", now, null)));
        Assert.Equal((true, true, false), (Opens(1), Opens(2), Opens(3)));
        Store.Write("test", async writing =>
        {
            await writing.RotateKey("forever", [3], previousUntil: now + 1_000_000);
            return true;
        });
        Assert.Equal((true, true, true), (Opens(1), Opens(2), Opens(3)));
        Clock.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal((true, false, true), (Opens(1), Opens(2), Opens(3)));
        Clock.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal((false, false, true), (Opens(1), Opens(2), Opens(3)));
        Assert.Equal([2], Store.Read(snapshot => snapshot.Keys)[0].PreviousHash);
        Assert.Equal(now + 1_000_000, Store.Read(snapshot => snapshot.Keys)[0].PreviousUntil);
        Store.Write("test", writing => writing.DeleteKey("forever"));
        Assert.False(Opens(3));
    }

    [Fact]
    public void When_a_key_was_last_used_is_kept_and_a_key_that_is_gone_is_none()
    {
        Store.Write("test", writing => Add(writing, new StoredKey("shop", [1], "check", 5, null)));
        Store.Write("test", async writing =>
        {
            await writing.KeyWasUsed("shop", 7);
            await writing.KeyWasUsed("gone", 8);
            return true;
        });
        Assert.Equal(("shop", 7L), Assert.Single(Store.Read(snapshot => snapshot.Keys)) is var key ? (key.Name, key.LastUsed) : default);
    }

    private bool Opens(byte hash) => Store.Write("test", writing => writing.Opens([hash]));

    private static async ValueTask<bool> Add(Writing writing, StoredKey key)
    {
        await writing.AddKey(key);
        return true;
    }
}
