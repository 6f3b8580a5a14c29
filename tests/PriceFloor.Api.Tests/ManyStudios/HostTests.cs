using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.ManyStudios;
using Xunit;

namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>A host with a file for each studio.</summary>
public class HostTests
{
    private protected virtual bool IsOnServer => ServerStore.IsForAll;

    [Fact]
    public async Task A_studio_is_made_limited_listed_and_forgotten()
    {
        await using var host = Start();
        var made = await host.Put("/v1/studios/harbour", """{"name":"Harbour studio"}""");
        Assert.Equal((201, "\"1\"", "/v1/studios/harbour"), (made.Status, made["ETag"], made["Location"]));
        Assert.Equal(200, (await host.Put("/v1/studios/harbour", """{"name":"Harbour studio"}""")).Status);
        Assert.Equal(412, (await host.Put("/v1/studios/harbour", """{"name":"x"}""", null, ("If-Match", "\"7\""))).Status);
        Assert.Equal("\"2\"",
            (await host.Put("/v1/studios/harbour", """{"name":"x","limits":{"documents":3}}""", null, ("If-Match", "\"1\"")))["ETag"]);
        await host.HasStudio("tower");
        var page = await host.Get("/v1/studios?limit=1");
        Assert.Equal(("harbour", "harbour"),
            (page.Json.GetProperty("items")[0].GetProperty("key").GetString(), page.Json.GetProperty("next").GetString()));
        Assert.Equal("tower", (await host.Get("/v1/studios?after=harbour")).Json.GetProperty("items")[0].GetProperty("key").GetString());

        var harbour = await host.KeyOf("harbour", "shop");
        Assert.Equal(201, (await host.Put("/v1/profiles/main", Sample.SmallProfile, harbour)).Status);
        Assert.Equal(!IsOnServer, File.Exists(Path.Combine(host.Folder, "studios/harbour/pricefloor.db")));
        Assert.Equal(422, (await host.Delete("/v1/studios/harbour")).Status);
        Assert.Equal(422, (await host.Delete("/v1/studios/harbour?repeat=tower")).Status);
        Assert.Equal(412, (await host.Delete("/v1/studios/harbour?repeat=harbour", null, ("If-Match", "\"1\""))).Status);
        Assert.Equal(200, (await host.Get("/v1/profiles/main", harbour)).Status);
        Assert.Equal(204, (await host.Delete("/v1/studios/harbour?repeat=harbour", null, ("If-Match", "\"2\""))).Status);
        Assert.False(Directory.Exists(Path.Combine(host.Folder, "studios/harbour")));
        Assert.Equal(401, (await host.Get("/v1/profiles/main", harbour)).Status);
        Assert.Equal(404, (await host.Delete("/v1/studios/harbour?repeat=harbour")).Status);
        Assert.Equal(404, (await host.Post("/v1/studios/harbour/keys", """{"name":"a","scopes":["read"]}""")).Status);
        Assert.False(Directory.Exists(Path.Combine(host.Folder, "studios/harbour"))); // asking makes nothing

        var again = await host.HasStudio("harbour"); // another studio of that name has nothing of the one before
        Assert.Equal((0, 404), ((await host.Get("/v1/designs", again)).Json.GetProperty("items").GetArrayLength(),
            (await host.Get("/v1/profiles/main/revisions", again)).Status));
    }

    [Theory]
    [InlineData("Harbour"), InlineData("a_b"), InlineData("-a"), InlineData("a.b"), InlineData("a~"), InlineData("a%2Fb")]
    public async Task A_studio_has_a_key_that_can_name_a_folder(string key)
    {
        await using var host = Start();
        var refused = await host.Put($"/v1/studios/{key}", """{"name":"x"}""");
        Assert.Equal((422, "bad-key"), (refused.Status, refused.Json.GetProperty("errors")[0].GetProperty("code").GetString()));
        Assert.False(Directory.Exists(Path.Combine(host.Folder, "studios")));
    }

