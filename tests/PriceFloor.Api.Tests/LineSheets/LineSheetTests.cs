using PriceFloor.Api.Tests.PriceLists;
using Xunit;

namespace PriceFloor.Api.Tests.LineSheets;

/// <summary>What buyers of a channel may be shown, on a studio with two retail channels, shops and a gallery.</summary>
public sealed class LineSheetTests
{
    [Fact]
    public async Task A_shop_sees_its_price_and_what_nobody_sells_below()
    {
        await using var studio = await AStudio();
        // RB-014 is listed at 58.00 on web and 60.00 at the fair: the lower. B-1 is only sold to shops: 2.5 times 28.50 = 71.25.
        Assert.Equal("""
            {"channel":"shops","studioName":"Glass <on> fire","sells":"wholesale","currency":"USD","day":"2027-01-02","taxIncluded":false,"minimumOrder":180.00,
            "orderTerms":"Paid within 30 days.","items":[{"sku":"B-1","name":null,"price":28.50,"suggestedRetail":71.25},
            {"sku":"RB-014","name":"River drop","price":29.00,"suggestedRetail":58.00}]}
            """.ReplaceLineEndings(""), (await studio.Get("/v1/line-sheet?channel=shops", await studio.ClientFor("check"))).Text);
        Assert.Equal("sku,name,price,suggestedRetail,currency\r\nB-1,,28.50,71.25,USD\r\nRB-014,River drop,29.00,58.00,USD\r\n",
            (await studio.Get("/v1/line-sheet?channel=shops", null, ("Accept", "text/csv"))).Text);
    }

    [Fact]
    public async Task Sales_tax_in_the_shop_s_price_is_taken_out_before_it_is_multiplied()
    {
        await using var studio = await AStudio();
        await studio.Has("/v1/channels/shops", """{"sells":"wholesale","currency":"USD","salesTax":{"rate":0.2,"included":true}}""");
        // 28.50 / 1.2 = 23.75, times 2.5 = 59.375, up
        Assert.Equal(59.38m,
            (await studio.Get("/v1/line-sheet?channel=shops")).Json.GetProperty("items")[0].GetProperty("suggestedRetail").GetDecimal());
    }

    [Fact]
    public async Task A_stall_shows_retail_prices_and_nothing_of_what_shops_pay()
    {
        await using var studio = await AStudio();
        var sheet = await studio.Get("/v1/line-sheet?channel=fair");
        Assert.Equal(["RB-014 60.00"], sheet.Json.GetProperty("items").EnumerateArray()
            .Select(item => $"{item.GetProperty("sku").GetString()} {item.GetProperty("price").GetRawText()}"));
        Assert.DoesNotMatch("suggestedRetail|shopShare|minimumOrder|orderTerms|29\\.00", sheet.Text);
    }

