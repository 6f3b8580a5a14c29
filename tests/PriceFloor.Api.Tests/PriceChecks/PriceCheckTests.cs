using Xunit;

namespace PriceFloor.Api.Tests.PriceChecks;

public sealed class PriceCheckTests
{
    private const string Basis = "\"basis\":{\"profile\":\"main@1\",\"design\":\"RB-014@1\",\"channel\":\"web@1\"}";

    [Fact]
    public async Task A_price_below_the_floor_says_what_is_missing()
    {
        // 58.00 less 2.4 % and 0.25 leaves 56.358; the floor is 60.00: 3.642 short. 56.358 over 2 bench hours pays 28.179 an hour.
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var posted = await studio.Post("/v1/price-checks", """{"sku":"RB-014","channel":"web","price":58.00}""");
        Assert.Equal(
            """{"verdict":"below-floor","carriesItsShare":false,"floorPrice":61.74,"targetPrice":120.00,"price":58.00,"currency":"USD","netProceeds":56.36,"aboveFloor":-3.64,"earnedPerBenchHour":28.18,"perBenchHour":30.00,"takeHomePerHourAtThisPrice":16.18,""" + Basis + ""","assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/calendar/normalUse","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1},{"pointer":"#/channel/usualDiscount","value":0},{"pointer":"#/channel/lossShare","value":0},{"pointer":"#/channel/salesTax","value":0},{"pointer":"#/channel/returns","value":0},{"pointer":"#/channel/selling","value":0}],"warnings":[{"code":"channel-costs-not-traced","message":"The channel charges for fees while no expense of that kind is traced to sales; these costs may be counted twice.","pointer":"#/channel/fees"}]}""",
            posted.Text);
        Assert.Equal(posted.Text, (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58.00")).Text);
        Assert.Equal(posted.Text, (await studio.Post("/v1/price-checks", """{"price":"58","channel":"web","sku":"RB-014","currency":"USD"}""")).Text);
    }

    [Theory]
    [InlineData("61.73", "below-floor", false)] // 61.73 x 0.976 - 0.25 = 59.99848
    [InlineData("61.74", "below-target", true)] // 60.00824
    [InlineData("119.99", "below-target", true)]
    [InlineData("120.00", "meets-target", true)]
    public async Task The_verdict_turns_at_the_exact_cent(string price, string verdict, bool carries)
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answer = (await studio.Get($"/v1/price-checks?sku=RB-014&channel=web&price={price}")).Json;
        Assert.Equal((verdict, carries), (answer.GetProperty("verdict").GetString(), answer.GetProperty("carriesItsShare").GetBoolean()));
    }

    [Fact]
    public async Task Who_may_only_check_learns_nothing_that_reveals_costs()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        const string Check = "/v1/price-checks?sku=RB-014&channel=web&price=58.00";
        using var check = await studio.ClientFor("check");
        using var verdict = await studio.ClientFor("verdict");
        Assert.Equal("""{"verdict":"below-floor","carriesItsShare":false,"floorPrice":61.74,"targetPrice":120.00,"price":58.00,"currency":"USD","""
            + Basis + ""","warnings":[]}""", (await studio.Get(Check, check)).Text);
        Assert.Equal("""{"verdict":"below-floor","carriesItsShare":false,""" + Basis + ""","warnings":[]}""",
            (await studio.Get(Check, verdict)).Text);
        (await studio.Get(Check + "&workings=true", check)).IsProblem(403, "key-not-allowed");
        (await studio.Get(Check + "&workings=true", verdict)).IsProblem(403, "key-not-allowed");
    }

    [Fact]
    public async Task A_price_off_the_grid_is_warned_about_and_checked_all_the_same()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/fair", """{"sells":"retail","currency":"USD","priceStep":5}""");
        using var check = await studio.ClientFor("check");
        var answer = (await studio.Get("/v1/price-checks?sku=RB-014&channel=fair&price=61", check)).Json;
        Assert.Equal(("below-target", "60.00"), (answer.GetProperty("verdict").GetString(), answer.GetProperty("floorPrice").GetRawText()));
        Assert.Equal("not-an-allowed-price", Assert.Single(answer.GetProperty("warnings").EnumerateArray()).GetProperty("code").GetString());
    }

    [Fact]
    public async Task Unknown_keys_and_foreign_money_are_named()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        Assert.Equal(["#/channel", "#/sku"],
            (await studio.Post("/v1/price-checks", """{"sku":"x","channel":"y","price":1}""")).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["sku"], (await studio.Get("/v1/price-checks?sku=rb-014&channel=web&price=1")).IsProblem(422, "unknown-reference").Pointers);
        (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=1&currency=EUR")).IsProblem(422, "currency-mismatch");
        Assert.Equal(["too-many-decimals"],
            (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58.001")).IsProblem(422, "invalid-input").Codes);
    }

    [Fact]
    public async Task No_price_is_enough_if_the_floor_passes_all_bounds()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "1000000000000", StringComparison.Ordinal));
        await studio.Has("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":0.001}}""");
        await studio.Has("/v1/channels/web", Sample.Shop);
        var answer = await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58");
        Assert.Equal("no-price", answer.IsProblem(422, "cannot-compute").Json.GetProperty("reason").GetString());
    }
}
