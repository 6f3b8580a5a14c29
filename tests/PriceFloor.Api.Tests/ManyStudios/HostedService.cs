using System.Text.Json;
using Microsoft.AspNetCore.Hosting;
using Xunit;

namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>A service with many studios. Its client has the key of the host.</summary>
internal static class HostedService
{
    public static Studio Start(Action<IWebHostBuilder>? configure = null, bool onServer = false) => new(configure: host =>
    {
        Configure(host, onServer);
        configure?.Invoke(host);
    });

    /// <summary>Also for one that is started again on its folder.</summary>
    public static void Configure(IWebHostBuilder host, bool onServer)
    {
        host.UseSetting("PRICEFLOOR_STUDIOS", "many");
        if (onServer)
            host.UseServerStore(host.GetSetting("PRICEFLOOR_DATA")!);
    }

    /// <summary>Makes a studio; returns a client with a key of it that has these scopes, all that a studio's key may have if none is named.</summary>
    public static async Task<HttpClient> HasStudio(this Studio host, string key, string limits = "", params string[] scopes)
    {
        var made = await host.Put($"/v1/studios/{key}", $$"""{"name":"{{key}}","limits":{{(limits.Length == 0 ? "{}" : limits)}} }""");
        Assert.True(made.Status is 200 or 201, made.Text);
        return await host.KeyOf(key, "owner", scopes);
    }

    public static async Task<HttpClient> KeyOf(this Studio host, string studio, string name, params string[] scopes)
    {
        var words = scopes.Length > 0 ? scopes : ["check", "prices", "log", "read", "write", "admin"];
        var made = await host.Post($"/v1/studios/{studio}/keys", JsonSerializer.Serialize(new { name, scopes = words }));
        Assert.True(made.Status == 201, made.Text);
        return host.ClientWith(made.Json.GetProperty("key").GetString());
    }

    /// <summary>The floor of the small shop's design.</summary>
    public static async Task<string> FloorOf(this Studio host, HttpClient studio) =>
        (await host.Get("/v1/designs/RB-014/floor-price", studio)).Json.GetProperty("floor").GetRawText();

    /// <summary>The small shop of the tests, in a studio.</summary>
    public static async Task HasASmallShop(this Studio host, HttpClient studio)
    {
        foreach (var (path, document) in new[]
        {
            ("/v1/profiles/main", Sample.SmallProfile), ("/v1/designs/RB-014", Sample.Pendant), ("/v1/channels/web", Sample.Shop),
            ("/v1/designs/RB-014/prices/web", """{"price":58.00}"""),
        })
            Assert.Equal((path, 201), (path, (await host.Put(path, document, studio)).Status));
    }
}
