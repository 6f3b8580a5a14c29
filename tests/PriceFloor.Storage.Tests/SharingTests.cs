using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace PriceFloor.Storage.Tests;

/// <summary>One file, several programs or several threads; and what is left after a stop.</summary>
public sealed class SharingTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-store-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Two_programs_that_write_to_one_file_lose_nothing()
    {
        using var one = Open();
        using var two = Open();
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
        using var store = Open();
        var writing = Task.Run(() =>
        {
            for (var i = 0; i < 60; i++)
                store.Write("test", write => (write.Save("design", "a", $"{i}", []), write.Save("design", "b", $"{i}", [])));
        }, TestContext.Current.CancellationToken);
        while (!writing.IsCompleted)
            store.Read(snapshot =>
            {
                var a = snapshot.Find("design", "a")?.Body;
                Thread.Yield();
                Assert.Equal(a, snapshot.Find("design", "b")?.Body);
                Assert.Equal(snapshot.Find("design", "a")?.SavedAt, snapshot.Find("design", "b")?.SavedAt);
                return true;
            });
        await writing;
        Assert.Equal("59", store.Read(snapshot => snapshot.Find("design", "b"))!.Body);
    }

    [Fact]
    public void What_was_stored_is_there_after_a_start_anew_and_a_clock_set_back_by_a_year()
    {
        long before;
        using (var store = Open())
            before = Save(store, "a", "1").SavedAt;
        _clock.AdjustTime(_clock.GetUtcNow().AddYears(-1));
        using var again = Open();
        Assert.Equal(("1", "test"), again.Read(snapshot => snapshot.Find("design", "a")) is { } found ? (found.Body, found.SavedBy) : default);
        Assert.Equal(before + 1, Save(again, "b", "1").SavedAt);
    }

    [Fact]
    public void A_rolled_back_write_leaves_heads_references_and_keys_as_they_were()
    {
        using var store = Open();
        store.Write("test", writing => writing.Save("design", "a", "1", [new DocumentName("profile", "main")]));
        Assert.Throws<InvalidOperationException>(() => store.Write<bool>("test", writing =>
        {
            writing.Save("design", "a", "2", [new DocumentName("profile", "other")]);
            writing.Delete("design", "a");
            writing.AddKey(new StoredKey("k", [1], "read", 1, null));
            throw new InvalidOperationException();
        }));
        store.Read(snapshot =>
        {
            Assert.Equal("1", snapshot.Find("design", "a")!.Body);
            Assert.Single(snapshot.History("design", "a"));
            Assert.Single(snapshot.UsersOf("profile", "main"));
            Assert.Empty(snapshot.UsersOf("profile", "other"));
            return Assert.IsType<bool>(snapshot.Keys.Count == 0);
        });
    }

    [Fact]
    public void A_writer_that_failed_does_not_keep_the_next_one_out()
    {
        using var store = Open();
        for (var i = 0; i < 3; i++)
            Assert.Throws<InvalidOperationException>(() => store.Write<bool>("test", _ => throw new InvalidOperationException()));
        Assert.Equal(1, Save(store, "a", "1").Number);
    }

    [Fact]
    public void What_another_program_holds_is_reported_as_busy_and_nothing_is_half_done()
    {
        using var store = Open();
        using (var other = new SqliteConnection($"Data Source={store.Path};Pooling=False"))
        {
            other.Open();
            using var hold = other.BeginTransaction(deferred: false);
            var busy = Assert.Throws<StoreTroubleException>(() => Save(store, "a", "1"));
            Assert.Equal((StoreTrouble.Busy, 5), (busy.Trouble, Assert.IsType<SqliteException>(busy.InnerException).SqliteErrorCode));
        }

        Assert.True(store.Read(snapshot => snapshot.IsEmpty));
        Assert.Equal(1, Save(store, "a", "1").Number);
    }

    [Fact]
    public void The_schema_is_strict_and_a_number_is_never_given_twice()
    {
        using var store = Open();
        Save(store, "a", "1");
        using var connection = new SqliteConnection($"Data Source={store.Path};Pooling=False;Foreign Keys=True");
        connection.Open();
        Assert.Equal(19, Assert.Throws<SqliteException>(() => connection.Execute("INSERT INTO revision (kind, key, number, saved_at, saved_by) VALUES ('design', 'a', 1, 1, 'x')")).SqliteErrorCode);
        Assert.Equal(19, Assert.Throws<SqliteException>(() => connection.Execute("INSERT INTO revision (kind, key, number, saved_at, saved_by) VALUES ('design', 'a', 'two', 1, 'x')")).SqliteErrorCode);
        Assert.Equal(19, Assert.Throws<SqliteException>(() => connection.Execute("DELETE FROM revision")).SqliteErrorCode);
        Assert.Equal(["access_key", "event", "head", "life", "probe", "reference", "revision"], connection.Query<string>("SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name"));
    }

    private Store Open()
    {
        var store = new Store(Path.Combine(_folder, "pricefloor.db"), _clock);
        store.Open();
        return store;
    }

    private static Revision Save(Store store, string key, string body) => store.Write("test", writing => writing.Save("design", key, body, []));
}
