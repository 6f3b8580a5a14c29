using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace PriceFloor.Storage.Tests;

public sealed class StoreTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-store-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));
    private readonly Store _store;

    public StoreTests()
    {
        _store = new Store(Path.Combine(_folder, "data", "pricefloor.db"), _clock);
        _store.Open();
    }

    public void Dispose()
    {
        _store.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public void The_first_start_makes_folder_file_and_schema_and_the_second_changes_nothing()
    {
        Save("a", "1");
        _store.Open();
        Assert.Equal("1", _store.Read(snapshot => snapshot.Find("design", "a"))!.Body);
        using var connection = Connect();
        Assert.Equal(Migrations.Newest, connection.ExecuteScalar<int>("PRAGMA user_version"));
    }

    [Fact]
    public void A_folder_that_it_makes_is_its_owners_only()
    {
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(Path.Combine(_folder, "data")));
    }

    [Fact]
    public void What_is_acknowledged_is_on_the_disk()
    {
        Save("a", "1");
        using var connection = Connect();
        Assert.Equal("wal", connection.ExecuteScalar<string>("PRAGMA journal_mode"));
        Assert.Equal(2, _store.Read(snapshot => snapshot.SynchronousLevel));
    }

    [Fact]
    public void The_newest_revisions_between_two_moments_are_read_from_the_newest_back()
    {
        foreach (var body in new[] { "1", "2", "3", "4" })
        {
            Save("a", body);
            _clock.Advance(TimeSpan.FromHours(1));
        }

        Save("ab", "other");
        long At(int hour) => Moment.Of(new DateTimeOffset(2027, 1, 2, hour, 0, 0, TimeSpan.Zero));
        IEnumerable<string?> Latest(int limit, long after = -1, long upTo = long.MaxValue) => _store.Read(snapshot => snapshot.Latest(new DocumentName("design", "a"), limit, after, upTo)).Select(revision => revision.Body);
        Assert.Equal(["4", "3", "2", "1"], Latest(9));
        Assert.Equal(["4", "3"], Latest(2));
        Assert.Equal(["3", "2"], Latest(9, after: At(9), upTo: At(11)));
        Assert.Empty(Latest(9, after: At(12)));
    }

    [Fact]
    public void A_key_that_was_ever_there_is_still_known()
    {
        Save("x/1", "1");
        Save("x/2", "1");
        Save("y/1", "1");
        _store.Write("test", writing => writing.Delete("design", "x/1"));
        Assert.Equal(["x/1", "x/2"], _store.Read(snapshot => snapshot.KeysEver("design", "x/")));
    }

    [Fact]
    public void A_store_of_a_newer_program_is_refused_by_name()
    {
        using (var connection = Connect())
            connection.Execute($"PRAGMA user_version = {Migrations.Newest + 1}");
        var fault = Assert.Throws<StoreException>(_store.Open);
        Assert.Contains($"schema {Migrations.Newest + 1}", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_migration_that_fails_leaves_nothing_behind()
    {
        using var connection = new SqliteConnection($"Data Source={Path.Combine(_folder, "half.db")};Pooling=False");
        connection.Open();
        connection.Execute("CREATE TABLE access_key (x)"); // in the way of the first script, which makes other tables before it
        var trouble = Assert.Throws<StoreTroubleException>(() => Migrations.Apply(connection.DataSource, Migrations.Newest));
        Assert.IsType<SqliteException>(trouble.InnerException);
        Assert.Equal(0, connection.ExecuteScalar<int>("PRAGMA user_version"));
        Assert.Equal(["access_key"], connection.Query<string>("SELECT name FROM sqlite_master WHERE type = 'table'"));
    }

    [Fact]
    public void A_folder_that_cannot_be_made_is_told_with_its_path()
    {
        var file = Path.Combine(_folder, "file");
        File.WriteAllText(file, "");
        using var store = new Store(Path.Combine(file, "below", "pricefloor.db"), _clock);
        Assert.Contains(file, Assert.Throws<StoreException>(store.Open).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Revisions_are_numbered_and_never_overwritten()
    {
        Save("a", "1");
        Save("b", "1");
        Save("a", "2");
        _store.Write("test", writing => writing.Delete("design", "a"));
        Save("a", "1");
        var history = _store.Read(snapshot => snapshot.History("design", "a"));
        Assert.Equal([1L, 2L, 3L, 4L], history.Select(revision => revision.Number));
        Assert.Equal(["1", "2", null, "1"], history.Select(revision => revision.Body));
        Assert.Equal("2", _store.Read(snapshot => snapshot.RevisionOf("design", "a", 2))!.Body);
        Assert.Equal(["a", "b"], _store.Read(snapshot => snapshot.List("design")).Select(revision => revision.Key));
    }

    [Fact]
    public void Time_never_goes_back_even_if_the_clock_does()
    {
        var first = Save("a", "1");
        var second = Save("a", "2");
        _clock.AdjustTime(_clock.GetUtcNow().AddHours(-1));
        var third = Save("a", "3");
        Assert.True(first.SavedAt < second.SavedAt && second.SavedAt < third.SavedAt);
        Assert.Equal("2", _store.Read(snapshot => snapshot.Find("design", "a", second.SavedAt))!.Body);
        Assert.Equal("1", _store.Read(snapshot => snapshot.Find("design", "a", second.SavedAt - 1))!.Body);
        Assert.Null(_store.Read(snapshot => snapshot.Find("design", "a", first.SavedAt - 1)));
    }

    [Fact]
    public void All_of_one_transaction_bears_one_time()
    {
        var (one, two) = _store.Write("test", writing => (writing.Save("design", "a", "1", []), writing.Save("design", "b", "1", [])));
        Assert.Equal(one.SavedAt, two.SavedAt);
    }

    [Fact]
    public void A_list_can_be_had_as_it_was()
    {
        Save("a", "1");
        var then = Save("b", "1").SavedAt;
        _store.Write("test", writing => writing.Delete("design", "a"));
        Save("c", "1");
        Assert.Equal(["b", "c"], _store.Read(snapshot => snapshot.List("design")).Select(revision => revision.Key));
        Assert.Equal(["a", "b"], _store.Read(snapshot => snapshot.List("design", asOf: then)).Select(revision => revision.Key));
        Assert.Equal(["b"], _store.Read(snapshot => snapshot.List("design", after: "a", limit: 1, asOf: then)).Select(revision => revision.Key));
    }

    [Fact]
    public void A_prefix_lists_only_what_starts_with_it()
    {
        foreach (var key in new[] { "A/x", "A/y", "AB/x", "a/x" })
            Save(key, "1");
        Assert.Equal(["A/x", "A/y"], _store.Read(snapshot => snapshot.List("design", "A/")).Select(revision => revision.Key));
    }

    [Fact]
    public void A_write_that_throws_leaves_nothing()
    {
        Assert.Throws<InvalidOperationException>(() => _store.Write<bool>("test", writing =>
        {
            writing.Save("design", "a", "1", []);
            throw new InvalidOperationException();
        }));
        Assert.True(_store.Read(snapshot => snapshot.IsEmpty));
        Assert.Equal(1, Save("a", "1").Number);
    }

    [Fact]
    public void References_are_those_of_the_present_documents()
    {
        _store.Write("test", writing => writing.Save("design", "a", "1", [new DocumentName("profile", "main"), new DocumentName("profile", "main")]));
        Assert.Equal([new DocumentName("design", "a")], _store.Read(snapshot => snapshot.UsersOf("profile", "main")));
        _store.Write("test", writing => writing.Save("design", "a", "2", [new DocumentName("profile", "other")]));
        Assert.Empty(_store.Read(snapshot => snapshot.UsersOf("profile", "main")));
        _store.Write("test", writing => writing.Delete("design", "a"));
        Assert.Empty(_store.Read(snapshot => snapshot.UsersOf("profile", "other")));
    }

    [Fact]
    public async Task Many_writers_lose_nothing()
    {
        await Task.WhenAll(Enumerable.Range(0, 8).Select(writer => Task.Run(() =>
        {
            for (var i = 0; i < 25; i++)
                Save("shared", $"{writer}-{i}");
        })));
        var history = _store.Read(snapshot => snapshot.History("design", "shared"));
        Assert.Equal(Enumerable.Range(1, 200).Select(number => (long)number), history.Select(revision => revision.Number));
        Assert.Equal(200, history.Select(revision => revision.Body).Distinct().Count());
        Assert.Equal(history.Select(revision => revision.SavedAt).Order(), history.Select(revision => revision.SavedAt));
    }

    [Fact]
    public void A_reader_sees_one_moment()
    {
        Save("a", "1");
        _store.Read(snapshot =>
        {
            Assert.Equal("1", snapshot.Find("design", "a")!.Body);
            Save("a", "2");
            Save("b", "1");
            Assert.Equal("1", snapshot.Find("design", "a")!.Body);
            return Assert.Single(snapshot.List("design"));
        });
        Assert.Equal("2", _store.Read(snapshot => snapshot.Find("design", "a"))!.Body);
    }

    private Revision Save(string key, string body) => _store.Write("test", writing => writing.Save("design", key, body, []));

    private SqliteConnection Connect()
    {
        var connection = new SqliteConnection($"Data Source={_store.Path};Pooling=False");
        connection.Open();
        return connection;
    }
}
