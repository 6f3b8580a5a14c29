using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace PriceFloor.Storage.Tests.Sqlite;

/// <summary>The store's file, its folder and its schema.</summary>
public sealed class FileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-store-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));
    private readonly Store _store;

    private string Db => Path.Combine(_folder, "data", "pricefloor.db");

    public FileTests()
    {
        _store = new Store(new SqliteEngine(Db, _clock), _clock);
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
            Assert.Equal(
                UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(Path.Combine(_folder, "data")));
    }

    [Fact]
    public async Task What_is_acknowledged_is_on_the_disk()
    {
        Save("a", "1");
        using var connection = Connect();
        Assert.Equal("wal", connection.ExecuteScalar<string>("PRAGMA journal_mode"));
        using var engine = new SqliteEngine(Db, TimeProvider.System);
        for (var i = 0; i < 3; i++) // the first connection is a new one, the others are it again
        {
            await using (var session = i < 2 ? await engine.BeginReading() : await engine.BeginWriting())
            {
                Assert.Equal(2, await session.ExecuteScalar<long>("PRAGMA synchronous")); // 2 is FULL
                Assert.Equal(1, await session.ExecuteScalar<long>("PRAGMA foreign_keys"));
                Assert.Equal(5000, await session.ExecuteScalar<long>("PRAGMA busy_timeout"));
            }

            await engine.Probe(TimeSpan.FromMilliseconds(50), _clock.GetUtcNow()); // waits less, and leaves the connection as it was
        }
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
    public void A_folder_that_cannot_be_made_is_reported_with_its_path()
    {
        var file = Path.Combine(_folder, "file");
        File.WriteAllText(file, "");
        using var store = new Store(new SqliteEngine(Path.Combine(file, "below", "pricefloor.db"), _clock), _clock);
        Assert.Contains(file, Assert.Throws<StoreException>(store.Open).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_schema_is_strict_and_a_number_is_never_given_twice()
    {
        Save("a", "1");
        using var connection = new SqliteConnection($"Data Source={Db};Pooling=False;Foreign Keys=True");
        connection.Open();
        foreach (var refused in new[]
        {
            "INSERT INTO revision (kind, key, number, saved_at, saved_by) VALUES ('design', 'a', 1, 1, 'x')",
            "INSERT INTO revision (kind, key, number, saved_at, saved_by) VALUES ('design', 'a', 'two', 1, 'x')",
            "DELETE FROM revision",
        })
            Assert.Equal(19, Assert.Throws<SqliteException>(() => SqlMapper.Execute(connection, refused)).SqliteErrorCode);
        Assert.Equal(
            ["access_key", "bench", "event", "head", "life", "log_batch", "log_secret", "log_source", "movement", "name", "probe", "reference",
                "revision"],
            connection.Query<string>("SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name"));
    }

    private Revision Save(string key, string body) => _store.Write("test", writing => writing.Save("design", key, body, []));

    private SqliteConnection Connect()
    {
        var connection = new SqliteConnection($"Data Source={Db};Pooling=False");
        connection.Open();
        return connection;
    }
}
