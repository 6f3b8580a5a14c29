using System.Globalization;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.ManyStudios;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.ManyStudios;

/// <summary>What the host or a studio did at one process holds with the next request at another.</summary>
public sealed class TwoHostsTests
{
    [Fact]
    public async Task A_studio_that_was_made_at_one_works_at_the_other_and_both_write_to_it()
    {
        await using var both = new TwoHosts();
        var owner = await both.One.HasStudio("harbour");
        var there = both.AtOther(owner);
        Assert.Equal(201, (await both.Other.Put("/v1/profiles/main", Sample.SmallProfile, there)).Status);
        for (var round = 0; round < 10; round++)
        {
            var (path, pendant) = ("/v1/designs/RB-014", PerDay(round + 1));
            var written = await (round % 2 == 0 ? both.One.Put(path, pendant, owner) : both.Other.Put(path, pendant, there));
            Assert.Equal($"\"{round + 1}\"", written["ETag"]);
            Assert.Equal(await both.One.FloorOf(owner), await both.Other.FloorOf(there));
        }

        Assert.Equal((await both.One.Get("/v1/audit", owner)).Text, (await both.Other.Get("/v1/audit", there)).Text);
    }

    [Fact]
    public async Task A_key_that_was_made_or_deleted_at_one_is_so_at_the_other()
    {
        await using var both = new TwoHosts();
        var owner = await both.One.HasStudio("harbour");
        var there = both.AtOther(owner);
        for (var round = 0; round < 6; round++)
        {
            var key = await both.One.KeyOf("harbour", $"shop-{round}", "read");
            Assert.Equal(200, (await both.Other.Get("/v1/designs", both.AtOther(key))).Status);
            Assert.Equal(204, (await both.Other.Delete($"/v1/keys/shop-{round}", there)).Status);
            Assert.Equal((401, 401), ((await both.One.Get("/v1/designs", key)).Status,
                (await both.Other.Get("/v1/designs", both.AtOther(key))).Status));
        }
    }

    [Fact]
    public async Task A_key_that_ended_in_the_studio_opens_nothing_at_the_other_though_the_host_was_not_told()
    {
        await using var both = new TwoHosts();
        var owner = await both.One.HasStudio("harbour");
        var (shop, there) = (await both.One.KeyOf("harbour", "shop"), both.AtOther(owner));
        Assert.Equal(200, (await both.Other.Get("/v1/designs", both.AtOther(shop))).Status);
        using (var use = await both.One.Services.GetRequiredService<Studios>().Enter("harbour"))
            await use.Studio.Store.WriteAsync("test", writing => writing.DeleteKey("shop")); // and then the process ends
        Assert.Equal(401, (await both.Other.Get("/v1/designs", both.AtOther(shop))).Status);
        Assert.Equal(200, (await both.Other.Get("/v1/designs", there)).Status);
    }

    [Fact]
    public async Task Limits_that_were_changed_at_one_hold_at_the_other()
    {
        await using var both = new TwoHosts();
        var owner = await both.One.HasStudio("harbour");
        var there = both.AtOther(owner);
        Assert.Equal(201, (await both.Other.Put("/v1/channels/web", Sample.Shop, there)).Status);
        Assert.Equal(200, (await both.One.Put("/v1/studios/harbour", """{"name":"x","limits":{"documents":2}}""")).Status);
        Assert.Equal(201, (await both.One.Put("/v1/channels/stall", Sample.Shop, owner)).Status); // counted by both
        (await both.Other.Put("/v1/channels/fair", Sample.Shop, there)).IsProblem(422, "quota");
        Assert.Equal(204, (await both.One.Delete("/v1/channels/web", owner)).Status);
        Assert.Equal(201, (await both.Other.Put("/v1/channels/fair", Sample.Shop, there)).Status);
        (await both.One.Put("/v1/channels/web", Sample.Shop, owner)).IsProblem(422, "quota");
        Assert.Equal(200, (await both.One.Put("/v1/studios/harbour", """{"name":"x","limits":{"keys":1}}""")).Status);
        (await both.Other.Send("POST", "/v1/keys", """{"name":"second","scopes":["read"]}""", there)).IsProblem(422, "quota");
    }

