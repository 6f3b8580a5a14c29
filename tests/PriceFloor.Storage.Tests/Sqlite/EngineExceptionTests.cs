using Microsoft.Data.Sqlite;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>Where the engine's exceptions are caught, and where a caller's own pass.</summary>
public sealed class EngineExceptionTests : StoreInTrouble
{
    [Fact]
    public void What_the_engine_refuses_for_another_reason_is_unexpected()
    {
        using var store = NewStore();
        var key = new StoredKey("shop", [1], "check", 1, null);
        async ValueTask<bool> Add(Writing writing)
        {
            await writing.AddKey(key);
            return true;
        }

        store.Write("test", Add);
        Assert.Equal(StoreTrouble.Unexpected, TroubleOf(() => store.Write("test", Add)));
    }

    [Fact]
    public void Readers_and_writers_get_it_where_it_happens()
    {
        using var store = NewStore();
        store.Write("test", async writing =>
        {
            await writing.AddKey(new StoredKey("shop", [1], "check", 1, null));
            Assert.Equal(StoreTrouble.Unexpected, (await Assert.ThrowsAsync<StoreTroubleException>(async () =>
                await writing.AddKey(new StoredKey("shop", [2], "check", 1, null)))).Trouble);
            return await writing.Save("design", "a", "1", []);
        });
        Assert.Equal("1", Body(store, "a"));
        Assert.Equal([1], Assert.Single(store.Read(snapshot => snapshot.Keys)).Hash);
    }

    [Fact]
    public async Task What_a_reader_or_writer_throws_itself_comes_out_as_it_was_thrown()
    {
        using var store = NewStore();
        foreach (var mine in new Exception[] { new InvalidOperationException(), new IOException(), new SqliteException("of another store", 11) })
        {
            Assert.Same(mine, Record.Exception(() => store.Read<bool>(_ => throw mine)));
            Assert.Same(mine, await Record.ExceptionAsync(async () => await store.ReadAsync<bool>(_ => throw mine)));
            Assert.Same(mine, Record.Exception(() => store.Write<bool>("test", _ => throw mine)));
            Assert.Same(mine, await Record.ExceptionAsync(() => store.WriteAsync<bool>("test", _ => throw mine)));
        }

        Assert.Equal((0, false), (store.RefusedWrites, store.IsRefusingWrites));
    }
}
