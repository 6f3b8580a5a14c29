using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Api.Running;
using PriceFloor.Storage;
using PriceFloor.Storage.Sqlite;
using Xunit;

namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>A studio's folder is a data folder: verbs work on it, and what they do there holds in the service.</summary>
public sealed class StudioFolderTests
{
    [Fact]
    public async Task A_backup_of_a_studio_served_alone_becomes_a_studio_of_the_host_with_its_keys()
    {
        await using var alone = new Studio();
        await alone.HasASmallShop();
        var shop = await alone.ClientFor("read");
        var copy = Path.Combine(alone.Folder, "copy.db");
        Run(alone.Folder, "backup", copy);

        await using var host = Closing();
        await host.HasStudio("harbour");
        await Closed(host);
        Run(FolderOf(host), "restore", copy);
        Assert.Equal(401, (await host.Get("/v1/profiles/main", Copy(host, shop))).Status); // nobody has looked yet
        Assert.Equal(200, (await host.Put("/v1/studios/harbour", """{"name":"harbour","limits":{}}""")).Status);
        Assert.Equal((await alone.Get("/v1/designs/RB-014/floor-price", shop)).Text,
            (await host.Get("/v1/designs/RB-014/floor-price", Copy(host, shop))).Text);
        await Closed(host);
        Assert.Contains("All is well.", Run(FolderOf(host), "check-store"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lost_admin_key_of_a_studio_is_replaced_by_the_verb()
    {
        await using var host = Closing();
        await host.HasStudio("harbour");
        await Closed(host);
        Run(FolderOf(host), "new-admin-key");
        var file = Assert.Single(Directory.GetFiles(FolderOf(host), "admin-key-*"));
        await host.Put("/v1/studios/harbour", """{"name":"harbour"}""");
        var admin = host.ClientWith((await File.ReadAllTextAsync(file, Studio.Cancellation)).Trim());
        Assert.Equal(201, (await host.Put("/v1/channels/web", Sample.Shop, admin)).Status);
        Assert.Equal(403, (await host.Get("/v1/studios", admin)).Status);
    }

    [Fact]
    public async Task Verbs_work_on_the_studio_that_they_name_in_the_folder_of_its_host()
    {
        await using var host = Closing();
        var (harbour, tower) = (await host.HasStudio("harbour"), await host.HasStudio("tower"));
        await host.HasASmallShop(harbour);
        await host.HasASmallShop(tower);
        foreach (var path in new[] { "/v1/designs/RB-014/prices/web", "/v1/designs/RB-014" })
            Assert.Equal(204, (await host.Delete(path, harbour)).Status);
        await Closed(host);
        Assert.Contains("erased", OfStudio("harbour", "forget", "design", "RB-014"), StringComparison.Ordinal);
        foreach (var key in new[] { "harbour", "tower" })
            Assert.Contains($"{Path.Combine("studios", key, "pricefloor.db")}: schema", OfStudio(key, "check-store"), StringComparison.Ordinal);
        OfStudio("harbour", "new-admin-key");
        var file = Assert.Single(Directory.GetFiles(FolderOf(host), "admin-key-*"));
        var copy = Path.Combine(host.Folder, "copy.db");
        OfStudio("tower", "backup", copy);
        OfStudio("tower", "restore", copy);
        Assert.Equal((404, 200), ((await host.Get("/v1/designs/RB-014/revisions", harbour)).Status,
            (await host.Get("/v1/designs/RB-014/revisions", tower)).Status));
        var admin = host.ClientWith((await File.ReadAllTextAsync(file, Studio.Cancellation)).Trim());
        Assert.Equal(200, (await host.Get("/v1/keys", admin)).Status); // the host has looked since
        Assert.Contains("There is no studio \"nowhere\"", Assert.Throws<StoreException>(() => OfStudio("nowhere", "check-store")).Message,
            StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(host.Folder, "studios", "nowhere")));

        string OfStudio(string key, string verb, params string[] words) => Run(host.Folder, key, verb, words);
    }

    [Fact]
    public async Task A_key_that_ended_in_the_studios_own_store_opens_nothing_though_the_host_was_not_told()
    {
        await using var host = Closing();
        var (owner, other) = (await host.HasStudio("harbour"), await host.KeyOf("harbour", "other"));
        await Closed(host);
        using (var store = new Store(new StoreInFile(Path.Combine(FolderOf(host), "pricefloor.db")).Engine(host.Clock), host.Clock))
        {
            store.Open();
            store.Write("test", writing => writing.DeleteKey("owner"));
        }

        Assert.Equal(401, (await host.Get("/v1/version", owner)).Status);
        Assert.Equal(200, (await host.Get("/v1/version", other)).Status);
        Assert.Equal(401, (await host.Get("/v1/version", owner)).Status);
    }

    [Fact]
    public async Task A_store_that_was_lost_is_not_replaced_by_an_empty_one()
    {
        await using var host = Closing();
        var owner = await host.HasStudio("harbour");
        await Closed(host);
        File.Delete(Path.Combine(FolderOf(host), "pricefloor.db"));
        var refused = (await host.Get("/v1/profiles/main", owner)).IsProblem(503, "busy");
        Assert.NotNull(refused["Retry-After"]);
        Assert.False(File.Exists(Path.Combine(FolderOf(host), "pricefloor.db")));
        var tower = await host.HasStudio("tower");
        Assert.Equal(200, (await host.Get("/v1/version", tower)).Status); // the others are served
        Assert.Equal(204, (await host.Delete("/v1/studios/harbour?repeat=harbour")).Status);
    }

    [Fact]
    public async Task A_verb_that_has_the_folder_keeps_the_service_out_and_the_other_way_round()
    {
        await using var host = Closing();
        var owner = await host.HasStudio("harbour");
        await Closed(host);
        using (var held = new StoreLock(FolderOf(host), host.Clock))
        {
            held.Take();
            (await host.Get("/v1/version", owner)).IsProblem(503, "busy");
        }

        using var use = await host.Services.GetRequiredService<Studios>().Many!.Enter("harbour");
        using var second = new StoreLock(FolderOf(host), host.Clock);
        Assert.Throws<StoreException>(second.Take);
        Assert.Equal(200, (await host.Get("/v1/version", owner)).Status);
    }

    [Fact]
    public async Task The_store_of_each_studio_is_copied_into_its_own_folder_by_the_hour()
    {
        await using var host = HostedService.Start(with => with.UseSetting("PRICEFLOOR_STUDIOS_OPEN_BYTES", "1")
            .UseSetting("PRICEFLOOR_BACKUP_EVERY_HOURS", "12").UseSetting("PRICEFLOOR_BACKUPS_KEPT", "2"));
        var owner = await host.HasStudio("harbour");
        await host.HasStudio("tower");
        string[] folders = [host.Folder, FolderOf(host), Path.Combine(host.Folder, "studios", "tower")];
        foreach (var folder in folders)
            await Kept(host, folder, "*.db");
        var first = folders.Select(folder => Directory.GetFiles(Path.Combine(folder, "backups"), "*.db").Min()).ToList();
        foreach (var oldest in first)
            while (File.Exists(oldest)) // as others are made, it goes
                await Hour(host);
        foreach (var folder in folders)
            await Kept(host, folder, "*.sha256");

        Assert.Contains("timed backup", (await host.Get("/v1/audit", owner)).Text, StringComparison.Ordinal);
        var own = await host.Send("POST", "/v1/backups", null, owner);
        Assert.True(File.Exists(Path.Combine(FolderOf(host), "backups", own.Json.GetProperty("name").GetString()!)), own.Text);
    }

    /// <summary>Waits until a folder has the two backups that are kept.</summary>
    private static async Task Kept(Studio host, string folder, string files)
    {
        var backups = Path.Combine(folder, "backups");
        while (!Directory.Exists(backups) || Directory.GetFiles(backups, files).Length != 2)
            await Hour(host);
    }

    private static Task Hour(Studio host)
    {
        host.Clock.Advance(TimeSpan.FromHours(1));
        return Task.Delay(10, Studio.Cancellation);
    }

    /// <summary>A host that closes a studio as soon as nobody uses it.</summary>
    private static Studio Closing() => HostedService.Start(with => with.UseSetting("PRICEFLOOR_STUDIOS_OPEN_BYTES", "1"));

    private static async Task Closed(Studio host)
    {
        while (host.Services.GetRequiredService<Studios>().Many!.Count > 0)
            await Task.Delay(5, Studio.Cancellation);
    }

    private static string FolderOf(Studio host) => Path.Combine(host.Folder, "studios", "harbour");

    private static HttpClient Copy(Studio service, HttpClient client) => service.ClientWith(client.DefaultRequestHeaders.Authorization!.Parameter);

    private static string Run(string folder, string verb, params string[] words) => Run(folder, null, verb, words);

    private static string Run(string folder, string? studio, string verb, string[] words)
    {
        using var output = new StringWriter();
        var settings = new ConfigurationBuilder().AddInMemoryCollection([new("PRICEFLOOR_DATA", folder)]).Build();
        Assert.Equal(0, StoreCommands.Run(verb, words, settings, output,
            studio is null ? null : new Dictionary<string, string> { ["studio"] = studio }));
        return output.ToString();
    }
}