    [Fact]
    public async Task One_that_was_forgotten_at_one_is_gone_at_the_other_and_another_of_its_key_has_nothing_of_it()
    {
        await using var both = new TwoHosts();
        for (var round = 0; round < 3; round++)
        {
            var owner = await both.One.HasStudio("harbour");
            var there = both.AtOther(owner);
            Assert.Equal(404, (await both.Other.Get("/v1/channels/web", there)).Status);
            Assert.Equal(201, (await both.Other.Put("/v1/channels/web", Sample.Shop, there)).Status);
            Assert.Equal(204, (await both.One.Delete("/v1/studios/harbour?repeat=harbour")).Status);
            Assert.Equal(401, (await both.Other.Get("/v1/channels/web", there)).Status);
            Assert.Equal(404, (await both.Other.Get("/v1/studios/harbour")).Status);
        }
    }

    [Fact]
    public async Task What_a_process_left_that_ended_while_it_forgot_a_studio_goes_when_the_next_one_starts()
    {
        await using var both = new TwoHosts();
        await both.One.HasASmallShop(await both.One.HasStudio("harbour"));
        var tower = await both.One.HasStudio("tower");
        await both.One.Services.GetRequiredService<Studios>().Own.Store.WriteAsync("test", writing => writing.Delete("studio", "harbour"));
        Assert.Equal(["first", "studios/harbour", "studios/tower"], both.Rows()); // and then the process ends
        await using var third = both.Third();
        Assert.Equal(200, (await third.Get("/v1/studios")).Status);
        Assert.Equal(["first", "studios/tower"], both.Rows());
        Assert.Equal(200, (await third.Get("/v1/keys", TwoHosts.At(third, tower))).Status);
        await both.Other.HasASmallShop(await both.Other.HasStudio("harbour")); // another of that key
        Assert.Equal(["first", "studios/harbour", "studios/tower"], both.Rows());
    }

    [Fact]
    public async Task A_write_that_is_under_way_while_its_studio_is_forgotten_stores_nothing()
    {
        await using var both = new TwoHosts();
        await both.One.HasStudio("harbour");
        using var use = await both.Other.Services.GetRequiredService<Studios>().Enter("harbour");
        Assert.Equal(204, (await both.One.Delete("/v1/studios/harbour?repeat=harbour")).Status);
        await Assert.ThrowsAsync<StoreGoneException>(() => use.Studio.Store.WriteAsync("test", writing => writing.Save("design", "a", "{}", [])));
        await Assert.ThrowsAsync<StoreGoneException>(() => use.Studio.Store.ReadAsync(snapshot => snapshot.List("design")).AsTask());
    }

    [Fact]
    public async Task What_was_imported_at_one_is_served_by_the_other()
    {
        await using var both = new TwoHosts();
        var owner = await both.One.HasStudio("harbour");
        await both.One.HasASmallShop(owner);
        var export = (await both.Other.Get("/v1/studios/harbour/export")).Text;
        var second = await both.Other.HasStudio("spare"); // open there, and empty
        Assert.Equal(404, (await both.Other.Get("/v1/profiles/main", second)).Status);
        Assert.Equal(204, (await both.One.Delete("/v1/studios/harbour?repeat=harbour")).Status);
        Assert.Equal(201, (await both.Other.Put("/v1/studios/port", """{"name":"Port"}""")).Status);
        Assert.Equal(200, (await both.One.SendBytes("POST", "/v1/studios/port/import", System.Text.Encoding.UTF8.GetBytes(export),
            "application/x-ndjson")).Status);
        Assert.Equal(200, (await both.Other.Get("/v1/designs/RB-014/floor-price", both.AtOther(owner))).Status);
        Assert.Equal(404, (await both.Other.Get("/v1/profiles/main", second)).Status);
    }

    private static string PerDay(int pieces) => """{"profile":"main","making":{"piecesPerDay":N}}"""
        .Replace("N", pieces.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);
}