    [Fact]
    public async Task A_gallery_reads_the_share_that_it_keeps()
    {
        await using var studio = await AStudio();
        await studio.Has("/v1/channels/gallery", """{"sells":"retail","currency":"USD","shopShare":0.45,"salesTax":{"rate":0.1,"included":true}}""");
        await studio.Has("/v1/designs/RB-014/prices/gallery", """{"price":66}""");
        Assert.Equal("0.45", (await studio.Get("/v1/line-sheet?channel=gallery")).Json.GetProperty("shopShare").GetRawText());
        Assert.Contains("<p>You keep 45 % of the price before sales tax.</p>", (await studio.Get("/v1/line-sheet.html?channel=gallery")).Text,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_is_for_buyers()
    {
        await using var studio = await AStudio();
        var page = await studio.Get("/v1/line-sheet.html?channel=shops", await studio.ClientFor("check"));
        Assert.Equal((200, "text/html"), (page.Status, page.ContentType));
        Assert.Contains("<h1>Glass &lt;on&gt; fire</h1>\n<p>Shops by the dozen, 2027-01-02. Prices in USD.</p>", page.Text,
            StringComparison.Ordinal);
        Assert.Equal(["B-1|B-1|28.50|71.25", "River drop|RB-014|29.00|58.00"], PrintedRows.Of(page.Text));
        Assert.Contains("<footer><p>Smallest order: 180.00 USD.</p><p>Paid within 30 days.</p></footer>", page.Text, StringComparison.Ordinal);
        // nothing of its floor, its floor price and its target price
        Assert.DoesNotMatch("(?i)floor|target|verdict|60\\.00|61\\.74|<script|https?:|@[0-9]",
            page.Text[page.Text.IndexOf("<body>", StringComparison.Ordinal)..]);
        Assert.Equal("default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'",
            page["Content-Security-Policy"]);
    }

    [Fact]
    public async Task The_maker_alone_is_warned_of_a_price_below_its_floor_and_of_retail_that_undercuts_shops()
    {
        await using var studio = await AStudio();
        var sheet = (await studio.Get("/v1/line-sheet?channel=shops")).Json.GetProperty("warnings").EnumerateArray().ToList();
        // shops pay 29.00, times the profile's 2.5 = 72.50 that no price at retail may be below: web lists 58.00, the fair 60.00
        Assert.Equal(new[] { ("fair", "60.00"), ("web", "58.00") }.Select(listed => $"#/items/1/price \"{listed.Item1}\" lists \"RB-014\" at "
            + $"{listed.Item2}, and 2.5 times what shops pay is 72.50 before sales tax: it undercuts shops that buy wholesale."), sheet
            .Where(warning => warning.GetProperty("code").GetString() == "retail-undercuts-shops")
            .Select(warning => $"{warning.GetProperty("pointer").GetString()} {warning.GetProperty("message").GetString()}").Order());
        // the floor prices of the price list: both of the shops' prices are below them
        var floors = (await studio.Get("/v1/price-list?channel=shops")).Json.GetProperty("items").EnumerateArray().ToList();
        Assert.All(floors, item => Assert.Equal("below-floor", item.GetProperty("verdict").GetString()));
        Assert.Equal(floors.Select((item, i) => $"#/items/{i}/price {item.GetProperty("floorPrice").GetRawText()}"), sheet
            .Where(warning => warning.GetProperty("code").GetString() == "below-floor")
            .Select(warning => $"{warning.GetProperty("pointer").GetString()} "
                + warning.GetProperty("message").GetString()!.Split("floor price is ")[1].Split(": such")[0]));
    }

    [Fact]
    public async Task A_name_in_words_stands_under_the_design_and_a_name_like_a_code_under_the_code()
    {
        await using var studio = await AStudio();
        await AddNames(studio);
        Assert.Equal(["River drop|RB-014|29.00|58.00", "River midnight|RB-014|31.00|58.00", "River drop|rb-green|30.00|57.00"],
            PrintedRows.Of((await studio.Get("/v1/line-sheet.html?channel=shops")).Text).Skip(1));
        // programs order by sku, so that stays the name with the price
        Assert.Equal(["RB-014 River drop", "River midnight River midnight", "rb-green River drop"],
            (await studio.Get("/v1/line-sheet?channel=shops")).Json.GetProperty("items").EnumerateArray().Skip(1)
                .Select(item => $"{item.GetProperty("sku").GetString()} {item.GetProperty("name").GetString()}"));
    }

    [Fact]
    public async Task A_warning_says_when_a_name_is_sold_at_the_price_of_its_design()
    {
        await using var studio = await AStudio();
        await AddNames(studio);
        var undercut = (await studio.Get("/v1/line-sheet?channel=shops")).Json.GetProperty("warnings").EnumerateArray()
            .Where(warning => warning.GetProperty("code").GetString() == "retail-undercuts-shops")
            .Select(warning => warning.GetProperty("pointer").GetString() + " "
                + warning.GetProperty("message").GetString()!.Split(", and 2.5 times")[0]).ToList();
        Assert.Contains("#/items/2/price \"web\" lists \"River midnight\" at 58.00 "
            + "(the price of \"RB-014\": the name has none of its own there)", undercut);
        Assert.Contains("#/items/3/price \"web\" lists \"rb-green\" at 57.00", undercut);
        Assert.Contains("#/items/1/price \"web\" lists \"RB-014\" at 58.00", undercut);
    }

    [Fact]
    public async Task A_buyer_s_page_and_sheet_and_a_key_that_may_only_check_never_see_a_warning()
    {
        await using var studio = await AStudio();
        var check = await studio.ClientFor("check");
        foreach (var sheet in new[]
        {
            await studio.Get("/v1/line-sheet?channel=shops", check),
            await studio.Get("/v1/line-sheet.html?channel=shops"),
            await studio.Get("/v1/line-sheet?channel=shops", null, ("Accept", "text/csv")),
        })
            Assert.DoesNotMatch("(?i)warning|floor|undercut", sheet.Text[Math.Max(0, sheet.Text.IndexOf("<body>", StringComparison.Ordinal))..]);
    }

    [Fact]
    public async Task Sales_tax_is_named_only_where_there_is_some()
    {
        await using var studio = await AStudio();
        await studio.Has("/v1/channels/shops", """{"sells":"wholesale","currency":"USD","salesTax":{"rate":0.2}}""");
        Assert.Contains("Prices in USD, before sales tax.</p>", (await studio.Get("/v1/line-sheet.html?channel=shops")).Text,
            StringComparison.Ordinal);
        await studio.Has("/v1/channels/shops", """{"sells":"wholesale","currency":"USD","salesTax":{"rate":0.2,"included":true}}""");
        Assert.Contains("Prices in USD, sales tax included.</p>", (await studio.Get("/v1/line-sheet.html?channel=shops")).Text,
            StringComparison.Ordinal);
        Assert.Contains(". Prices in USD.</p>", (await studio.Get("/v1/line-sheet.html?channel=fair")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_not_listed_is_not_offered_and_an_empty_sheet_says_so()
    {
        await using var studio = await AStudio();
        await studio.Has("/v1/channels/empty", """{"sells":"retail","currency":"USD"}""");
        Assert.Contains("Nothing is listed here.", (await studio.Get("/v1/line-sheet.html?channel=empty")).Text, StringComparison.Ordinal);
        Assert.Equal("""{"channel":"empty","studioName":null,"sells":"retail","currency":"USD","day":"2027-01-02","taxIncluded":false,"""
            + "\"items\":[],\"warnings\":[]}",
            (await studio.Get("/v1/line-sheet?channel=empty")).Text);
    }

    [Fact]
    public async Task A_sheet_for_nobody_is_refused()
    {
        await using var studio = await AStudio();
        Assert.Equal(["channel"], (await studio.Get("/v1/line-sheet")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["channel", "profile"], (await studio.Get("/v1/line-sheet?channel=x&profile=y")).IsProblem(422, "unknown-reference").Pointers);
        (await studio.Get("/v1/line-sheet?channel=shops", await studio.ClientFor("verdict"))).IsProblem(403, "key-not-allowed");
    }

    [Fact]
    public async Task A_smallest_order_has_the_decimals_of_its_currency() =>
        Assert.Equal(["#/minimumOrder"], (await new Studio().Put("/v1/channels/x", """{"sells":"wholesale","currency":"JPY","minimumOrder":100.5}"""))
            .IsProblem(422, "invalid-input").Pointers);

    /// <summary>One name in words and one like a code, both sold to shops; only the second has a price of its own on web.</summary>
    private static async Task AddNames(Studio studio)
    {
        await studio.Has("/v1/designs/RB-014",
            """{"name":"River drop","profile":"main","making":{"piecesPerDay":4},"aliases":["River midnight","rb-green"]}""");
        await studio.Has("/v1/designs/River%20midnight/prices/shops", """{"price":31}""");
        await studio.Has("/v1/designs/rb-green/prices/shops", """{"price":30}""");
        await studio.Has("/v1/designs/rb-green/prices/web", """{"price":57}""");
    }

    private static async Task<Studio> AStudio()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        var profile = await studio.Get("/v1/profiles/main");
        await studio.Has("/v1/profiles/main", profile.Text
            .Replace("\"currency\"", "\"studioName\":\"Glass <on> fire\",\"currency\"", StringComparison.Ordinal)
            .Replace("\"retailMultiple\":2", "\"retailMultiple\":2.5", StringComparison.Ordinal));
        await studio.Has("/v1/designs/RB-014", """{"name":"River drop","profile":"main","making":{"piecesPerDay":4}}""");
        await studio.Has("/v1/designs/B-1", Sample.Pendant);
        await studio.Has("/v1/channels/fair", """{"sells":"retail","currency":"USD","stall":{"cost":100,"pieces":20}}""");
        await studio.Has("/v1/channels/abroad", """{"sells":"retail","currency":"EUR"}""");
        await studio.Has("/v1/channels/shops",
            """{"name":"Shops by the dozen","sells":"wholesale","currency":"USD","minimumOrder":180,"orderTerms":"Paid within 30 days."}""");
        foreach (var (listed, price) in new[]
        {
            ("RB-014/prices/web", 58),
            ("RB-014/prices/fair", 60),
            ("RB-014/prices/abroad", 40),
            ("RB-014/prices/shops", 29),
        })
            await studio.Has("/v1/designs/" + listed, $$"""{"price":{{price}}}""");
        await studio.Has("/v1/designs/B-1/prices/shops", """{"price":28.50}""");
        return studio;
    }
}
