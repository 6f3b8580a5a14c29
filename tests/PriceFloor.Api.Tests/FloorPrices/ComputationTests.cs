using Xunit;

namespace PriceFloor.Api.Tests.FloorPrices;

public sealed class ComputationTests
{
    [Fact]
    public async Task The_plain_rule_over_HTTP()
    {
        // Common practice, no source: (24,000 + 36,000) / 50 weeks / 5 days = 240 a day; 4 a day: 60.00, twice that 120.00.
        await using var studio = new Studio();
        var answer = await studio.Post("/v1/floor-prices",
            """{"profile":{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":24000,"per":"year"}],"household":[{"amount":3000,"per":"month"}]},"design":{"making":{"piecesPerDay":4}}}""");
        Assert.Equal(
            """{"currency":"USD","floor":60.00,"wholesale":60.00,"retail":120.00,"benchHours":2,"benchCost":60.00,"materials":0.00,"secondsCredit":0.00,"startsPerGoodPiece":1,"piecesPerYear":1000,"floorWithinLimit":null,"oneRetailPrice":null,"channels":[],"basis":{"profile":"inline","design":"inline","channels":[]},"assumed":[{"pointer":"#/profile/calendar/benchShare","value":1},{"pointer":"#/profile/calendar/normalUse","value":1},{"pointer":"#/profile/tax","value":"none"},{"pointer":"#/profile/soldShare","value":1},{"pointer":"#/design/making/goodShare","value":1}],"warnings":[]}""",
            answer.Text);
    }