    [Fact]
    public async Task The_host_reads_nothing_of_a_studio_and_a_studio_has_no_host()
    {
        await using var host = Start();
        var harbour = await host.HasStudio("harbour");
        await host.HasASmallShop(harbour);
        foreach (var path in new[]
        {
            "/v1/profiles/main", "/v1/designs", "/v1/price-list?channel=web", "/v1/price-checks?sku=RB-014&channel=web&price=58",
        })
            Assert.Equal((path, 403), (path, (await host.Get(path)).Status));
        Assert.Equal(403, (await host.Put("/v1/profiles/main", Sample.SmallProfile)).Status);
        foreach (var path in new[] { "/v1/studios", "/v1/studios/harbour" })
            Assert.Equal((path, 403), (path, (await host.Get(path, harbour)).Status));
        Assert.Equal(403, (await host.Send("DELETE", "/v1/studios/harbour?repeat=harbour", null, harbour)).Status);
        Assert.Equal(422, (await host.Send("POST", "/v1/keys", """{"name":"a","scopes":["host"]}""", harbour)).Status);
        Assert.Equal(422, (await host.Post("/v1/studios/harbour/keys", """{"name":"a","scopes":["host"]}""")).Status);
        Assert.Equal(422, (await host.Post("/v1/keys", """{"name":"a","scopes":["read"]}""")).Status);
        Assert.Equal(201, (await host.Post("/v1/keys", """{"name":"second","scopes":["host"]}""")).Status);
        Assert.Equal(["first-admin-key", "second"],
            (await host.Get("/v1/keys")).Json.GetProperty("items").EnumerateArray().Select(key => key.GetProperty("name").GetString()));
    }

    [Fact]
    public async Task With_one_studio_nobody_has_the_scope_host()
    {
        await using var studio = new Studio();
        Assert.Contains("PRICEFLOOR_STUDIOS", (await studio.Get("/v1/studios")).IsProblem(403, "key-not-allowed").Text, StringComparison.Ordinal);
        Assert.Equal(422, (await studio.Post("/v1/keys", """{"name":"a","scopes":["host"]}""")).Status);
    }

    [Fact]
    public async Task Limits_hold_and_say_what_is_used()
    {
        await using var host = Start();
        var small = await host.HasStudio("small", """{"documents":2,"keys":2}""");
        Assert.Equal(201, (await host.Put("/v1/profiles/main", Sample.SmallProfile, small)).Status);
        Assert.Equal(201, (await host.Put("/v1/channels/web", Sample.Shop, small)).Status);
        var refused = await host.Put("/v1/channels/stall", Sample.Shop, small);
        Assert.Equal((422, "/problems/quota", 2, 2), (refused.Status, refused.Json.GetProperty("type").GetString(),
            refused.Json.GetProperty("limit").GetInt32(), refused.Json.GetProperty("used").GetInt32()));
        Assert.Equal(404, (await host.Get("/v1/channels/stall", small)).Status);
        Assert.Equal(204, (await host.Delete("/v1/channels/web", small)).Status);
        Assert.Equal(201, (await host.Put("/v1/channels/stall", Sample.Shop, small)).Status);

        await host.KeyOf("small", "second");
        foreach (var third in new[] { await host.Post("/v1/studios/small/keys", """{"name":"third","scopes":["read"]}"""),
            await host.Send("POST", "/v1/keys", """{"name":"third","scopes":["read"]}""", small) })
            Assert.Equal((422, "/problems/quota"), (third.Status, third.Json.GetProperty("type").GetString()));

        Assert.Equal(200, (await host.Put("/v1/studios/small", """{"name":"x","limits":{"megabytes":0}}""")).Status); // holds at once
        var full = await host.Put("/v1/channels/fair", Sample.Shop, small);
        Assert.Equal((422, 0), (full.Status, full.Json.GetProperty("limit").GetInt32()));
        Assert.True(full.Json.GetProperty("used").GetInt64() > 0);
        var line = await host.Send("POST", "/v1/bench-log/batch?source=book", """[{"ref":"1","on":"2027-01-02","minutes":60}]""", small);
        Assert.Equal(422, line.Status);
        Assert.Equal(200, (await host.Get("/v1/profiles/main", small)).Status);
        Assert.Equal(200, (await host.Put("/v1/studios/small", """{"name":"x"}""")).Status);
        Assert.Equal(201, (await host.Put("/v1/channels/fair", Sample.Shop, small)).Status);
    }

