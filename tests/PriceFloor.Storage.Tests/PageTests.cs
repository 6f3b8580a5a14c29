using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace PriceFloor.Storage.Tests;

/// <summary>Pages of documents, of revisions and of keys, in byte order.</summary>
public sealed class PageTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-store-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));
    private readonly Store _store;

    public PageTests()
    {
        _store = new Store(Path.Combine(_folder, "pricefloor.db"), _clock);
        _store.Open();
    }

    public void Dispose()
    {
        _store.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

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
        _store.Write("test", writing => writing.Delete("design", "b"));
        var then = Save("design", "c", "2").SavedAt;
        _store.Write("test", writing => writing.Delete("design", "c"));
        Save("design", "b", "2");
        Assert.Equal(["a", "c"], Keys(snapshot => snapshot.List("design", limit: 2, asOf: then)));
        Assert.Equal(["2"], _store.Read(snapshot => snapshot.List("design", after: "a", limit: 1, asOf: then)).Select(revision => revision.Body!));
        Assert.Equal(["a", "b"], Keys(snapshot => snapshot.List("design", limit: 2)));
    }

    [Fact]
    public void A_history_comes_a_page_at_a_time_and_up_to_a_moment()
    {
        var saved = Enumerable.Range(1, 5).Select(number => Save("design", "a", $"{number}")).ToList();
        Save("design", "b", "1");
        Assert.Equal([2L, 3L], _store.Read(snapshot => snapshot.History("design", "a", after: 1, limit: 2)).Select(revision => revision.Number));
        Assert.Equal([1L, 2L], _store.Read(snapshot => snapshot.History("design", "a", asOf: saved[1].SavedAt)).Select(revision => revision.Number));
        Assert.Empty(_store.Read(snapshot => snapshot.History("design", "a", after: 5)));
        Assert.Empty(_store.Read(snapshot => snapshot.History("design", "A")));
        Assert.Null(_store.Read(snapshot => snapshot.RevisionOf("design", "a", 6)));
    }

    [Fact]
    public void A_time_is_kept_to_the_microsecond_and_comes_back_the_same()
    {
        _clock.AdjustTime(new DateTimeOffset(2027, 6, 30, 23, 59, 59, TimeSpan.FromHours(2)).AddTicks(1_234_567));
        var saved = Save("design", "a", "1");
        Assert.Equal(new DateTimeOffset(2027, 6, 30, 21, 59, 59, TimeSpan.Zero).AddTicks(1_234_560), saved.SavedAtTime);
        Assert.Equal(saved.SavedAt, Moment.Of(saved.SavedAtTime));
        Assert.NotNull(_store.Read(snapshot => snapshot.Find("design", "a", Moment.Of(saved.SavedAtTime))));
        Assert.Null(_store.Read(snapshot => snapshot.Find("design", "a", Moment.Of(saved.SavedAtTime) - 1)));
    }

    [Fact]
    public void Keys_are_kept_by_name_once_each()
    {
        _store.Write("test", writing =>
        {
            writing.AddKey(new StoredKey("shop", [1, 2], "check", 5, 9));
            writing.AddKey(new StoredKey("Shop", [3], "read write", 6, null));
            return true;
        });
        var keys = _store.Read(snapshot => snapshot.Keys);
        Assert.Equal([("Shop", "read write", 6L, null), ("shop", "check", 5L, 9L)], keys.Select(key => (key.Name, key.Scopes, key.CreatedAt, key.ExpiresAt)));
        Assert.Equal([1, 2], keys[1].Hash);
        Assert.Throws<StoreTroubleException>(() => _store.Write("test", writing => Add(writing, new StoredKey("shop", [9], "read", 1, null))));
        Assert.Throws<StoreTroubleException>(() => _store.Write("test", writing => Add(writing, new StoredKey("other", [3], "read", 1, null))));
        Assert.True(_store.Write("test", writing => writing.DeleteKey("shop")));
        Assert.False(_store.Write("test", writing => writing.DeleteKey("shop")));
        Assert.Equal("Shop", Assert.Single(_store.Read(snapshot => snapshot.Keys)).Name);
    }

    private static bool Add(Writing writing, StoredKey key)
    {
        writing.AddKey(key);
        return true;
    }

    private IEnumerable<string> Keys(Func<Snapshot, IReadOnlyList<Revision>> read) => _store.Read(read).Select(revision => revision.Key);

    private Revision Save(string kind, string key, string body) => _store.Write("test", writing => writing.Save(kind, key, body, []));
}
