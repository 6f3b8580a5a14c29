using Xunit;

namespace PriceFloor.Api.Tests.PriceLists;

/// <summary>The price list as a page to print. A browser shows whether it prints well: see .ci/pictures.</summary>
public sealed class PricePageTests
{
    [Fact]
    public async Task It_is_one_page_with_a_table_for_each_channel()
    {
        await using var studio = await AShop();
        var page = await studio.Get("/v1/price-list", null, ("Accept", "text/html"));
        Assert.Equal((200, "text/html", "Accept"), (page.Status, page.ContentType, page["Vary"]));
        Assert.Equal(["abroad, EUR", "Own shop (web), USD"], PrintedRows.HeadingsOf(page.Text));
        Assert.Contains("<h1>Prices, 2027-01-02</h1>", page.Text, StringComparison.Ordinal);
        Assert.Contains("From the costs and hours of main, and from", page.Text, StringComparison.Ordinal);
        Assert.Equal(page.Text, (await studio.Get("/v1/price-list.html", null, ("Accept", "application/json"))).Text);
    }

    [Fact]
    public async Task Each_row_says_what_the_listed_price_does_in_words()
    {
        await using var studio = await AShop();
        Assert.Equal(["B-1|B-1|61.74|120.00|not listed", "River &lt;drop&gt;|RB-014|61.74|120.00|58.00|below the floor"],
            PrintedRows.Of((await studio.Get("/v1/price-list.html?channel=web")).Text));
        Assert.Contains("other currency", (await studio.Get("/v1/price-list.html?channel=abroad")).Text, StringComparison.Ordinal);
        Assert.Single(PrintedRows.Of((await studio.Get("/v1/price-list.html?verdict=below-floor")).Text));
        Assert.Contains("Nothing is listed here.", (await studio.Get("/v1/price-list.html?verdict=meets-target")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_says_nothing_of_keys_and_revisions()
    {
        await using var studio = await AShop();
        var page = (await studio.Get("/v1/price-list.html")).Text;
        Assert.Contains("<th scope=\"col\" class=\"code\">Code</th>", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("(?i)\\bkeys?\\b|@[0-9]", page);
    }

    [Fact]
    public async Task It_needs_nothing_from_elsewhere_and_reveals_no_costs()
    {
        await using var studio = await AShop();
        var page = await studio.Get("/v1/price-list.html", await studio.ClientFor("check"));
        Assert.Equal(200, page.Status);
        Assert.DoesNotMatch("(?i)<script|<link|<img|<iframe|@import|url\\(|https?:|\\bon[a-z]+=", page.Text);
        Assert.DoesNotContain("60.00", page.Text, StringComparison.Ordinal); // the floor itself, and the wholesale price
        Assert.Equal("default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'",
            page["Content-Security-Policy"]);
        (await studio.Get("/v1/price-list.html", await studio.ClientFor("verdict"))).IsProblem(403, "key-not-allowed");
    }

    [Fact]
    public async Task A_page_is_of_its_day_and_known_all_that_day()
    {
        await using var studio = await AShop();
        var today = await studio.Get("/v1/price-list.html");
        Assert.Equal(304, (await studio.Get("/v1/price-list.html", null, ("If-None-Match", today["ETag"]!))).Status);
        studio.Clock.Advance(TimeSpan.FromDays(1));
        var tomorrow = await studio.Get("/v1/price-list.html", null, ("If-None-Match", today["ETag"]!));
        Assert.Equal(200, tomorrow.Status);
        Assert.Contains("Prices, 2027-01-03", tomorrow.Text, StringComparison.Ordinal);
        Assert.Contains("Prices, 2027-01-02", (await studio.Get("/v1/price-list.html?asOf=2027-01-02T12:00:00Z")).Text, StringComparison.Ordinal);
    }

    private static async Task<Studio> AShop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/RB-014", """{"name":"River <drop>","profile":"main","making":{"piecesPerDay":4}}""");
        await studio.Has("/v1/designs/B-1", Sample.Pendant);
        await studio.Has("/v1/channels/web", Sample.Shop.Replace("\"sells\"", "\"name\":\"Own shop\",\"sells\"", StringComparison.Ordinal));
        await studio.Has("/v1/channels/abroad", """{"sells":"retail","currency":"EUR"}""");
        return studio;
    }
}
