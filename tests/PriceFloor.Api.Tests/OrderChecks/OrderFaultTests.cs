using System.Text;
using Xunit;

namespace PriceFloor.Api.Tests.OrderChecks;

/// <summary>What is wrong with an order is reported, all of it at once, and what a key may not learn is not.</summary>
public sealed class OrderFaultTests
{
    private const string Good = """{"channel":"web","items":[{"sku":"RB-014","pieces":2,"price":58}]}""";

    [Theory]
    [InlineData("""{"items":[{"sku":"RB-014","pieces":1}]}""", "#/channel required")]
    [InlineData("""{"channel":"web"}""", "#/items required")]
    [InlineData("""{"channel":"web","items":[]}""", "#/items required")]
    [InlineData("""{"channel":"web","leastOrder":true,"gifts":[{"sku":"RB-014","pieces":1}]}""", "#/gifts unexpected")]
    [InlineData("""{"channel":"web","items":[{"sku":"RB-014","pieces":0}]}""", "#/items/0/pieces out-of-range")]
    [InlineData("""{"channel":"web","items":[{"sku":"RB-014","pieces":1.5}]}""", "#/items/0/pieces too-many-decimals")]
    [InlineData("""{"channel":"web","items":[{"sku":"RB-014","pieces":10001}]}""", "#/items/0/pieces out-of-range")]
    [InlineData("""{"channel":"web","items":[{"sku":"RB-014","pieces":1,"price":0}]}""", "#/items/0/price out-of-range")]
    [InlineData("""{"channel":"web","items":[{"sku":"RB-014","pieces":1,"price":58.001}]}""", "#/items/0/price too-many-decimals")]
    [InlineData("""{"channel":"web","items":[{"sku":"RB-014","pieces":1}],"gifts":[{"sku":"RB-014"}]}""", "#/gifts/0/pieces required")]
    [InlineData("""{"channel":"web","items":[{"sku":"RB-014","pieces":1}],"offer":{"discountShare":1}}""", "#/offer/discountShare out-of-range")]
    [InlineData("""{"channel":"web","items":[{"sku":"RB-014","pieces":1}],"offer":{"amountOff":58}}""", "#/offer/amountOff out-of-range")]
    [InlineData("""{"channel":"web","items":[{"sku":"RB-014","pieces":1}],"offer":{"amountOff":5,"shippingCharged":0}}""",
        "#/offer contradictory")]
    [InlineData("""{"channel":"web","items":[{"sku":"RB-014","pieces":1},{"sku":"OTHER","pieces":1,"price":9}]}""",
        "#/items/1/sku contradictory")]
    public async Task A_value_that_breaks_a_rule_is_named(string order, string fault)
    {
        await using var studio = await AShop();
        var problem = (await studio.Post("/v1/order-checks", order)).IsProblem(422, "invalid-input");
        Assert.Equal([fault], problem.Pointers.Zip(problem.Codes, (pointer, code) => $"{pointer} {code}"));
    }

