using Microsoft.Extensions.Time.Testing;
using Npgsql;
using PriceFloor.Storage.Postgres;
using Xunit;
using FileScripts = PriceFloor.Storage.Sqlite.Migrations;

namespace PriceFloor.Storage.Tests.Postgres;

/// <summary>What only PostgreSQL has: roles, walls between studios, another database or timeline in place of the one that was served.</summary>
public sealed class PostgresTests : IDisposable
{
    private readonly PostgresCluster _cluster = PostgresCluster.One;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));
    private readonly string _database;

    public PostgresTests() => _database = _cluster.NewDatabase();

    public void Dispose() => _cluster.Drop(_database);

    [Fact]
    public void Without_naming_a_studio_nothing_is_shown_and_no_other_studios_rows_ever_are()
    {
        using (var store = Opened())
            store.Write("test", writing => writing.Save("design", "a", "1", [new DocumentName("profile", "main")]));
        _cluster.Run(_database, PostgresCluster.Owner, "INSERT INTO studio (key) VALUES ('second')");
        var fault = Assert.Throws<PostgresException>(() => Count("revision", studio: null));
        Assert.Contains("pf.studio", fault.MessageText, StringComparison.Ordinal);
        Assert.Equal((1, 1, 1), (Count("revision", "1"), Count("head", "1"), Count("reference", "1")));
        Assert.Equal((0, 0, 0), (Count("revision", "2"), Count("head", "2"), Count("reference", "2")));
        Assert.Equal(1, Count("revision", "1", PostgresCluster.Owner)); // the owner too sees the studio that it names
        Assert.Equal(0, Count("revision", "2", PostgresCluster.Owner));
    }

    [Fact]
    public void A_role_that_sees_every_row_does_not_serve() => Assert.Contains("reads the rows of every studio",
        Assert.Throws<StoreException>(() => Opened("postgres")).Message, StringComparison.Ordinal);

    [Fact]
    public void Only_the_owner_makes_the_tables_and_then_whoever_serves_can()
    {
        var empty = _cluster.NewDatabase(isMigrated: false);
        using (var served = new Store(new StoreOnServer(_cluster.ConnectionString(empty)).Engine(_clock), _clock))
            Assert.Contains("has schema 0 and must be brought to 4", Assert.Throws<StoreException>(() => served.Open()).Message,
                StringComparison.Ordinal);
        using (var owned = new Store(new StoreOnServer(_cluster.ConnectionString(empty, PostgresCluster.Owner)).Engine(_clock), _clock))
            Assert.Null(owned.Open());
        using (var served = new Store(new StoreOnServer(_cluster.ConnectionString(empty)).Engine(_clock), _clock))
        {
            Assert.Null(served.Open());
            Assert.Equal(1, served.Write("test", writing => writing.Save("design", "a", "1", [])).Number);
        }

        _cluster.Drop(empty);
    }

    [Fact]
    public void A_server_that_cannot_be_reached_is_reported_with_its_name()
    {
        using var store = new Store(new StoreOnServer("Host=/nowhere;Database=studio;Username=pricefloor").Engine(_clock), _clock);
        Assert.False(store.IsBehind());
        var fault = Assert.Throws<StoreException>(() => store.Open());
        Assert.StartsWith("The store PostgreSQL /nowhere:5432/studio cannot be opened", fault.Message, StringComparison.Ordinal);
        Assert.Equal(StoreTrouble.Busy, fault.Trouble);
    }

    [Fact]
    public void Its_documents_come_back_in_the_order_of_their_letters_whatever_the_language_of_the_database()
    {
        using var store = Opened();
        foreach (var key in new[] { "b", "a", "B", "ä", "a-b", "ab" })
            store.Write("test", writing => writing.Save("design", key, "1", []));
        Assert.Equal(["B", "a", "a-b", "ab", "b", "ä"], store.Read(snapshot => snapshot.List("design")).Select(one => one.Key));
    }

    /// <summary>Each statement names columns that both have.</summary>
    [Fact]
    public void Both_engines_have_the_same_tables_and_columns_but_for_the_studio()
    {
        string[] own = ["studio", "timeline", "server", "only", "newest", "newest_at", "newest_event"];
        var here = Columns("SELECT table_name || '.' || column_name FROM information_schema.columns WHERE table_schema = 'public' "
            + "AND table_name NOT IN ('studio', 'migration')");
        var folder = Directory.CreateTempSubdirectory("pricefloor-columns-").FullName;
        FileScripts.Apply(Path.Combine(folder, "pricefloor.db"), FileScripts.Newest);
        using var file = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path.Combine(folder, "pricefloor.db")};Pooling=False");
        file.Open();
        var there = Dapper.SqlMapper.Query<string>(file,
            "SELECT t.name || '.' || c.name FROM sqlite_master t JOIN pragma_table_info(t.name) c WHERE t.type = 'table'").ToList();
        file.Dispose();
        Directory.Delete(folder, recursive: true);
        Assert.True(there.Count > 60);
        Assert.Equal(Shared(there), Shared(here));

        IEnumerable<string> Shared(IEnumerable<string> columns) =>
            columns.Where(column => !own.Contains(column.Split('.')[1])).Order(StringComparer.Ordinal);
    }

    [Fact]
    public void Every_table_has_a_wall_and_every_index_begins_with_the_studio()
    {
        Assert.Empty(Columns("SELECT relname::text FROM pg_class WHERE relkind = 'r' AND relnamespace = 'public'::regnamespace "
            + "AND relname NOT IN ('studio', 'migration') AND NOT (relrowsecurity AND relforcerowsecurity)"));
        var indexes = Columns("SELECT indexdef FROM pg_indexes WHERE schemaname = 'public' AND tablename NOT IN ('studio', 'migration')");
        Assert.True(indexes.Count > 20);
        Assert.All(indexes, index => Assert.Contains("(studio", index, StringComparison.Ordinal));
    }

    private Store Opened(string role = PostgresCluster.Server)
    {
        var store = new Store(new StoreOnServer(_cluster.ConnectionString(_database, role)).Engine(_clock), _clock);
        try
        {
            store.Open();
            return store;
        }
        catch
        {
            store.Dispose();
            throw;
        }
    }

    private long Count(string table, string? studio, string role = PostgresCluster.Server)
    {
        using var source = NpgsqlDataSource.Create(_cluster.ConnectionString(_database, role));
        using var connection = source.OpenConnection();
        if (studio is not null)
            Dapper.SqlMapper.Execute(connection, "SELECT set_config('pf.studio', @studio, false)", new { studio });
        return Dapper.SqlMapper.ExecuteScalar<long>(connection, $"SELECT count(*) FROM {table}");
    }

    private List<string> Columns(string sql)
    {
        using var source = NpgsqlDataSource.Create(_cluster.ConnectionString(_database, PostgresCluster.Owner));
        using var connection = source.OpenConnection();
        return Dapper.SqlMapper.Query<string>(connection, sql).ToList();
    }
}
