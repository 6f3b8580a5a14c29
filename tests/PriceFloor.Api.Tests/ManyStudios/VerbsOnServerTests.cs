using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.Configuration;
using PriceFloor.Api.Running;
using PriceFloor.Storage;
using PriceFloor.Storage.Tests.Postgres;
using Xunit;

namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>Verbs on a database while processes serve it: what they did holds with the next request.</summary>
public sealed class VerbsOnServerTests : IDisposable
{
    private readonly PostgresCluster _cluster = PostgresCluster.One;
    private readonly string _database;

    public VerbsOnServerTests() => _database = _cluster.NewDatabase();

    public void Dispose() => _cluster.Drop(_database);

    [Fact]
    public async Task A_document_is_forgotten_and_a_key_made_while_the_studio_is_served()
    {
        await using var studio = new Studio(configure: OnServer);
        await studio.HasASmallShop();
        await studio.Delete("/v1/designs/RB-014/prices/web");
        await studio.Delete("/v1/designs/RB-014");
        var cursor = (await studio.Get("/v1/floor-changes")).Json.GetProperty("next").GetString();
        Assert.Contains("All is well.", Verb(studio, null, "check-store"), StringComparison.Ordinal);
        var forgotten = Verb(studio, null, "forget", "design", "RB-014");
        foreach (var trace in new[] { "VACUUM", "the log that it archives", "backups made before" })
            Assert.Contains(trace, forgotten, StringComparison.Ordinal);
        Assert.Equal(404, (await studio.Get("/v1/designs/RB-014/revisions")).Status);
        Assert.Contains("unknown-cursor", (await studio.Get($"/v1/floor-changes?since={cursor}")).Text, StringComparison.Ordinal);
        Verb(studio, null, "new-admin-key");
        var admin = studio.ClientWith((await File.ReadAllTextAsync(Assert.Single(Directory.GetFiles(studio.Folder, "admin-key-*")),
            Studio.Cancellation)).Trim());
        Assert.Equal(201, (await studio.Put("/v1/designs/RB-014", Sample.Pendant, admin)).Status);
        Assert.Contains("All is well.", Verb(studio, null, "check-store"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task They_work_on_one_studio_of_a_host_that_serves()
    {
        await using var host = HostedService.Start(OnServer);
        var (harbour, tower) = (await host.HasStudio("harbour"), await host.HasStudio("tower"));
        await host.HasASmallShop(harbour);
        await host.HasASmallShop(tower);
        foreach (var path in new[] { "/v1/designs/RB-014/prices/web", "/v1/designs/RB-014" })
            Assert.Equal(204, (await host.Delete(path, harbour)).Status);
        Assert.Contains("erased", Verb(host, "harbour", "forget", "design", "RB-014"), StringComparison.Ordinal);
        Assert.Equal((404, 200), ((await host.Get("/v1/designs/RB-014/revisions", harbour)).Status,
            (await host.Get("/v1/designs/RB-014/revisions", tower)).Status));
        Verb(host, "harbour", "new-admin-key");
        var admin = host.ClientWith((await File.ReadAllTextAsync(Assert.Single(Directory.GetFiles(host.Folder, "admin-key-*")),
            Studio.Cancellation)).Trim());
        Assert.Equal(200, (await host.Get("/v1/profiles/main", admin)).Status);
        Assert.Equal(403, (await host.Get("/v1/studios", admin)).Status);
        foreach (var key in new[] { "harbour", "tower" })
            Assert.Contains($"studios/{key}: schema", Verb(host, key, "check-store"), StringComparison.Ordinal);
        Assert.Contains("There is no studio \"nowhere\"", Assert.Throws<StoreException>(() => Verb(host, "nowhere", "check-store")).Message,
            StringComparison.Ordinal);
    }

    private void OnServer(IWebHostBuilder host) => host.UseSetting("PRICEFLOOR_STORE", _cluster.ConnectionString(_database));

    private string Verb(Studio studio, string? key, params string[] words)
    {
        using var output = new StringWriter();
        var settings = new ConfigurationBuilder().AddInMemoryCollection(
            [new("PRICEFLOOR_DATA", studio.Folder), new("PRICEFLOOR_STORE", _cluster.ConnectionString(_database))]).Build();
        Assert.Equal(0, StoreCommands.Run(words[0], words[1..], settings, output,
            key is null ? null : new Dictionary<string, string> { ["studio"] = key }));
        return output.ToString();
    }
}