    [Fact]
    public async Task Every_unknown_name_is_reported_at_once()
    {
        await using var studio = await AShop();
        var problem = (await studio.Post("/v1/order-checks",
            """{"channel":"WEB","items":[{"sku":"rb-014","pieces":1},{"sku":"RB-014","pieces":1}],"gifts":[{"sku":"no","pieces":1}]}"""))
            .IsProblem(422, "unknown-reference");
        Assert.Equal(["#/channel", "#/gifts/0/sku", "#/items/0/sku"], problem.Pointers);
        Assert.Contains("RB-014", problem.Text, StringComparison.Ordinal);
        using var check = await studio.ClientFor("check");
        var hidden = await studio.Post("/v1/order-checks", """{"channel":"web","items":[{"sku":"rb-014","pieces":1}]}""", check);
        Assert.DoesNotContain("RB-014", hidden.IsProblem(422, "unknown-reference").Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_has_no_price_or_another_currency_cannot_be_checked()
    {
        await using var studio = await AShop();
        var problem = (await studio.Post("/v1/order-checks", """{"channel":"fair","items":[{"sku":"RB-014","pieces":1}]}"""))
            .IsProblem(422, "cannot-compute");
        Assert.Equal(("no-price", "#/items/0/price"), (problem.Json.GetProperty("reason").GetString(), problem.Pointers[0]));
        (await studio.Post("/v1/order-checks", """{"channel":"euro","items":[{"sku":"RB-014","pieces":1,"price":58}]}"""))
            .IsProblem(422, "currency-mismatch");
        var least = (await studio.Post("/v1/order-checks", """{"channel":"euro","leastOrder":true}""")).Json.GetProperty("leastOrder");
        Assert.Equal("currency-mismatch", Assert.Single(least.GetProperty("designs").EnumerateArray()).GetProperty("reason").GetString());
        Assert.Equal(("null", "[]"), (least.GetProperty("threshold").GetRawText(), least.GetProperty("never").GetRawText()));
    }

    [Fact]
    public async Task Each_key_learns_what_it_may()
    {
        await using var studio = await AShop();
        using var verdict = await studio.ClientFor("verdict");
        using var check = await studio.ClientFor("check");
        // 60,000 a year over 2,000 hours is 30.00 an hour, and a piece takes two of them: 60.00 each, so 120.00 for both.
        Assert.StartsWith("""{"verdict":"below-floor","carriesItsShare":false,"currency":"USD","basis":""",
            (await studio.Post("/v1/order-checks", Good, verdict)).Text, StringComparison.Ordinal);
        Assert.StartsWith("""{"verdict":"below-floor","carriesItsShare":false,"currency":"USD","total":116.00,"leastTotal":120.00,"basis":""",
            (await studio.Post("/v1/order-checks", Good, check)).Text, StringComparison.Ordinal);
        foreach (var client in new[] { verdict, check })
        {
            (await studio.Post("/v1/order-checks?workings=true", Good, client)).IsProblem(403, "key-not-allowed");
            (await studio.Post("/v1/order-checks", """{"channel":"web","leastOrder":true}""", client)).IsProblem(403, "key-not-allowed");
        }

        var held = await studio.Post("/v1/keys", """{"name":"held","scopes":["read"],"profiles":["main"]}""");
        var other = await studio.Post("/v1/order-checks", """{"channel":"web","items":[{"sku":"OTHER","pieces":1,"price":9}]}""",
            studio.ClientWith(held.Json.GetProperty("key").GetString()));
        other.IsProblem(422, "unknown-reference");
    }

    [Fact]
    public async Task Only_the_price_is_warned_about_without_read()
    {
        await using var studio = await AShop();
        await studio.Has("/v1/channels/web", """{"sells":"retail","currency":"USD","priceStep":5}""");
        using var check = await studio.ClientFor("check");
        var warning = Assert.Single((await studio.Post("/v1/order-checks", Good, check)).Json.GetProperty("warnings").EnumerateArray());
        Assert.Equal(("not-an-allowed-price", "#/items/0/price"),
            (warning.GetProperty("code").GetString(), warning.GetProperty("pointer").GetString()));
    }

    [Fact]
    public async Task An_answer_is_as_it_was_at_any_time()
    {
        await using var studio = await AShop();
        studio.Clock.Advance(TimeSpan.FromSeconds(5));
        var before = studio.Clock.GetUtcNow().ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture);
        var then = await studio.Post("/v1/order-checks", """{"channel":"web","items":[{"sku":"RB-014","pieces":1}],"leastOrder":true}""");
        studio.Clock.Advance(TimeSpan.FromDays(1));
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":99.00}""");
        Assert.Equal(then.Text, (await studio.Post($"/v1/order-checks?asOf={before}",
            """{"channel":"web","items":[{"sku":"RB-014","pieces":1}],"leastOrder":true}""")).Text);
    }

    private static async Task<Studio> AShop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/web", """{"sells":"retail","currency":"USD"}""");
        await studio.Has("/v1/channels/fair", """{"sells":"retail","currency":"USD"}""");
        await studio.Has("/v1/channels/euro", """{"sells":"retail","currency":"EUR"}""");
        await studio.Has("/v1/designs/RB-014/prices/euro", """{"price":58.00}""");
        await studio.Has("/v1/profiles/second", Sample.SmallProfile);
        await studio.Has("/v1/designs/OTHER", """{"profile":"second","making":{"piecesPerDay":4}}""");
        return studio;
    }
}
