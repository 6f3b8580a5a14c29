using Xunit;

namespace PriceFloor.Storage.Tests.Contract;

/// <summary>Pages of documents and of revisions, in byte order.</summary>
public abstract class PageContract<TEngine> : StoreContract<TEngine>
    where TEngine : EngineUnderTest, new()
{
    [Fact]
    public void Documents_come_in_order_of_key_capitals_first_and_other_kinds_stay_out()
    {
        foreach (var key in new[] { "b", "~", "A", "a", "10", "9" })
            Save("design", key, key);
        Save("channel", "a", "other");
        Assert.Equal(["10", "9", "A", "a", "b", "~"], Keys(snapshot => snapshot.List("design")));
        Assert.Equal(["9", "A"], Keys(snapshot => snapshot.List("design", after: "10", limit: 2)));
        Assert.Empty(Keys(snapshot => snapshot.List("design", after: "~")));
        Assert.Equal(["a"], Keys(snapshot => snapshot.List("channel")));
    }

    [Fact]
    public void A_prefix_with_signs_that_SQL_knows_is_only_text()
    {
        foreach (var key in new[] { "a%/x", "a_/x", "ab/x", "a'/x", "a%/y" })
            Save("price", key, "1");
        Assert.Equal(["a%/x", "a%/y"], Keys(snapshot => snapshot.List("price", "a%/")));
        Assert.Equal(["a%/y"], Keys(snapshot => snapshot.List("price", "a%/", after: "a%/x")));
        Assert.Equal(["a'/x"], Keys(snapshot => snapshot.List("price", "a'/")));
        Assert.Empty(Keys(snapshot => snapshot.List("price", "b/", after: "b/")));
    }

    [Fact]
    public void A_page_as_it_was_has_as_many_items_as_asked_for()
    {
        foreach (var key in new[] { "a", "b", "c", "d" })
            Save("design", key, "1");
        Delete("b");
        var then = Save("design", "c", "2").SavedAt;
        Delete("c");
        Save("design", "b", "2");
        Assert.Equal(["a", "c"], Keys(snapshot => snapshot.List("design", limit: 2, asOf: then)));
        Assert.Equal(["2"], Store.Read(snapshot => snapshot.List("design", after: "a", limit: 1, asOf: then)).Select(revision => revision.Body!));
        Assert.Equal(["a", "b"], Keys(snapshot => snapshot.List("design", limit: 2)));
    }

    [Fact]
    public void A_history_comes_a_page_at_a_time_and_up_to_a_moment()
    {
        var saved = Enumerable.Range(1, 5).Select(number => Save("design", "a", $"{number}")).ToList();
        Save("design", "b", "1");
        Assert.Equal([2L, 3L], Store.Read(snapshot => snapshot.History("design", "a", after: 1, limit: 2)).Select(revision => revision.Number));
        Assert.Equal([1L, 2L], Store.Read(snapshot => snapshot.History("design", "a", asOf: saved[1].SavedAt)).Select(revision => revision.Number));
        Assert.Empty(Store.Read(snapshot => snapshot.History("design", "a", after: 5)));
        Assert.Empty(Store.Read(snapshot => snapshot.History("design", "A")));
        Assert.Null(Store.Read(snapshot => snapshot.RevisionOf("design", "a", 6)));
    }

    [Fact]
    public void A_time_is_kept_to_the_microsecond_and_comes_back_the_same()
    {
        Clock.AdjustTime(new DateTimeOffset(2027, 6, 30, 23, 59, 59, TimeSpan.FromHours(2)).AddTicks(1_234_567));
        var saved = Save("design", "a", "1");
        Assert.Equal(new DateTimeOffset(2027, 6, 30, 21, 59, 59, TimeSpan.Zero).AddTicks(1_234_560), saved.SavedAtTime);
        Assert.Equal(saved.SavedAt, Moment.Of(saved.SavedAtTime));
        Assert.NotNull(Store.Read(snapshot => snapshot.Find("design", "a", Moment.Of(saved.SavedAtTime))));
        Assert.Null(Store.Read(snapshot => snapshot.Find("design", "a", Moment.Of(saved.SavedAtTime) - 1)));
    }

    private IEnumerable<string> Keys(Func<Snapshot, ValueTask<List<Revision>>> read) => Store.Read(read).Select(revision => revision.Key);
}