    [Theory]
    [InlineData("3", "80.00", "160.00")]
    [InlineData("7", "34.29", "68.58")] // 240 / 7 = 34.2857, up; doubled after rounding
    public async Task Other_paces_follow(string pace, string wholesale, string retail)
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        await studio.Has("/v1/designs/A", Sample.Pendant.Replace("4", pace, StringComparison.Ordinal));
        var answer = (await studio.Get("/v1/designs/A/floor-price")).Json;
        Assert.Equal((wholesale, retail), (answer.GetProperty("wholesale").GetRawText(), answer.GetProperty("retail").GetRawText()));
    }

    [Fact]
    public async Task The_years_requirement_of_a_rich_profile()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.Rich);
        var answer = (await studio.Get("/v1/profiles/main/requirement?workings=true")).Json;
        string Raw(string name) => answer.GetProperty(name).GetRawText();

        Assert.Equal("375.00", Raw("depreciation")); // (3,200 - 200) / 8
        Assert.Equal("12843.00", Raw("expenses")); // 6,480 + 3,900 + 375 + 17,400 x 0.12
        Assert.Equal("3900.00", Raw("traced"));
        Assert.Equal("20112.00", Raw("household")); // 17,400 x 0.88 + 3,000 + 1,800 principal
        Assert.Equal("3360.00", Raw("otherIncome")); // 280 x 12
        Assert.Equal("228", Raw("workdays")); // 48 x 5 - 12
        Assert.Equal("1305.6", Raw("benchHours")); // 228 x 8 x 0.65 + 120
        Assert.Equal("27336.00", Raw("need")); // 14 x 228 x 8 + 1,800, above the household's 20,112
        Assert.Equal("14.00", Raw("takeHomePerHour"));

        // Tax by hand at Y: s = 0.9235 Y x 0.153 = 0.1412955 Y; taxable = Y - s/2 - 15,750, in the 12 % band: 1,192.50 + 0.12 (taxable - 11,925).
        // Y - T = Y (1 - 0.1412955 - 0.12 x 0.92935225) + 2,128.50 = 0.74718223 Y + 2,128.50 = 27,336, so Y = 33,736.76...
        const decimal KeptOfOne = 1 - 0.1412955m - 0.12m * (1 - 0.1412955m / 2);
        const decimal Constant = -1192.50m + 0.12m * (15750 + 11925);
        var profit = (27336m - Constant) / KeptOfOne;
        Assert.Equal(decimal.Ceiling(profit * 100) / 100, answer.GetProperty("profitBeforeTax").GetDecimal());
        Assert.Equal(decimal.Ceiling((12843m + profit - 3360m) * 100) / 100, answer.GetProperty("requiredRevenue").GetDecimal());
        Assert.Equal(decimal.Ceiling((12843m - 3900m + profit - 3360m) / 1305.6m * 100) / 100, answer.GetProperty("perBenchHour").GetDecimal());
        Assert.Equal("""{"profile":"main@1"}""", Raw("basis"));
        Assert.Equal(["financed-asset-twice"],
            answer.GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("code").GetString()!));
        Assert.Contains("rent", Raw("notCovered") + "rent", StringComparison.Ordinal);
        Assert.DoesNotContain("\"rent\"", Raw("notCovered"), StringComparison.Ordinal);
        Assert.NotEmpty(answer.GetProperty("workings").EnumerateArray());
    }

    [Fact]
    public async Task Stored_and_inline_documents_give_the_same_answer()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.Rich);
        await studio.Has("/v1/designs/RB-014", Sample.RichDesign);
        await studio.Has("/v1/channels/web", Sample.RichChannel);
        var stored = (await studio.Get("/v1/designs/RB-014/floor-price?workings=true")).Text;
        var inline = (await studio.Post("/v1/floor-prices?workings=true",
            $$"""{"profile":{{Sample.Rich}},"design":{{Sample.RichDesign}},"channels":[{{Sample.RichChannel}}]}""")).Text;
        var byKey = (await studio.Post("/v1/floor-prices?workings=true", """{"design":"RB-014","channels":["web"]}""")).Text;
        var mixed =
            (await studio.Post("/v1/floor-prices?workings=true", $$"""{"profile":"main","design":{{Sample.RichDesign}},"channels":["web"]}""")).Text;
        Assert.Equal(stored, byKey);
        Assert.Equal(stored.Replace("\"design\":\"RB-014@1\"", "\"design\":\"inline\"", StringComparison.Ordinal), mixed);
        Assert.Equal(stored.Replace("main@1", "inline", StringComparison.Ordinal).Replace("RB-014@1", "inline", StringComparison.Ordinal)
            .Replace("web@1", "inline", StringComparison.Ordinal)
            .Replace("\"channel\":\"web\"", "\"channel\":\"inline\"", StringComparison.Ordinal), inline);
    }

    [Fact]
    public async Task Another_profile_can_be_tried_and_nothing_is_stored()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/profiles/dear", Sample.SmallProfile.Replace("24000", "44000", StringComparison.Ordinal));
        // 80,000 / 1,000
        Assert.Equal("80.00", (await studio.Get("/v1/designs/RB-014/floor-price?profile=dear")).Json.GetProperty("floor").GetRawText());
        (await studio.Get("/v1/designs/RB-014/floor-price?profile=nope")).IsProblem(422, "unknown-reference");
        Assert.Equal("\"1\"", (await studio.Get("/v1/designs/RB-014"))["ETag"]);
    }

    [Fact]
    public async Task A_channel_in_another_currency_is_there_without_a_verdict()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/berlin", Sample.Shop.Replace("USD", "EUR", StringComparison.Ordinal));
        var rows = (await studio.Get("/v1/designs/RB-014/floor-price")).Json.GetProperty("channels");
        Assert.Equal(
            """{"channel":"berlin","currency":"EUR","floor":null,"sellingHours":0,"floorPrice":null,"targetPrice":null,"listedPrice":null,"verdict":null,"reason":"currency-mismatch"}""",
            rows[0].GetRawText());
        // (60 + 0.25) / 0.976 = 61.764...
        Assert.Equal(
            """{"channel":"web","currency":"USD","floor":60.00,"sellingHours":0,"floorPrice":61.74,"targetPrice":120.00,"listedPrice":58.00,"verdict":"below-floor"}""",
            rows[1].GetRawText());
        (await studio.Get("/v1/price-checks?sku=RB-014&channel=berlin&price=99")).IsProblem(422, "currency-mismatch");
    }

    [Fact]
    public async Task Retail_doubles_what_shops_really_pay()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/shops", """{"sells":"wholesale","currency":"USD"}""");
        await studio.Has("/v1/designs/RB-014/prices/shops", """{"price":65}""");
        var answer = (await studio.Get("/v1/designs/RB-014/floor-price")).Json;
        Assert.Equal("130.00", answer.GetProperty("channels")[1].GetProperty("targetPrice").GetRawText()); // 2 x 65
        Assert.Equal("RB-014/shops@1", answer.GetProperty("basis").GetProperty("listedPrice").GetString());
        Assert.Equal("below-target",
            (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=129.99")).Json.GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task An_unknown_key_in_a_what_if_is_named_with_its_place()
    {
        await using var studio = new Studio();
        var answer = await studio.Post("/v1/floor-prices", """{"profile":"a","design":"b","channels":["c"]}""");
        Assert.Equal(["#/channels/0", "#/design", "#/profile"], answer.IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["#/profile"],
            (await studio.Post("/v1/floor-prices", """{"design":{"making":{"piecesPerDay":4}}}""")).IsProblem(422, "invalid-input").Pointers);
    }
}
