using Xunit;

namespace PriceFloor.Api.Tests.FloorPrices;

/// <summary>A piece whose floor is 60.00 (and 120.00 in retail) on each way of selling.</summary>
public sealed class ChannelKindTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    public static TheoryData<string, string, string, string> Channels => new()
    {
        // what, channel, floor price, target price
        { "nothing is taken", "\"sells\":\"retail\"", "60.00", "120.00" },
        { "shops buy", "\"sells\":\"wholesale\"", "60.00", "60.00" },
        { "a gallery keeps 40 %: 100 x 0.6", "\"sells\":\"retail\",\"shopShare\":0.4", "100.00", "120.00" },
        { "a gallery keeps 60 %: 150 x 0.4, above twice wholesale", "\"sells\":\"retail\",\"shopShare\":0.6", "150.00", "150.00" },
        { "tax inside: 72 / 1.2", "\"sells\":\"retail\",\"salesTax\":{\"rate\":0.2,\"included\":true}", "72.00", "144.00" },
        { "tax on top", "\"sells\":\"retail\",\"salesTax\":{\"rate\":0.2}", "60.00", "120.00" },
        { "card fee on what is paid, tax too: (p / 1.2) - 0.024 p >= 60, p >= 74.1350...",
            "\"sells\":\"retail\",\"salesTax\":{\"rate\":0.2,\"included\":true},\"fees\":[{\"rate\":0.024,\"of\":\"paid\"}]", "74.14", "144.00" },
        { "marketplace: 0.93 x - 0.07 x 5 - 0.18 >= 60, x >= 65.0860...",
            "\"sells\":\"retail\",\"fees\":[{\"rate\":0.07,\"fixed\":0.18,\"of\":\"price-and-shipping\"}],\"shipping\":{\"charged\":5,\"cost\":5}",
            "65.09", "120.00" },
        { "a fee that stops at 3", "\"sells\":\"retail\",\"fees\":[{\"rate\":0.1,\"maximum\":3}]", "63.00", "120.00" },
        { "a fee of at least 4", "\"sells\":\"retail\",\"fees\":[{\"rate\":0.05,\"minimum\":4}]", "64.00", "120.00" },
        { "a stall of 180 over 30 pieces", "\"sells\":\"retail\",\"stall\":{\"cost\":180,\"pieces\":30}", "66.00", "120.00" },
        { "the same in fives", "\"sells\":\"retail\",\"stall\":{\"cost\":180,\"pieces\":30},\"priceStep\":5", "70.00", "120.00" },
        { "prices that end in 0.95", "\"sells\":\"retail\",\"priceStep\":1,\"priceEnding\":0.95", "60.95", "120.95" },
        { "one in ten comes back, half can be sold again: 0.9 x / 0.95 >= 60, x >= 63.333...",
            "\"sells\":\"retail\",\"returns\":{\"share\":0.1,\"resaleShare\":0.5}", "63.34", "120.00" },
        { "and packing of 1.00 is lost: (0.9 (x - 1) - 0.1) / 0.95 >= 60, x >= 64.444...",
            "\"sells\":\"retail\",\"returns\":{\"share\":0.1,\"resaleShare\":0.5},\"costPerPiece\":1", "64.45", "120.00" },
        { "two pieces share 6.00 of postage", "\"sells\":\"retail\",\"shipping\":{\"cost\":6},\"piecesPerOrder\":2", "63.00", "120.00" },
    };

    [Theory]
    [MemberData(nameof(Channels))]
    public async Task Floor_and_target_follow_what_the_channel_takes(string what, string channel, string floorPrice, string targetPrice)
    {
        var studio = shared.Of("Production");
        var answer = await studio.Post("/v1/floor-prices",
            $$$"""{"profile":{{{Sample.SmallProfile}}},"design":{"making":{"piecesPerDay":4}},"channels":[{"currency":"USD",{{{channel}}} }]}""");
        Assert.Equal(
            $$"""{"channel":"inline","currency":"USD","floor":60.00,"sellingHours":0,"floorPrice":{{floorPrice}},"targetPrice":{{targetPrice}},"listedPrice":null,"verdict":null}""",
            answer.Json.GetProperty("channels")[0].GetRawText());
        Assert.NotEqual("", what);
    }

    [Theory]
    [InlineData("JPY", "35", "70", "36")] // 240 / 7 = 34.2857 up; (35 + 1) a piece
    [InlineData("KWD", "34.286", "68.572", "35.286")]
    [InlineData("CLF", "34.2858", "68.5716", "35.2858")]
    public async Task Money_comes_in_its_currencys_decimals(string currency, string wholesale, string retail, string floorPrice)
    {
        var studio = shared.Of("Production");
        var answer = (await studio.Post("/v1/floor-prices",
            $$$"""{"profile":{{{Sample.SmallProfile.Replace("USD", currency, StringComparison.Ordinal)}}},"design":{"making":{"piecesPerDay":7}},"channels":[{"sells":"retail","currency":"{{{currency}}}","costPerPiece":1}]}""")).Json;
        Assert.Equal((wholesale, wholesale, retail),
            (answer.GetProperty("floor").GetRawText(), answer.GetProperty("wholesale").GetRawText(), answer.GetProperty("retail").GetRawText()));
        Assert.Equal(floorPrice, answer.GetProperty("channels")[0].GetProperty("floorPrice").GetRawText());
    }

    [Fact]
    public async Task A_flat_tax_is_earned_before_the_household_sees_anything()
    {
        // 36,000 left of 45,000 at 20 %; 24,000 + 45,000 = 69,000 over 2,000 h = 34.50; four a day take 2 h each: 69.00.
        var profile = Sample.SmallProfile[..^1] + ",\"tax\":{\"kind\":\"flat\",\"rate\":0.2}}";
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", profile);
        await studio.Has("/v1/designs/A", Sample.Pendant);
        Assert.StartsWith(
            """{"currency":"USD","requiredRevenue":69000.00,"benchMustEarn":69000.00,"expenses":24000.00,"depreciation":0.00,"traced":0.00,"household":36000.00,"otherIncome":0.00,"need":36000.00,"tax":9000.00,"profitBeforeTax":45000.00,"workdays":250,"benchHours":2000,"carryingHours":2000,"perWeek":1380.00,"perDay":276.00,"perBenchHour":34.50,"takeHomePerHour":18.00,""",
            (await studio.Get("/v1/profiles/main/requirement")).Text, StringComparison.Ordinal);
        Assert.Equal("69.00", (await studio.Get("/v1/designs/A/floor-price")).Json.GetProperty("floor").GetRawText());
    }

    [Fact]
    public async Task A_wholesale_price_counts_before_tax_and_only_in_the_profiles_currency()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/shops", """{"sells":"wholesale","currency":"USD","salesTax":{"rate":0.2,"included":true}}""");
        await studio.Has("/v1/channels/abroad", """{"sells":"wholesale","currency":"EUR"}""");
        await studio.Has("/v1/designs/RB-014/prices/abroad", """{"price":500}""");
        string Target(Answer answer) => answer.Json.GetProperty("channels").EnumerateArray()
            .Single(row => row.GetProperty("channel").GetString() == "web").GetProperty("targetPrice").GetRawText();

        await studio.Has("/v1/designs/RB-014/prices/shops", """{"price":71.99}"""); // 59.99 before tax: below the floor of 60
        Assert.Equal("120.00", Target(await studio.Get("/v1/designs/RB-014/floor-price")));
        await studio.Has("/v1/designs/RB-014/prices/shops", """{"price":72.06}"""); // 60.05
        Assert.Equal("120.10", Target(await studio.Get("/v1/designs/RB-014/floor-price")));
        await studio.Delete("/v1/designs/RB-014/prices/shops");
        Assert.Equal("120.00", Target(await studio.Get("/v1/designs/RB-014/floor-price")));
    }
}
