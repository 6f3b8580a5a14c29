using Npgsql;
using PriceFloor.Storage.Postgres;
using PriceFloor.Storage.Tests.Contract;
using Xunit;

namespace PriceFloor.Storage.Tests.Postgres;

/// <summary>PostgreSQL: a database of its own, served by a role that owns nothing in it.</summary>
public sealed class PostgresUnderTest : EngineUnderTest
{
    private readonly PostgresCluster _cluster = PostgresCluster.One;
    private readonly string _database;

    public PostgresUnderTest() => _database = _cluster.NewDatabase();

    private StoreOnServer Place => new(_cluster.ConnectionString(_database));

    public override Store Open()
    {
        var store = new Store(Place.Engine(Clock), Clock);
        store.Open();
        return store;
    }

    public override IDisposable Hold()
    {
        var other = new NpgsqlConnection(_cluster.ConnectionString(_database) + ";Pooling=False");
        other.Open();
        other.BeginTransaction(); // ends with the connection
        using var command = new NpgsqlCommand("SELECT set_config('pf.studio', '1', true); SELECT * FROM life FOR UPDATE", other);
        command.ExecuteNonQuery();
        return other;
    }

    public override Action Keep() => _cluster.Dump(_database);

    public override int Forget(string kind, string key, string? kindBelow = null, bool mayStand = false) =>
        Place.Forget(new DocumentName(kind, key), Clock.GetUtcNow(), kindBelow is null ? [] : [kindBelow], mayStand);

    public override int ForgetSource(string source) => Place.ForgetSource(source, Clock.GetUtcNow());

    public override IReadOnlyList<string> Faults() => Place.Check((_, _) => null).Faults;

    /// <summary>Whatever was done to the store: the row of its life says where it stands.</summary>
    public override void Dispose()
    {
        Assert.Empty(_cluster.WrongStandings(_database));
        _cluster.Drop(_database);
    }
}
