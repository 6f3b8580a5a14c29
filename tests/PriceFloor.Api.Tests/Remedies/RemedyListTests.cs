using Xunit;

namespace PriceFloor.Api.Tests.Remedies;

/// <summary>Every listed price that falls short, in one answer: pieces of 60.00 and 30.00, listed on a web shop that keeps 2.4 % and 0.25.</summary>
public sealed class RemedyListTests
{
    [Fact]
    public async Task Every_price_that_falls_short_is_there_with_what_is_enough_alone()
    {
        await using var studio = await AShop();
        var items = (await studio.Get("/v1/remedies")).Json.GetProperty("items").EnumerateArray().ToList();
        // 58.00 nets 56.358 of 60.00; 20.00 nets 19.27 of 30.00.
        Assert.Equal(["RB-014 web 3.65", "ST-001 web 10.73"],
            items.Select(one =>
                $"{one.GetProperty("sku").GetString()} {one.GetProperty("channel").GetString()} {one.GetProperty("shortBy").GetRawText()}"));
        var alone = (await studio.Get("/v1/designs/ST-001/remedies?channel=web")).Json.GetProperty("remedies").EnumerateArray()
            .Where(one => one.GetProperty("possible").GetBoolean()).Select(one => one.GetRawText());
        Assert.Equal(alone, items[1].GetProperty("remedies").EnumerateArray().Select(one => one.GetRawText()));
    }

    [Fact]
    public async Task The_worst_comes_first_where_that_is_asked_and_pages_follow_the_keys()
    {
        await using var studio = await AShop();
        Assert.Equal(["ST-001", "RB-014"], Skus(await studio.Get("/v1/remedies?sort=short-by")));
        Assert.Equal(["ST-001"], Skus(await studio.Get("/v1/remedies?sort=short-by&limit=1")));
        var first = await studio.Get("/v1/remedies?limit=1");
        Assert.Equal(["RB-014"], Skus(first));
        Assert.Equal("RB-014/web", first.Json.GetProperty("next").GetString());
        Assert.Contains("rel=\"next\"", first["Link"], StringComparison.Ordinal);
        var second = await studio.Get("/v1/remedies?limit=1&after=RB-014/web");
        Assert.Equal(["ST-001"], Skus(second));
        Assert.Equal(System.Text.Json.JsonValueKind.Null, second.Json.GetProperty("next").ValueKind);
        Assert.Equal(["after"], (await studio.Get("/v1/remedies?sort=short-by&after=RB-014/web")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["ST-001", "RB-014"], Skus(await studio.Get("/v1/price-list?sort=short-by&channel=web&verdict=below-floor")));
    }

    [Fact]
    public async Task Toward_the_target_those_that_only_miss_it_are_there_too()
    {
        await using var studio = await AShop();
        await studio.Put("/v1/designs/RB-014/prices/web", """{"price":100}""");
        Assert.Equal(["ST-001"], Skus(await studio.Get("/v1/remedies")));
        var items = (await studio.Get("/v1/remedies?toward=target")).Json.GetProperty("items").EnumerateArray().ToList();
        Assert.Equal(["RB-014", "ST-001"], items.Select(one => one.GetProperty("sku").GetString()));
        Assert.Equal(("0.00", "120.00"), (items[0].GetProperty("shortBy").GetRawText(),
            items[0].GetProperty("remedies")[0].GetProperty("after").GetRawText()));
        // 100.00 goes with a wholesale price of 50.00: 50 / 30 = 1.6667 h, 100 minutes.
        var faster = (await studio.Get("/v1/designs/RB-014/remedies?channel=web&toward=target&workings=true")).Json;
        Assert.Equal("100.00", faster.GetProperty("remedies").EnumerateArray()
            .Single(one => one.GetProperty("remedy").GetString() == "work-faster").GetProperty("after").GetRawText());
        Assert.Contains(faster.GetProperty("workings").EnumerateArray(), one => one.GetProperty("symbol").GetString() == "toTargetMostForTheFloor");
    }

    [Fact]
    public async Task As_a_sheet_it_has_a_column_for_each_way()
    {
        await using var studio = await AShop();
        var sheet = await studio.Get("/v1/remedies", null, ("Accept", "text/csv"));
        var lines = sheet.Text.Split("\r\n");
        Assert.StartsWith("sku,name,channel,currency,listedPrice,verdict,shortBy,raise-the-price,work-faster,spend-less,", lines[0],
            StringComparison.Ordinal);
        Assert.StartsWith("RB-014,,web,USD,58.00,below-floor,3.65,61.74,112.71,3642.00,", lines[1], StringComparison.Ordinal);
        Assert.Equal(304, (await studio.Get("/v1/remedies", null, ("Accept", "text/csv"), ("If-None-Match", sheet["ETag"]!))).Status);
    }

    [Fact]
    public async Task What_is_unknown_is_named_and_a_key_without_read_learns_nothing()
    {
        await using var studio = await AShop();
        Assert.Equal(["channel", "profile"], (await studio.Get("/v1/remedies?channel=x&profile=y")).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["toward"], (await studio.Get("/v1/remedies?toward=x")).IsProblem(422, "invalid-input").Pointers);
        using var check = await studio.ClientFor("check");
        (await studio.Get("/v1/remedies", check)).IsProblem(403, "key-not-allowed");
    }

    private static List<string?> Skus(Answer answer) =>
        [.. answer.Json.GetProperty("items").EnumerateArray().Select(one => one.GetProperty("sku").GetString())];

    private static async Task<Studio> AShop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/ST-001", """{"profile":"main","making":{"piecesPerDay":8}}""");
        await studio.Has("/v1/designs/ST-001/prices/web", """{"price":20}""");
        await studio.Has("/v1/designs/OK-001", """{"profile":"main","making":{"piecesPerDay":8}}""");
        await studio.Has("/v1/designs/OK-001/prices/web", """{"price":90}""");
        return studio;
    }
}
