using System.Globalization;
using Microsoft.AspNetCore.Hosting;
using Npgsql;
using PriceFloor.Storage.Tests.Postgres;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>What callers are told when a database fails them midway.</summary>
public sealed class DatabaseTroubleTests : IDisposable
{
    private readonly PostgresCluster _cluster = PostgresCluster.One;
    private readonly string _database;

    public DatabaseTroubleTests() => _database = _cluster.NewDatabase();

    public void Dispose() => _cluster.Drop(_database);

    [Fact]
    public async Task Who_loses_the_answer_to_a_commit_is_told_that_it_may_have_been_kept()
    {
        var direct = new NpgsqlConnectionStringBuilder(_cluster.ConnectionString(_database));
        using var proxy = new CuttingProxy(direct.Host!);
        (direct.Host, direct.Port) = ("127.0.0.1", proxy.Port);
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_STORE", direct.ConnectionString));
        await studio.HasASmallShop();
        proxy.CutNextCommit();
        var refused = (await studio.Put("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":7}}""")).IsProblem(503, "busy");
        Assert.Contains("may have been kept", refused.Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.InRange(int.Parse(refused["Retry-After"]!, CultureInfo.InvariantCulture), 1, 60);
        var read = await studio.Get("/v1/designs/RB-014"); // as it was told
        Assert.Equal((200, 7), (read.Status, read.Json.GetProperty("making").GetProperty("piecesPerDay").GetInt32()));
        Assert.Equal(200, (await studio.Put("/v1/designs/RB-014", Sample.Pendant, headers: ("If-Match", read["ETag"]!))).Status);
    }

    [Fact]
    public async Task A_disk_that_is_full_refuses_writes_and_answers_go_on()
    {
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_STORE", _cluster.ConnectionString(_database)));
        await studio.HasASmallShop();
        _cluster.Run(_database, "postgres",
            """
            CREATE FUNCTION no_room() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'no room' USING ERRCODE = 'disk_full'; END $$;
            CREATE TRIGGER no_room BEFORE INSERT ON revision EXECUTE FUNCTION no_room();
            """);
        var refused = (await studio.Put("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":7}}""")).IsProblem(503, "busy");
        Assert.NotNull(refused["Retry-After"]);
        Assert.Equal(200, (await studio.Post("/v1/floor-prices", """{"design":"RB-014"}""")).Status);
        _cluster.Run(_database, "postgres", "DROP TRIGGER no_room ON revision");
        Assert.Equal(200, (await studio.Put("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":7}}""")).Status);
    }
}
