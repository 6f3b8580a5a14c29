using System.Text;
using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.ListedPrices;

/// <summary>One design under several names with prices of their own: the blue one for 38, the green one for 42.</summary>
public sealed class ListedNameTests
{
    [Fact]
    public async Task A_sheet_lists_the_names_of_a_design_at_their_own_prices()
    {
        await using var studio = await AShop();
        var stored = await List(studio, "sku,channel,price\ndrop-blue,web,38\n\"Drop, green / large\",web,42\n");
        Assert.Equal("""
            {"items":[{"sku":"DROP","channel":"web","alias":"drop-blue","result":"created","revision":1},
            {"sku":"DROP","channel":"web","alias":"Drop, green / large","result":"created","revision":1}],
            "summary":{"created":2,"changed":0,"unchanged":0}}
            """.ReplaceLineEndings(""), stored.Json.GetRawText());
        Assert.Equal(["DROP: ", "DROP drop-blue: 38.00", "DROP Drop, green / large: 42.00"],
            Lines(await studio.Get("/v1/price-list?channel=web")).OrderBy(line => line.Length));
        (await studio.Get("/v1/designs/DROP/prices/web")).IsProblem(404, "not-found"); // nobody has listed the design by its key
    }

    [Fact]
    public async Task A_name_has_an_address_of_its_own_with_revisions()
    {
        await using var studio = await AShop();
        var made = await studio.Put("/v1/designs/drop-blue/prices/web", """{"price":38}""");
        Assert.Equal((201, "/v1/designs/drop-blue/prices/web"), (made.Status, made["Location"]));
        Assert.Equal(200, (await studio.SendBytes("PATCH", "/v1/designs/drop-blue/prices/web",
            """{"price":39}"""u8.ToArray(), "application/merge-patch+json")).Status);
        var now = await studio.Get("/v1/designs/drop-blue/prices/web");
        Assert.Equal(("DROP", "web", "drop-blue", "39.00", "\"2\""), (now.Json.GetProperty("sku").GetString(),
            now.Json.GetProperty("channel").GetString(), now.Json.GetProperty("alias").GetString(), now.Json.GetProperty("price").GetRawText(),
            now["ETag"]));
        Assert.Equal(200, (await studio.Put("/v1/designs/drop-blue/prices/web", now.Text)).Status); // what GET gave can be put back
        Assert.Equal(2, (await studio.Get("/v1/designs/drop-blue/prices/web/revisions")).Json.GetProperty("items").GetArrayLength());
        Assert.Equal("38.00", (await studio.Get("/v1/designs/drop-blue/prices/web/revisions/1")).Json.GetProperty("price").GetRawText());
        Assert.Equal(204, (await studio.Delete("/v1/designs/drop-blue/prices/web")).Status);
        (await studio.Get("/v1/designs/drop-blue/prices/web")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task A_name_with_spaces_and_a_slash_has_one_too()
    {
        await using var studio = await AShop();
        const string Path = "/v1/designs/Drop,%20green%20%2F%20large/prices/web";
        Assert.Equal(201, (await studio.Put(Path, """{"price":42}""")).Status);
        Assert.Equal("Drop, green / large", (await studio.Get(Path)).Json.GetProperty("alias").GetString());
        Assert.Equal(["web/Drop, green / large"], (await studio.Get("/v1/designs/DROP/prices")).Json.GetProperty("items").EnumerateArray()
            .Select(price => $"{price.GetProperty("channel").GetString()}/{price.GetProperty("alias").GetString()}"));
        (await studio.Put("/v1/designs/drop-red/prices/web", """{"price":42}""")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task A_shop_that_knows_a_design_by_one_other_name_lists_the_design()
    {
        await using var studio = await AShop();
        Assert.Equal("""{"sku":"DROP","channel":"web","result":"created","revision":1}""",
            (await List(studio, "sku,channel,price\ndrop-blue,web,38\n")).Json.GetProperty("items")[0].GetRawText());
        Assert.Equal(["DROP: 38.00"], Lines(await studio.Get("/v1/price-list?channel=web")));
    }

    [Fact]
    public async Task A_name_that_has_a_price_of_its_own_keeps_it_in_the_next_sheet()
    {
        await using var studio = await AShop();
        await List(studio, "sku,channel,price\nDROP,web,40\ndrop-blue,web,38\n");
        await List(studio, "sku,channel,price\ndrop-blue,web,39\n");
        Assert.Equal(["DROP: 40.00", "DROP drop-blue: 39.00"], Lines(await studio.Get("/v1/price-list?channel=web")));
    }

    [Fact]
    public async Task The_same_name_twice_is_refused_at_its_line()
    {
        await using var studio = await AShop();
        var refused = (await List(studio, "sku,channel,price\ndrop-blue,web,38\nDROP,web,40\ndrop-blue,web,39\n")).IsProblem(422, "invalid-input");
        Assert.Equal(["duplicate 4"], Faults(refused));
    }

    [Fact]
    public async Task A_name_below_the_floor_is_seen_and_fixed_as_a_line_of_its_own()
    {
        await using var studio = await AShop();
        var floor = (await studio.Get("/v1/price-list?channel=web")).Json.GetProperty("items")[0].GetProperty("floorPrice").GetDecimal();
        await List(studio, FormattableString.Invariant($"sku,channel,price\nDROP,web,{floor}\ndrop-blue,web,{floor - 0.01m}\n"));
        var list = (await studio.Get("/v1/price-list?channel=web&verdict=below-floor")).Json.GetProperty("items");
        Assert.Equal(["drop-blue"], list.EnumerateArray().Select(item => item.GetProperty("alias").GetString()));
        Assert.Equal(["drop-blue"], (await studio.Get("/v1/remedies?channel=web")).Json.GetProperty("items").EnumerateArray()
            .Select(item => item.GetProperty("alias").GetString()));
    }

    [Fact]
    public async Task A_list_in_pages_goes_through_the_names()
    {
        await using var studio = await AShop();
        await List(studio, "sku,channel,price\ndrop-blue,web,38\n\"Drop, green / large\",web,42\nDROP,web,40\n");
        var (seen, after) = (new List<string>(), "");
        do
        {
            var page = await studio.Get($"/v1/price-list?channel=web&limit=1{after}");
            seen.AddRange(Lines(page));
            after = page.Json.GetProperty("next").GetString() is { } next ? "&after=" + Uri.EscapeDataString(next) : "";
        }
        while (after.Length > 0);
        Assert.Equal(Lines(await studio.Get("/v1/price-list?channel=web")), seen);
        Assert.Equal(3, seen.Count);
    }

    [Fact]
    public async Task The_price_list_as_a_sheet_comes_back_as_a_listing()
    {
        await using var studio = await AShop();
        await List(studio, "sku,channel,price\ndrop-blue,web,38\n\"Drop, green / large\",web,42\nDROP,web,40\n");
        var sheet = (await studio.Get("/v1/price-list?channel=web", null, ("Accept", "text/csv"))).Text;
        var again = await List(studio, sheet, "?priceColumn=listedPrice");
        Assert.Equal("""{"created":0,"changed":0,"unchanged":3}""", again.Json.GetProperty("summary").GetRawText());
    }

    [Fact]
    public async Task What_is_ordered_by_a_name_costs_what_is_listed_under_it()
    {
        await using var studio = await AShop();
        await List(studio, "sku,channel,price\nDROP,web,40\ndrop-blue,web,38\n");
        // 2 x 38 + 1 x 40 = 116
        var order = await studio.Post("/v1/order-checks", """{"channel":"web","items":[{"sku":"drop-blue","pieces":2},{"sku":"DROP","pieces":1}]}""");
        Assert.Equal("116.00", order.Json.GetProperty("total").GetRawText());
    }

    [Fact]
    public async Task Buyers_see_a_line_for_each_name()
    {
        await using var studio = await AShop();
        await List(studio, "sku,channel,price\ndrop-blue,web,38\n\"Drop, green / large\",web,42\n");
        Assert.Equal(["Drop, green / large 42.00", "drop-blue 38.00"], (await studio.Get("/v1/line-sheet?channel=web")).Json.GetProperty("items")
            .EnumerateArray().Select(item => $"{item.GetProperty("sku").GetString()} {item.GetProperty("price").GetRawText()}"));
    }

    [Fact]
    public async Task A_name_cannot_leave_its_design_while_a_price_is_listed_under_it()
    {
        await using var studio = await AShop();
        await List(studio, "sku,channel,price\nDROP,web,40\ndrop-blue,web,38\n");
        var refused = (await studio.Put("/v1/designs/DROP", Design("[]"))).IsProblem(409, "in-use");
        Assert.Equal("""[{"kind":"price","key":"DROP/web/drop-blue"}]""", refused.Json.GetProperty("usedBy").GetRawText());
        Assert.Equal(204, (await studio.Delete("/v1/designs/drop-blue/prices/web")).Status);
        Assert.Equal(200, (await studio.Put("/v1/designs/DROP", Design("[]"))).Status);
        await studio.Put("/v1/designs/DROP", Design("""["drop-blue"]"""));
        await List(studio, "sku,channel,price\nDROP,web,40\ndrop-blue,web,38\n");
        Assert.Equal(204, (await studio.Delete("/v1/designs/DROP")).Status); // its prices go with it
        (await studio.Get("/v1/designs/drop-blue/prices/web")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task The_price_of_a_name_moves_no_floor_and_no_target()
    {
        await using var studio = await AShop();
        var before = (await studio.Get("/v1/designs/DROP/floor-price")).Json;
        await studio.Put("/v1/designs/drop-blue/prices/web", """{"price":380}""");
        var after = (await studio.Get("/v1/designs/DROP/floor-price")).Json;
        Assert.Equal(before.GetRawText(), after.GetRawText());
        Assert.DoesNotContain((await studio.Get("/v1/floor-changes?since=2027-01-01T00:00:00Z")).Json.GetProperty("items").EnumerateArray()
, item => item.GetProperty("sku").GetString() == "drop-blue");
    }

    private static IEnumerable<string> Lines(Answer list) => list.Json.GetProperty("items").EnumerateArray().Select(item =>
        item.GetProperty("sku").GetString() + (item.TryGetProperty("alias", out var alias) ? " " + alias.GetString() : "")
        + ": " + (item.GetProperty("listedPrice") is { ValueKind: JsonValueKind.Number } price ? price.GetRawText() : ""));

    private static IEnumerable<string> Faults(Answer problem) => problem.Json.GetProperty("errors").EnumerateArray()
        .Select(error => $"{error.GetProperty("code").GetString()} {error.GetProperty("line").GetInt32()}");

    private static string Design(string aliases) => $$"""{"profile":"main","making":{"piecesPerDay":8},"aliases":{{aliases}}}""";

    private static Task<Answer> List(Studio studio, string sheet, string query = "") =>
        studio.SendBytes("POST", "/v1/listed-prices/batch" + query, Encoding.UTF8.GetBytes(sheet), "text/csv");

    private static async Task<Studio> AShop()
    {
        var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        await studio.Has("/v1/channels/web", Sample.Shop);
        await studio.Has("/v1/designs/DROP", Design("""["drop-blue","Drop, green / large"]"""));
        return studio;
    }
}
