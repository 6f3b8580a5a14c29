using System.Text;
using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>A studio goes from one service to another: export, import, export.</summary>
public class TransferTests
{
    private protected virtual bool IsOnServer => ServerStore.IsForAll;

    [Fact]
    public async Task A_studio_that_was_moved_answers_as_before_with_its_own_keys()
    {
        await using var from = HostedService.Start(onServer: IsOnServer);
        await using var to = HostedService.Start(onServer: IsOnServer);
        var owner = await from.HasStudio("harbour");
        await from.HasASmallShop(owner);
        await from.Put("/v1/designs/RB-014/prices/web", """{"price":61.00}""", owner);
        await from.Send("POST", "/v1/movements/batch?source=book",
            """[{"ref":"1","on":"2027-01-01","sku":"RB-014","channel":"web","pieces":1,"price":58}]""", owner);
        var cursor = (await from.Get("/v1/floor-changes", owner)).Json.GetProperty("next").GetString();
        var export = await from.Get("/v1/studios/harbour/export");
        Assert.Equal((200, "application/x-ndjson", "no-store"), (export.Status, export.ContentType, export["Cache-Control"]));
        var head = await from.Send("HEAD", "/v1/studios/harbour/export", null);
        Assert.Equal((200, "", export["Content-Length"]), (head.Status, head.Text, head["Content-Length"]));
        Assert.DoesNotContain(owner.DefaultRequestHeaders.Authorization!.Parameter!, export.Text, StringComparison.Ordinal);

        Assert.Equal(201, (await to.Put("/v1/studios/port", """{"name":"The same, elsewhere"}""")).Status);
        var imported = await Import(to, "port", export.Text);
        Assert.True(imported.Status == 200, imported.Text);
        Assert.Equal((4, export.Text.Split('\n').Length - 2),
            (imported.Json.GetProperty("documents").GetInt32(), imported.Json.GetProperty("lines").GetInt32()));

        var moved = to.ClientWith(owner.DefaultRequestHeaders.Authorization!.Parameter);
        foreach (var path in new[] { "/v1/designs/RB-014/floor-price?workings=true", "/v1/designs/RB-014/prices/web/revisions", "/v1/profiles/main" })
            Assert.Equal((path, (await from.Get(path, owner)).Text), (path, (await to.Get(path, moved)).Text));
        Assert.Equal(1, (await to.Get("/v1/movements", moved)).Json.GetProperty("items").GetArrayLength());
        Assert.Equal(422, (await to.Get($"/v1/floor-changes?since={cursor}", moved)).Status);
        Assert.Equal(WithoutLife(export.Text), WithoutLife((await to.Get("/v1/studios/port/export")).Text));
        var next = await to.Put("/v1/designs/RB-014/prices/web", """{"price":63.00}""", moved);
        Assert.True(int.Parse(next["ETag"]!.Trim('"'), System.Globalization.CultureInfo.InvariantCulture) > 1000);

        var twice = await Import(to, "port", export.Text);
        Assert.Equal((409, "/problems/in-use"), (twice.Status, twice.Json.GetProperty("type").GetString()));
    }

    [Fact]
    public async Task A_copy_beside_the_first_opens_with_no_key_of_the_first()
    {
        await using var host = HostedService.Start(onServer: IsOnServer);
        var owner = await host.HasStudio("harbour");
        await host.HasASmallShop(owner);
        await host.Put("/v1/studios/copy", """{"name":"A copy"}""");
        Assert.Equal(200, (await Import(host, "copy", (await host.Get("/v1/studios/harbour/export")).Text)).Status);
        Assert.Equal(201, (await host.Put("/v1/channels/only-here", Sample.Shop, owner)).Status);
        var second = await host.KeyOf("copy", "second");
        Assert.Equal((200, 404), ((await host.Get("/v1/profiles/main", second)).Status, (await host.Get("/v1/channels/only-here", second)).Status));
    }

    [Fact]
    public async Task An_export_that_was_cut_or_changed_stores_nothing()
    {
        await using var host = HostedService.Start(onServer: IsOnServer);
        var owner = await host.HasStudio("harbour");
        await host.HasASmallShop(owner);
        var whole = (await host.Get("/v1/studios/harbour/export")).Text;
        await host.Put("/v1/studios/port", """{"name":"x"}""");
        var lines = whole.TrimEnd('\n').Split('\n');
        foreach (var broken in new[]
        {
            "", "\n", "{}", whole[..^20], string.Join('\n', lines[..^1]) + "\n", whole.Replace("58", "59", StringComparison.Ordinal),
            string.Join('\n', lines.Where((_, n) => n != 2)) + "\n", whole + "{}\n", whole.Replace("\n", "\r\n", StringComparison.Ordinal),
        })
        {
            var refused = (await Import(host, "port", broken)).IsProblem(400, "unreadable-request");
            Assert.True(refused.Json.GetProperty("errors")[0].GetProperty("line").GetInt32() >= 1);
        }

        Assert.Equal(415, (await host.Send("POST", "/v1/studios/port/import", "{}")).Status);
        Assert.Equal(404, (await Import(host, "nowhere", whole)).Status);
        Assert.Equal(200, (await host.Put("/v1/studios/port", """{"name":"x","limits":{"documents":3}}""")).Status);
        (await Import(host, "port", whole)).IsProblem(422, "quota");
        Assert.Equal(200, (await host.Put("/v1/studios/port", """{"name":"x"}""")).Status);
        Assert.Equal(200, (await Import(host, "port", whole)).Status);
    }

    private static Task<Answer> Import(Studio host, string studio, string export) =>
        host.SendBytes("POST", $"/v1/studios/{studio}/import", Encoding.UTF8.GetBytes(export), "application/x-ndjson");

    /// <summary>All but the life and what counts it.</summary>
    private static string WithoutLife(string export)
    {
        var lines = export.TrimEnd('\n').Split('\n');
        Assert.True(JsonDocument.Parse(lines[0]).RootElement.TryGetProperty("life", out _));
        return string.Join('\n', lines[1..^1]);
    }
}
