using Xunit;

namespace PriceFloor.Api.Tests.FloorPrices;

/// <summary>Normal use, selling time, one-off work, limits and one price for all, over HTTP. 2,000 working hours, 60,000 to bring in.</summary>
public sealed class TruerFloorTests
{
    private const string Year = """
        {"currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8,"benchShare":0.6,"sellingShare":0.2,"normalUse":0.75},
         "expenses":[{"amount":60000,"per":"year"}],"limits":[{"name":"kiln","loadsPerYear":20}]}
        """;

    private const string Piece = """
        {"profile":"main","making":{"steps":[{"name":"torch","handsOnMinutes":108,"rework":{"share":0.2,"minutes":15}},
         {"name":"anneal","handsOnMinutes":9,"uses":"kiln","batchSize":1}]},"development":{"hours":10,"cost":200,"pieces":50}}
        """;

    [Fact]
    public async Task The_requirement_tells_its_carrying_hours()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Year);
        var answer = (await studio.Get("/v1/profiles/main/requirement?workings=true")).Json;
        // (1,200 + 400) x 0.75 = 1,200; 60,000 / 1,200.
        Assert.Equal(("1200", "1200", "50.00"),
            (answer.GetProperty("benchHours").GetRawText(), answer.GetProperty("carryingHours").GetRawText(),
                answer.GetProperty("perBenchHour").GetRawText()));
        var line = answer.GetProperty("workings").EnumerateArray().Single(one => one.GetProperty("symbol").GetString() == "carryingHours");
        Assert.Equal("(benchHoursOfTheYear + sellingHoursOfTheYear) * 0.75", line.GetProperty("formula").GetString());
    }

    [Fact]
    public async Task A_floor_is_higher_on_a_channel_that_takes_time_and_says_what_the_kiln_can_ask()
    {
        await using var studio = await AShop();
        var answer = (await studio.Get("/v1/designs/RB-014/floor-price")).Json;
        // 108 + 3 + 9 minutes are 2 h, and 0.2 h of one-off work: 2.2 h at 50.00 and 4.00: 114.00. In a normal year 900 h are 409 pieces, but 20
        // loads are 20 pieces: 60,000 / 20 + 4.00.
        Assert.Equal(("114.00", "2.2", "4.00", "20", "3004.00"), (Raw("floor"), Raw("benchHours"), Raw("materials"), Raw("piecesPerYear"),
            Raw("floorWithinLimit")));
        var channels = answer.GetProperty("channels").EnumerateArray().ToDictionary(one => one.GetProperty("channel").GetString()!);
        // 24 minutes of selling are 20.00 more.
        Assert.Equal(("134.00", "0.4", "134.00"), (channels["web"].GetProperty("floor").GetRawText(),
            channels["web"].GetProperty("sellingHours").GetRawText(), channels["web"].GetProperty("floorPrice").GetRawText()));
        Assert.Equal(("114.00", "0"),
            (channels["order"].GetProperty("floor").GetRawText(), channels["order"].GetProperty("sellingHours").GetRawText()));
        var codes = answer.GetProperty("warnings").EnumerateArray()
            .Select(one => $"{one.GetProperty("code").GetString()} {one.GetProperty("pointer").GetString()}").ToList();
        Assert.Contains("limit-before-hours #/profile/limits/0", codes);
        Assert.Contains("traced-selling-time-unused #/channels/0/selling", codes);
        Assert.Single(codes, "sales-tax-on-costs-unsaid #/profile/costsInclude");

        string Raw(string name) => answer.GetProperty(name).GetRawText();
    }

    [Fact]
    public async Task What_another_channel_charges_is_recovered_there_though_it_is_not_asked_for()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        const string Stalls = """{"amount":600,"per":"year","costKind":"shows-and-stalls","tracedTo":"sale"}""";
        await studio.Has("/v1/profiles/main",
            Sample.SmallProfile.Replace("\"expenses\":[", $"\"expenses\":[{Stalls},", StringComparison.Ordinal));
        const string OnTheWeb = """{"design":"RB-014","channels":["web"]}""";
        Assert.Contains("traced-sale-costs-unused", (await studio.Post("/v1/floor-prices", OnTheWeb)).Text, StringComparison.Ordinal);
        await studio.Has("/v1/channels/fair", """{"sells":"retail","currency":"USD","stall":{"cost":60,"pieces":20}}""");
        var answer = await studio.Post("/v1/floor-prices", OnTheWeb);
        Assert.Equal((200, false), (answer.Status, answer.Text.Contains("traced-sale-costs-unused", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_price_says_how_much_may_be_taken_off_it()
    {
        await using var studio = await AShop();
        var check = (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=167.50&workings=true")).Json;
        Assert.Equal("0.2", check.GetProperty("mostOff").GetRawText()); // 134.00 of 167.50
        Assert.False((await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=133.99")).Json.TryGetProperty("mostOff", out _));
        using var checker = await studio.ClientFor("check");
        Assert.False((await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=167.50", checker)).Json.TryGetProperty("mostOff", out _));
    }

    [Fact]
    public async Task One_price_holds_on_every_retail_channel_and_an_own_shop_that_undercuts_a_gallery_is_warned_about()
    {
        await using var studio = await AShop();
        await studio.Has("/v1/channels/gallery", """{"sells":"retail","currency":"USD","shopShare":0.4,"priceStep":5}""");
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":200}""");
        await studio.Has("/v1/designs/RB-014/prices/gallery", """{"price":240}""");
        var answer = (await studio.Get("/v1/designs/RB-014/floor-price")).Json;
        // The gallery keeps 40 %: 114.00 / 0.6 = 190.00; the web needs 134.00. Twice 114.00 in fives is 230.00.
        Assert.Equal("""{"channels":["gallery","web"],"floorPrice":190.00,"targetPrice":230.00}""",
            answer.GetProperty("oneRetailPrice").GetRawText());
        Assert.Contains(answer.GetProperty("warnings").EnumerateArray(), one =>
            one.GetProperty("code").GetString() == "own-shop-undercuts-gallery"
            && one.GetProperty("pointer").GetString() == "#/channels/2/listedPrice");
        await studio.Put("/v1/designs/RB-014/prices/web", """{"price":240}""");
        Assert.DoesNotContain("undercuts", (await studio.Get("/v1/designs/RB-014/floor-price")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_off_work_goes_out_and_in_by_a_sheet()
    {
        await using var studio = await AShop();
        var sheet = (await studio.Get("/v1/designs", null, ("Accept", "text/csv"))).Text;
        Assert.Contains(",developmentHours,developmentCost,developmentPieces,", sheet, StringComparison.Ordinal);
        Assert.Contains(",10,200,50,", sheet, StringComparison.Ordinal);
        var changed = await studio.SendBytes("POST", "/v1/designs/batch",
            System.Text.Encoding.UTF8.GetBytes("sku,developmentHours\nRB-014,20\n"), "text/csv", null);
        Assert.Equal(200, changed.Status);
        Assert.Equal("2.4", (await studio.Get("/v1/designs/RB-014/floor-price")).Json.GetProperty("benchHours").GetRawText());
    }

    [Fact]
    public async Task More_shares_than_a_day_has_and_a_sellingShare_beside_a_whole_day_at_the_bench_are_refused()
    {
        await using var studio = new Studio();
        var refused = await studio.Put("/v1/profiles/main", Year.Replace("\"benchShare\":0.6,", "", StringComparison.Ordinal));
        Assert.Equal(["#/calendar/sellingShare"], refused.IsProblem(422, "invalid-input").Pointers);
    }

    private static async Task<Studio> AShop()
    {
        var studio = new Studio();
        await studio.Has("/v1/profiles/main", Year);
        await studio.Has("/v1/designs/RB-014", Piece);
        await studio.Has("/v1/channels/web",
            """{"sells":"retail","currency":"USD","selling":{"minutesPerOrder":24},"salesTax":{"rate":0.1}}""");
        await studio.Has("/v1/channels/order", """{"sells":"wholesale","currency":"USD","salesTax":{"rate":0.1}}""");
        return studio;
    }
}
