using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.PriceLists;

public sealed class PriceListTests
{
    [Fact]
    public async Task Every_design_is_in_order_of_key_with_its_listed_price()
    {
        await using var studio = await AShop();
        var list = (await studio.Get("/v1/price-list?channel=web")).Json;
        Assert.Equal(["B-1 31.00 60.00 null null", "RB-014 61.74 120.00 58.00 \"below-floor\""], Rows(list));
        Assert.Equal("""{"profiles":["main@1","other@1"],"channels":["web@1"]}""", list.GetProperty("basis").GetRawText());
        Assert.Equal(["B-1/abroad", "B-1/web", "RB-014/abroad", "RB-014/web"], (await studio.Get("/v1/price-list"))
            .Json.GetProperty("items").EnumerateArray().Select(row => $"{row.GetProperty("sku")}/{row.GetProperty("channel")}"));
    }

    [Fact]
    public async Task It_is_narrowed_by_profile_and_by_verdict()
    {
        await using var studio = await AShop();
        Assert.Equal(["B-1 31.00 60.00 null null"], Rows((await studio.Get("/v1/price-list?channel=web&profile=other")).Json));
        Assert.Equal(["RB-014 61.74 120.00 58.00 \"below-floor\""], Rows((await studio.Get("/v1/price-list?verdict=below-floor")).Json));
        Assert.Empty(Rows((await studio.Get("/v1/price-list?verdict=meets-target")).Json));
        Assert.Equal(["channel", "profile"], (await studio.Get("/v1/price-list?channel=x&profile=y")).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["verdict"], (await studio.Get("/v1/price-list?verdict=good")).IsProblem(422, "invalid-input").Pointers);
    }

    [Fact]
    public async Task A_shop_that_polls_gets_304_until_something_in_it_moved()
    {
        await using var studio = await AShop();
        var tag = (await studio.Get("/v1/price-list?channel=web"))["ETag"]!;
        async Task<(int, string)> Poll()
        {
            var answer = await studio.Send("GET", "/v1/price-list?channel=web", null, headers: ("If-None-Match", tag));
            (tag, var same) = (answer["ETag"]!, answer["ETag"] == tag);
            return (answer.Status, same ? "same" : "another");
        }

        Assert.Equal((304, "same"), await Poll());
        await studio.Put("/v1/channels/abroad", """{"sells":"retail","currency":"EUR","name":"Abroad"}"""); // not in this list
        Assert.Equal((304, "same"), await Poll());
        foreach (var (path, body) in new[]
        {
            ("/v1/designs/RB-014/prices/web", """{"price":70}"""),
            ("/v1/designs/B-1", """{"profile":"other","making":{"piecesPerDay":9}}"""),
            ("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "25000", StringComparison.Ordinal)),
            ("/v1/channels/web", Sample.Shop.Replace("0.024", "0.034", StringComparison.Ordinal)),
        })
        {
            await studio.Put(path, body);
            Assert.Equal((200, "another"), await Poll());
            Assert.Equal((304, "same"), await Poll());
        }

        await studio.Delete("/v1/designs/B-1");
        Assert.Equal((200, "another"), await Poll());
    }

    [Fact]
    public async Task A_list_of_an_earlier_time_is_as_it_was()
    {
        await using var studio = await AShop();
        var before = (await studio.Get("/v1/price-list")).Text;
        studio.Clock.Advance(TimeSpan.FromDays(30));
        await studio.Put("/v1/designs/RB-014/prices/web", """{"price":99}""");
        await studio.Delete("/v1/designs/B-1");
        Assert.Equal(before, (await studio.Get("/v1/price-list?asOf=2027-01-10T00:00:00Z")).Text);
        Assert.NotEqual(before, (await studio.Get("/v1/price-list")).Text);
    }

    [Fact]
    public async Task Who_may_only_check_gets_all_of_it()
    {
        await using var studio = await AShop();
        using var shop = await studio.ClientFor("check");
        // 58.00 nets 56.358 of 60.00: what it is short by reveals costs.
        var all = (await studio.Get("/v1/price-list")).Text;
        Assert.Contains("\"shortBy\":3.65", all, StringComparison.Ordinal);
        Assert.Equal(all.Replace(",\"shortBy\":3.65", "", StringComparison.Ordinal), (await studio.Get("/v1/price-list", shop)).Text);
        (await studio.Get("/v1/price-list?sort=short-by", shop)).IsProblem(403, "key-not-allowed");
        Assert.DoesNotContain("shortBy", (await studio.Get("/v1/price-list", shop, ("Accept", "text/csv"))).Text, StringComparison.Ordinal);
        using var verdict = await studio.ClientFor("verdict");
        (await studio.Get("/v1/price-list", verdict)).IsProblem(403, "key-not-allowed");
    }

    [Fact]
    public async Task As_a_sheet_it_has_a_tag_of_its_own_and_no_cell_runs_as_a_formula()
    {
        await using var studio = await AShop();
        await studio.Put("/v1/designs/B-1", """{"name":"=cmd","profile":"other","making":{"piecesPerDay":8}}""");
        var sheet = await studio.Get("/v1/price-list?channel=web&dialect=semicolon", null, ("Accept", "text/csv"));
        Assert.Equal("sku;name;channel;currency;floorPrice;targetPrice;listedPrice;verdict;reason;shortBy\r\nB-1;'=cmd;web;USD;31,00;60,00;;;;\r\n"
            + "RB-014;;web;USD;61,74;120,00;58,00;below-floor;;3,65\r\n", sheet.Text);
        Assert.NotEqual((await studio.Get("/v1/price-list?channel=web"))["ETag"], sheet["ETag"]);
        Assert.Equal(304, (await studio.Get("/v1/price-list?channel=web&dialect=semicolon", null, ("Accept", "text/csv"),
            ("If-None-Match", sheet["ETag"]!))).Status);
    }

    [Fact]
    public async Task A_listed_price_off_the_grid_is_warned_about()
    {
        await using var studio = await AShop();
        await studio.Put("/v1/channels/web",
            Sample.Shop.Replace("\"sells\"", "\"priceStep\":1,\"priceEnding\":0.5,\"sells\"", StringComparison.Ordinal));
        Assert.Equal("#/items/1/listedPrice",
            (await studio.Get("/v1/price-list?channel=web")).Json.GetProperty("warnings")[0].GetProperty("pointer").GetString());
    }

    /// <summary>60.00 for a pendant on one profile, 30.00 for another piece on a profile of its own: (30 + 0.25) / 0.976 = 31.00.</summary>
    private static async Task<Studio> AShop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/profiles/other", Sample.SmallProfile);
        await studio.Has("/v1/designs/B-1", """{"profile":"other","making":{"piecesPerDay":8}}""");
        await studio.Has("/v1/channels/abroad", """{"sells":"retail","currency":"EUR"}""");
        return studio;
    }