    [Fact]
    public async Task Keys_of_a_studio_are_made_rotated_and_deleted_in_it()
    {
        await using var host = Start();
        var (harbour, tower) = (await host.HasStudio("harbour"), await host.HasStudio("tower"));
        var made = await host.Send("POST", "/v1/keys", """{"name":"shop","scopes":["check"]}""", harbour);
        var shop = host.ClientWith(made.Json.GetProperty("key").GetString());
        Assert.Equal(200, (await host.Get("/v1/version", shop)).Status);
        Assert.Equal(201, (await host.Send("POST", "/v1/keys", """{"name":"shop","scopes":["check"]}""", tower)).Status); // the same name elsewhere

        var rotated = await host.Send("POST", "/v1/keys/shop/rotation", null, harbour);
        var next = host.ClientWith(rotated.Json.GetProperty("key").GetString());
        Assert.Equal((200, 200), ((await host.Get("/v1/version", shop)).Status, (await host.Get("/v1/version", next)).Status));
        host.Clock.Advance(TimeSpan.FromHours(25));
        Assert.Equal((401, 200), ((await host.Get("/v1/version", shop)).Status, (await host.Get("/v1/version", next)).Status));
        Assert.Equal("2027-01-03T10:00:00.000000Z", (await host.Get("/v1/keys/shop", harbour)).Json.GetProperty("lastUsed").GetString());
        Assert.False((await host.Get("/v1/keys/shop", tower)).Json.TryGetProperty("lastUsed", out _));
        Assert.Equal(204, (await host.Delete("/v1/keys/shop", harbour)).Status);
        Assert.Equal(401, (await host.Get("/v1/version", next)).Status);
        Assert.Equal(200, (await host.Get("/v1/keys/shop", tower)).Status);

        await using var again = await host.Restarted(with => HostedService.Configure(with, IsOnServer));
        Assert.Equal((401, 200), ((await again.Get("/v1/version", Copy(again, next))).Status,
            (await again.Get("/v1/version", Copy(again, tower))).Status));
    }

    [Fact]
    public async Task Idle_studios_are_closed_and_opened_again_when_asked()
    {
        await using var host = Start(with => with.UseSetting("PRICEFLOOR_STUDIOS_OPEN_BYTES", "1"));
        var studios = new List<HttpClient>();
        for (var n = 0; n < 5; n++)
        {
            studios.Add(await host.HasStudio($"studio-{n}"));
            Assert.Equal(201, (await host.Put("/v1/profiles/main", Sample.SmallProfile, studios[n])).Status);
        }

        foreach (var studio in studios)
            Assert.Equal(200, (await host.Get("/v1/profiles/main", studio)).Status);
        Assert.InRange(host.Services.GetRequiredService<Studios>().Many!.Count, 0, 2);
        await Task.WhenAll(Enumerable.Range(0, 100).Select(async n =>
            Assert.Equal(200, (await host.Get("/v1/profiles/main", studios[n % 5])).Status)));
    }

    [Fact]
    public async Task A_store_of_one_kind_is_not_served_as_the_other()
    {
        await using var host = Start();
        await host.HasStudio("harbour");
        var folder = await host.Stopped();
        await using var one = new Studio(configure: with => OnFolder(with, with.GetSetting("PRICEFLOOR_DATA")!));
        await one.HasASmallShop();
        var ofOne = await one.Stopped();
        foreach (var (data, setting) in new[] { (folder, "one"), (ofOne, "many") })
            Assert.ThrowsAny<Exception>(() =>
                new Studio(configure: with => OnFolder(with, data).UseSetting("PRICEFLOOR_STUDIOS", setting)));
        if (IsOnServer)
            return;
        await using var moved = new Studio(configure: with => with.UseSetting("PRICEFLOOR_DATA", Path.Combine(folder, "studios/harbour")));
        Assert.Equal(401, (await moved.Get("/v1/profiles")).Status); // a studio's folder is a data folder of its own, with its own keys
    }

    private Studio Start(Action<IWebHostBuilder>? configure = null) => HostedService.Start(configure, IsOnServer);

    private IWebHostBuilder OnFolder(IWebHostBuilder with, string folder)
    {
        if (IsOnServer)
            with.UseServerStore(folder);
        return with.UseSetting("PRICEFLOOR_DATA", folder);
    }

    private static HttpClient Copy(Studio service, HttpClient client) => service.ClientWith(client.DefaultRequestHeaders.Authorization!.Parameter);
}
