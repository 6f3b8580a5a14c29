using Xunit;

namespace PriceFloor.Api.Tests.Documents;

public sealed class DocumentTests
{
    [Fact]
    public async Task A_document_is_created_replaced_and_left_alone_when_it_says_the_same()
    {
        await using var studio = new Studio();
        var created = await studio.Put("/v1/profiles/main", Sample.SmallProfile);
        Assert.Equal((201, "/v1/profiles/main", "\"1\""), (created.Status, created["Location"], created["ETag"]));

        // The same: other order of properties, trailing zeros, defaults written out, numbers as strings.
        var same = await studio.Put("/v1/profiles/main", """
            {"household":[{"per":"month","amount":"3000.000","businessShare":0}],"expenses":[{"amount":24000.0,"per":"year","deductible":true}],
             "calendar":{"hoursPerDay":8,"daysPerWeek":5,"weeksPerYear":50.0,"benchShare":1},"tax":{"kind":"none"},"yearStart":"2027-01-01","currency":"USD","priceRule":{}}
            """);
        Assert.Equal((200, "\"1\""), (same.Status, same["ETag"]));

        var changed = await studio.Put("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "24000.01", StringComparison.Ordinal));
        Assert.Equal((200, "\"2\""), (changed.Status, changed["ETag"]));
        Assert.Null(changed["Location"]);
    }

    [Fact]
    public async Task The_order_of_lines_is_part_of_what_a_document_says()
    {
        await using var studio = new Studio();
        const string TwoLines =
            """{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":1,"per":"year"},{"amount":2,"per":"year"}]}""";
        await studio.Has("/v1/profiles/main", TwoLines);
        var turned = await studio.Put("/v1/profiles/main", TwoLines.Replace("""{"amount":1,"per":"year"},{"amount":2,"per":"year"}""",
            """{"amount":2,"per":"year"},{"amount":1,"per":"year"}""", StringComparison.Ordinal));
        Assert.Equal("\"2\"", turned["ETag"]);
    }

    [Theory]
    [InlineData("USD", "24000.00", "3000.00")]
    [InlineData("JPY", "24000", "3000")]
    [InlineData("KWD", "24000.000", "3000.000")]
    public async Task A_stored_document_comes_back_with_all_its_defaults_and_its_currencys_decimals(string currency, string expense, string household)
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile.Replace("USD", currency, StringComparison.Ordinal));
        var read = await studio.Get("/v1/profiles/main");
        Assert.Equal("{\"key\":\"main\",\"revision\":1,\"savedAt\":\"2027-01-02T09:00:00.000000Z\",\"currency\":\"" + currency + "\","
            + "\"yearStart\":\"2027-01-01\",\"calendar\":{\"weeksPerYear\":50,\"daysPerWeek\":5,\"hoursPerDay\":8,\"benchShare\":1,\"sellingShare\":0,\"normalUse\":1},\"helpers\":[],"
            + "\"expenses\":[{\"amount\":"
            + expense + ",\"per\":\"year\",\"deductible\":true}],\"equipment\":[],\"soldShare\":1,\"household\":[{\"amount\":" + household
            + ",\"per\":\"month\",\"businessShare\":0}],\"otherIncome\":[],\"tax\":{\"kind\":\"none\",\"levies\":[]},\"materials\":[],\"limits\":[],"
            + "\"priceRule\":{\"retailMultiple\":2}}", read.Text);
        Assert.Equal("no-cache, private", read["Cache-Control"]);
    }

    [Fact]
    public async Task Money_keeps_every_significant_decimal_in_a_stored_document()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "0.123400", StringComparison.Ordinal));
        Assert.Contains("\"amount\":0.1234,", (await studio.Get("/v1/profiles/main")).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/v1/profiles/main", Sample.Rich)]
    [InlineData("/v1/designs/RB-014", Sample.RichDesign)]
    [InlineData("/v1/channels/web", Sample.RichChannel)]
    [InlineData("/v1/designs/RB-014/prices/web", """{"price":58}""")]
    public async Task What_GET_gave_can_be_PUT_back(string path, string json)
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.Rich);
        await studio.Has("/v1/designs/RB-014", Sample.RichDesign);
        await studio.Has("/v1/channels/web", Sample.RichChannel);
        await studio.Has(path, json);
        var read = await studio.Get(path);
        var back = await studio.Put(path, read.Text);
        Assert.Equal((200, read.Text, "\"1\""), (back.Status, back.Text, back["ETag"]));
    }

    [Fact]
    public async Task A_deleted_document_is_hidden_keeps_its_history_and_comes_back_with_the_next_number()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        Assert.Equal(204, (await studio.Delete("/v1/profiles/main")).Status);
        (await studio.Get("/v1/profiles/main")).IsProblem(404, "not-found");
        (await studio.Delete("/v1/profiles/main")).IsProblem(404, "not-found");

        var history = (await studio.Get("/v1/profiles/main/revisions")).Json.GetProperty("items");
        Assert.Equal(2, history.GetArrayLength());
        Assert.True(history[1].GetProperty("deleted").GetBoolean());
        Assert.Equal("USD", (await studio.Get("/v1/profiles/main/revisions/1")).Json.GetProperty("currency").GetString());

        var back = await studio.Put("/v1/profiles/main", Sample.SmallProfile, headers: ("If-None-Match", "*"));
        Assert.Equal((201, "\"3\""), (back.Status, back["ETag"]));
    }

    [Fact]
    public async Task A_lost_update_is_refused_and_the_present_revision_named()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        await studio.Has("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "25000", StringComparison.Ordinal));

        var stale = await studio.Put("/v1/profiles/main", Sample.SmallProfile, headers: ("If-Match", "\"1\""));
        Assert.Equal(2, stale.IsProblem(412, "stale-revision").Json.GetProperty("currentRevision").GetInt32());
        (await studio.Put("/v1/profiles/main", Sample.SmallProfile, headers: ("If-Match", "W/\"2\""))).IsProblem(412, "stale-revision");
        (await studio.Put("/v1/profiles/main", Sample.SmallProfile, headers: ("If-None-Match", "*"))).IsProblem(412, "stale-revision");
        (await studio.Put("/v1/profiles/other", Sample.SmallProfile, headers: ("If-Match", "*"))).IsProblem(412, "stale-revision");
        (await studio.Delete("/v1/profiles/main", headers: ("If-Match", "\"1\""))).IsProblem(412, "stale-revision");
        (await studio.Put("/v1/profiles/main", Sample.SmallProfile, headers: ("If-Match", "2"))).IsProblem(400, "unreadable-request");

        Assert.Equal("\"3\"", (await studio.Put("/v1/profiles/main", Sample.SmallProfile, headers: ("If-Match", "\"1\", \"2\"")))["ETag"]);
    }

    [Fact]
    public async Task A_reader_who_has_the_revision_gets_304()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        var known = await studio.Get("/v1/profiles/main", headers: ("If-None-Match", "W/\"1\""));
        Assert.Equal((304, "", "\"1\""), (known.Status, known.Text, known["ETag"]));
        Assert.Equal(200, (await studio.Get("/v1/profiles/main", headers: ("If-None-Match", "\"2\""))).Status);
    }

    [Fact]
    public async Task The_year_starts_in_this_year_and_stays_when_a_replace_leaves_it_out()
    {
        await using var studio = new Studio();
        var noStart = Sample.SmallProfile.Replace("\"yearStart\":\"2027-01-01\",", "", StringComparison.Ordinal);
        await studio.Has("/v1/profiles/main", noStart);
        studio.Clock.Advance(TimeSpan.FromDays(400));
        var replaced = await studio.Put("/v1/profiles/main", noStart.Replace("24000", "25000", StringComparison.Ordinal));
        Assert.Equal("2027-01-01", replaced.Json.GetProperty("yearStart").GetString());
        Assert.Equal("2028-01-01", (await studio.Put("/v1/profiles/next", noStart)).Json.GetProperty("yearStart").GetString());
    }

    [Fact]
    public async Task Keys_take_every_allowed_character_and_case_counts()
    {
        await using var studio = new Studio();
        foreach (var key in new[] { "a", "A", "x.y_z~1:2+3-4", new string('k', 64) })
            Assert.Equal(201, (await studio.Put($"/v1/profiles/{key}", Sample.SmallProfile)).Status);
        foreach (var key in new[] { new string('k', 65), "a%20b", "a%2Fb", "%C3%A9" })
            Assert.Contains("bad-key", (await studio.Put($"/v1/profiles/{key}", Sample.SmallProfile)).IsProblem(422, "invalid-input").Codes);
    }

    [Fact]
    public async Task Everything_can_be_asked_for_as_it_was()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        studio.Clock.Advance(TimeSpan.FromDays(30));
        await studio.Has("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "48000", StringComparison.Ordinal));
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":200}""");
        const string Then = "asOf=2027-01-10T00:00:00Z";

        Assert.Equal(1, (await studio.Get($"/v1/profiles/main?{Then}")).Json.GetProperty("revision").GetInt32());
        Assert.Equal("1200.00", (await studio.Get($"/v1/profiles/main/requirement?{Then}")).Json.GetProperty("perWeek").GetRawText());
        // (48,000 + 36,000) / 50
        Assert.Equal("1680.00", (await studio.Get("/v1/profiles/main/requirement")).Json.GetProperty("perWeek").GetRawText());
        var floor = await studio.Get($"/v1/designs/RB-014/floor-price?{Then}");
        Assert.Equal("60.00", floor.Json.GetProperty("floor").GetRawText());
        Assert.Equal("58.00", floor.Json.GetProperty("channels")[0].GetProperty("listedPrice").GetRawText());
        Assert.Equal("61.74",
            (await studio.Get($"/v1/price-checks?sku=RB-014&channel=web&price=58&{Then}")).Json.GetProperty("floorPrice").GetRawText());
        Assert.Single((await studio.Get($"/v1/profiles/main/revisions?{Then}")).Json.GetProperty("items").EnumerateArray());
        (await studio.Get($"/v1/profiles/main/revisions/2?{Then}")).IsProblem(404, "not-found");
        (await studio.Get("/v1/profiles/main?asOf=2026-01-01T00:00:00%2B01:00")).IsProblem(404, "not-found");
        Assert.Empty((await studio.Get("/v1/designs?asOf=2026-01-01T00:00:00Z")).Json.GetProperty("items").EnumerateArray());
    }

    [Fact]
    public async Task The_time_of_a_revision_is_exactly_the_time_to_ask_for_it()
    {
        await using var studio = new Studio();
        var first = await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        await studio.Has("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "25000", StringComparison.Ordinal)); // the clock stands still
        var then = await studio.Get($"/v1/profiles/main?asOf={first.Json.GetProperty("savedAt").GetString()}");
        Assert.Equal(1, then.Json.GetProperty("revision").GetInt32());
    }
}