    private static IEnumerable<string> Rows(JsonElement list) => list.GetProperty("items").EnumerateArray().Select(row =>
        $"{row.GetProperty("sku").GetString()} {row.GetProperty("floorPrice").GetRawText()} {row.GetProperty("targetPrice").GetRawText()} "
        + $"{row.GetProperty("listedPrice").GetRawText()} {row.GetProperty("verdict").GetRawText()}");

    [Fact]
    public async Task If_there_is_no_floor_the_list_the_changes_and_the_history_say_why_as_the_floor_price_does()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/IDLE", """{"profile":"main","making":{"piecesPerDay":4}}""");
        var since = (await studio.Get("/v1/floor-changes")).Json.GetProperty("next").GetString();
        // The maker leaves the bench to helpers, so pieces counted by the day take no bench time.
        Assert.Equal(200, (await studio.Put("/v1/profiles/main",
            """{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8,"benchShare":0},"helpers":[{"benchHoursPerYear":100}],"expenses":[{"amount":1000,"per":"year"}]}""")).Status);
        var why = (await studio.Get("/v1/designs/IDLE/floor-price")).IsProblem(422, "cannot-compute").Json.GetProperty("reason").GetString();
        Assert.Equal("no-bench-time", why);

        var listed = (await studio.Get("/v1/price-list?channel=web")).Json.GetProperty("items").EnumerateArray()
            .Single(item => item.GetProperty("sku").GetString() == "IDLE");
        Assert.Equal(why, listed.GetProperty("reason").GetString());
        Assert.Contains($"IDLE,,web,USD,,,,,{why}", (await studio.Get("/v1/price-list?channel=web", null, ("Accept", "text/csv"))).Text,
            StringComparison.Ordinal);
        Assert.Equal(why,
            (await studio.Get("/v1/designs/IDLE/floor-history?channel=web")).Json.GetProperty("items")[1].GetProperty("reason").GetString());

        var moved = (await studio.Get($"/v1/floor-changes?since={since}")).Json.GetProperty("items").EnumerateArray()
            .First(item => item.GetProperty("sku").GetString() == "IDLE");
        Assert.Equal((System.Text.Json.JsonValueKind.Null, why),
            (moved.GetProperty("newFloorPrice").ValueKind, moved.GetProperty("reason").GetString()));
    }

    [Theory]
    [InlineData("application/json")]
    [InlineData("text/csv")]
    public async Task With_a_limit_the_pages_are_the_whole_list(string format)
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/fair", """{"sells":"retail","currency":"USD"}""");
        foreach (var sku in new[] { "A.1", "B", "C" })
            await studio.Has($"/v1/designs/{sku}", """{"profile":"main","making":{"piecesPerDay":4}}""");
        var whole = Rows((await studio.Get("/v1/price-list", null, ("Accept", format))).Text);
        Assert.Equal(8, whole.Count);

        var got = new List<string>();
        for (var path = "/v1/price-list?limit=3"; path.Length > 0;)
        {
            var page = await studio.Get(path, null, ("Accept", format));
            got.AddRange(Rows(page.Text));
            Assert.Equal(304, (await studio.Get(path, null, ("Accept", format), ("If-None-Match", page["ETag"]!))).Status);
            path = page["Link"] is { } link ? link[1..link.IndexOf('>', StringComparison.Ordinal)] : "";
        }

        Assert.Equal(whole, got);

        List<string> Rows(string text) => format == "text/csv" ? [.. text.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1)]
            : [.. System.Text.Json.JsonDocument.Parse(text).RootElement.GetProperty("items").EnumerateArray().Select(item => item.GetRawText())];
    }
}
