using Microsoft.Extensions.Time.Testing;
using PriceFloor.Storage.Postgres;
using Xunit;

namespace PriceFloor.Storage.Tests.Postgres;

/// <summary>
/// The row of a studio's life says where it stands, whoever writes and however. The contract of the engine also asks after each of its tests.
/// </summary>
public sealed class WhereItStandsTests : IDisposable
{
    private const string Studio = "SELECT set_config('pf.studio', '1', true)";
    private const string Revision = "INSERT INTO revision (position, kind, key, number, saved_at, saved_by, body)";

    private readonly PostgresCluster _cluster = PostgresCluster.One;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero));
    private readonly string _database;

    public WhereItStandsTests() => _database = _cluster.NewDatabase(isMigrated: false);

    public void Dispose() => _cluster.Drop(_database);

    [Fact]
    public async Task What_the_version_before_writes_is_seen_at_once()
    {
        using var store = Opened();
        await store.WriteAsync("test", writing => writing.Save("design", "a", "1", []));
        Run($"{Revision} SELECT 2, 'design', 'b', 1, saved_at + 7, 'test', '2' FROM revision; "
            + "INSERT INTO head (kind, key, position, deleted) VALUES ('design', 'b', 2, 0); "
            + "INSERT INTO event (at, by, kind, name, what) VALUES (1, 'test', 'key', 'x', 'created')");
        await store.Fresh();
        Assert.Equal((2, 1), (store.Point.Position, store.Point.Events));
        var third = await store.WriteAsync("test", writing => writing.Save("design", "b", "3", []));
        Assert.Equal((3, 2), (third.Position, third.Number));
        Assert.Empty(_cluster.WrongStandings(_database));
    }

    [Fact]
    public void A_database_of_the_schema_before_is_brought_up_with_what_it_has()
    {
        const int Before = 3;
        _cluster.Run(_database, PostgresCluster.Owner,
            "CREATE TABLE migration (number integer PRIMARY KEY, applied_at timestamptz NOT NULL DEFAULT now())");
        foreach (var (script, number) in Scripts().Take(Before).Select((script, n) => (script, n + 1)))
            _cluster.Run(_database, PostgresCluster.Owner, $"{script};\nINSERT INTO migration (number) VALUES ({number})");
        Run($"{Revision} SELECT n, 'design', 'd' || n, 1, 1000 + n, 'test', '1' FROM generate_series(1, 5) n; "
            + "INSERT INTO head (kind, key, position, deleted) SELECT kind, key, position, 0 FROM revision");
        using var store = Opened(upgrade: new Upgrade(Before, StoreOnServer.Schema, null));
        Assert.Equal((5, 5), (store.Position, store.Read(snapshot => snapshot.List("design")).Count));
        Assert.Empty(_cluster.WrongStandings(_database));
    }

    [Fact]
    public async Task What_the_server_refuses_before_it_commits_is_surely_not_kept()
    {
        using var store = Opened();
        await store.WriteAsync("test", writing => writing.Save("design", "a", "1", []));
        Run($"SELECT set_config('pf.told_later', 'yes', true); {Revision} VALUES (2, 'design', 'b', 1, 9, 'test', '2')"); // nobody is told
        var refused = await Assert.ThrowsAsync<StoreTroubleException>(() =>
            store.WriteAsync("test", writing => writing.Save("design", "c", "1", [])));
        Assert.Equal((StoreTrouble.Unexpected, false), (refused.Trouble, refused.MayBeKept));
        var place = new StoreOnServer(_cluster.ConnectionString(_database, PostgresCluster.Owner));
        Assert.Contains(place.Check((_, _) => null).Faults, fault => fault.Contains("tell_where_it_stands", StringComparison.Ordinal));
        Run("SELECT tell_where_it_stands()");
        Assert.Equal(3, (await store.WriteAsync("test", writing => writing.Save("design", "c", "1", []))).Position);
    }

    private static IEnumerable<string> Scripts() => typeof(StoreOnServer).Assembly.GetManifestResourceNames()
        .Where(name => name.EndsWith(".sql", StringComparison.Ordinal)).Order(StringComparer.Ordinal).Select(name =>
        {
            using var reader = new StreamReader(typeof(StoreOnServer).Assembly.GetManifestResourceStream(name)!);
            return reader.ReadToEnd();
        });

    /// <summary>Runs statements in the studio, in one transaction.</summary>
    private void Run(string sql) => _cluster.Run(_database, PostgresCluster.Owner, $"BEGIN; {Studio}; {sql}; COMMIT");

    private Store Opened(Upgrade? upgrade = null)
    {
        var store = new Store(new StoreOnServer(_cluster.ConnectionString(_database, PostgresCluster.Owner)).Engine(_clock), _clock);
        Assert.Equal(upgrade, store.Open());
        return store;
    }
}
