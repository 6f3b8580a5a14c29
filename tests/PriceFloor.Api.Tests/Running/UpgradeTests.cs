using System.Net;
using Microsoft.Data.Sqlite;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>The real program on a store of an earlier one.</summary>
public sealed class UpgradeTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-upgrade-").FullName;

    private string Db => Path.Combine(_folder, "pricefloor.db");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task While_the_store_is_brought_up_to_date_the_service_is_alive_and_not_ready()
    {
        OldStore.Make(Db, schema: 1);
        await using var other = new SqliteConnection($"Data Source={Db};Pooling=False");
        await other.OpenAsync(Studio.Cancellation);
        var hold = other.BeginTransaction(deferred: false); // the upgrade waits for it
        using var service = Start(_folder, new Dictionary<string, string> { ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey });
        await Answers(service, "/health/live");
        using var client = new HttpClient { BaseAddress = new Uri(service.Address) };
        client.DefaultRequestHeaders.Authorization = new("Bearer", Studio.AdminKey);
        foreach (var path in new[] { "/health/ready", "/v1/profiles/main" })
        {
            using var refused = await client.GetAsync(new Uri(path, UriKind.Relative), Studio.Cancellation);
            (await Answer.Of(refused)).IsProblem(503, "busy");
        }

        await hold.RollbackAsync(Studio.Cancellation);
        await Ready(service);
        using var profile = await client.GetAsync(new Uri("/v1/profiles/main", UriKind.Relative), Studio.Cancellation);
        Assert.Equal(HttpStatusCode.OK, profile.StatusCode);
        var kept = Assert.Single(Directory.GetFiles(_folder, "pricefloor.db.schema-1-*"),
            file => !file.EndsWith(".sha256", StringComparison.Ordinal));
        Assert.Equal((1, 1), (StoreCheck.Of(kept, (_, _) => null).Schema, StoreCheck.Of(kept, (_, _) => null).Revisions));
        Assert.Equal(0, await Terminate(service));
        Assert.Contains(kept, await service.Process.StandardOutput.ReadToEndAsync(Studio.Cancellation), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_upgrade_that_fails_ends_the_program_with_one_sentence_and_the_backup_goes_back()
    {
        OldStore.Make(Db, schema: 1);
        await using (var other = new SqliteConnection($"Data Source={Db};Pooling=False"))
        {
            await other.OpenAsync(Studio.Cancellation);
            await using var inTheWay = other.CreateCommand();
            inTheWay.CommandText = "CREATE TABLE life (x)";
            await inTheWay.ExecuteNonQueryAsync(Studio.Cancellation);
        }

        var failed = await RealProgram.Run(_folder);
        Assert.Equal(1, failed.Code);
        OneSentence(failed.Errors, Db, $"from schema 1 to {Migrations.Newest}", "is undone", $"{Db}.schema-1-");
        Assert.Equal(1, StoreCheck.Of(Db, (_, _) => null).Schema);
        await RealProgram.Run(_folder);
        Assert.Equal(2, Directory.GetFiles(_folder, "pricefloor.db.schema-1-*").Length); // one backup and its hash, however often it is tried
    }
}
