using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>Who did what, newest first, a page at a time.</summary>
public abstract class TrailContract<TEngine> : StoreContract<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public void What_was_done_to_documents_is_created_changed_or_deleted()
    {
        Save("a", "1");
        Save("a", "2");
        Store.Write("another", writing => writing.Delete("design", "a"));
        var last = Save("a", "3");
        var entries = Store.Read(snapshot => snapshot.DocumentEntries(long.MaxValue, 100));
        Assert.Equal(
            [("created", "test", 4L), ("deleted", "another", 3L), ("changed", "test", 2L), ("created", "test", 1L)],
            entries.Select(entry => (entry.What, entry.By, entry.Number)));
        Assert.All(entries, entry => Assert.Equal(("design", "a"), (entry.Kind, entry.Key)));
        Assert.Equal((last.Position, last.SavedAt), (entries[0].Position, entries[0].At));
        Assert.Equal([3L, 2L], Store.Read(snapshot => snapshot.DocumentEntries(last.Position, 2)).Select(entry => entry.Number));
    }

    [Fact]
    public void Actions_on_keys_and_on_the_whole_store_are_listed_without_the_keys()
    {
        Clock.AdjustTime(Clock.GetUtcNow().AddHours(1));
        Store.Write("operator", async writing =>
        {
            await writing.AddKey(new StoredKey("shop", [1], "check", 5, null));
            return true;
        });
        Clock.AdjustTime(Clock.GetUtcNow().AddHours(-1)); // and no time goes back
        Store.Write("operator", async writing =>
        {
            await writing.RotateKey("shop", [2], 9);
            return await writing.DeleteKey("shop");
        });
        Store.Write("timed", async writing =>
        {
            await writing.BackedUp("/somewhere/pricefloor.db");
            return true;
        });
        var entries = Store.Read(snapshot => snapshot.OtherEntries(long.MaxValue, 100));
        Assert.Equal(
            [
                ("backed-up", "timed", "store", "pricefloor.db"),
                ("deleted", "operator", "key", "shop"), ("rotated", "operator", "key", "shop"), ("created", "operator", "key", "shop"),
            ],
            entries.Select(entry => (entry.What, entry.By, entry.Kind, entry.Key)));
        Assert.Equal(entries.Select(entry => entry.At).OrderDescending(), entries.Select(entry => entry.At));
        Assert.Equal(["rotated", "created"], Store.Read(snapshot => snapshot.OtherEntries(entries[1].Position, 2)).Select(entry => entry.What));
        Assert.Empty(Store.Read(snapshot => snapshot.DocumentEntries(long.MaxValue, 100)));
    }

    [Fact]
    public void Undone_writes_are_not_listed()
    {
        Store.Write("test", async writing =>
        {
            await writing.AddKey(new StoredKey("shop", [1], "check", 5, null));
            await writing.Save("design", "a", "1", []);
            writing.Undo();
            return true;
        });
        Assert.Empty(Store.Read(snapshot => snapshot.OtherEntries(long.MaxValue, 100)));
        Assert.Empty(Store.Read(snapshot => snapshot.DocumentEntries(long.MaxValue, 100)));
    }
}
