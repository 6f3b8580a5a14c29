using PriceFloor.Api.Tests.Evidence.Logged;
using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.Demands;

/// <summary>How often designs are ordered and what that suggests to ask: the worked example of the model, over HTTP.</summary>
public sealed class DemandTests
{
    [Fact]
    public async Task The_worked_example_has_its_figures()
    {
        await using var studio = await ShelfOfNine.Stored();
        var answer = (await studio.Get(ShelfOfNine.Path + "&aim=idle-hours")).Json;
        var rate = answer.GetProperty("rate");
        Assert.Equal("1.4635 week listed 31 20.00 0.8809 0.5577", Told(rate, "value", "per", "exposure", "orders", "time", "ownWeight", "shelf"));
        Assert.Equal((1.072m, 1.905m),
            (decimal.Round(rate.GetProperty("low").GetDecimal(), 3), decimal.Round(rate.GetProperty("high").GetDecimal(), 3)));
        Assert.Equal(["46.00 2027-01-02 2027-08-20 62 33.00 1.7989", "52.00 2027-08-21 2028-01-07 31 20.00 1.4635"],
            answer.GetProperty("runs").EnumerateArray().Select(run => Told(run, "price", "from", "to", "orders", "time", "rate")));
        Assert.Equal("46.00 52.00 0.40 0.1455 0.1864 0.84 365",
            Told(answer.GetProperty("changePaid"), "before", "after", "chance", "mayLose", "lost", "fell", "ordersToTell"));
        var expected = answer.GetProperty("expected");
        Assert.Equal("52.00 56 8.00 6 11 19 58.59 -12.08 37.31",
            Told(expected, "price", "days", "time", "few", "likely", "many", "contribution", "aboveFloor", "earnedPerBenchHour"));
        Assert.Equal("16 0.8332", Told(answer, "makeUpTo", "makeUpToChance"));
        Assert.Equal("""{"profile":"main@1","design":"RB-014@2","channel":"web@1","log":"m327+b0"}""", answer.GetProperty("basis").GetRawText());
        Assert.Equal(["season-unknown"], Warned(answer));
        // One piece an order: as likely as not 11, as above; nine times in ten fewer than that and no fewer than 19 times in 20.
        Assert.Equal("11 93 orders", Told(answer.GetProperty("maximum"), "value", "observations", "of"));
        Assert.InRange(answer.GetProperty("maximum").GetProperty("low").GetDecimal(), 6, 10);
        Assert.Equal("""[{"pointer":"#/sensitivity","value":2},{"pointer":"#/next","value":0.15}]""", answer.GetProperty("assumed").GetRawText());
    }

    [Fact]
    public async Task With_scarce_hours_the_best_price_is_above_the_floor_price_and_one_step_does_not_reach_it()
    {
        await using var studio = await ShelfOfNine.Stored();
        var answer = (await studio.Get(ShelfOfNine.Path + "&price=62")).Json;
        // One change of 31 orders after it: sigma is vaguer than of the four changes, but the sum is the same.
        var sigma = answer.GetProperty("sensitivity").GetProperty("value").GetDecimal();
        Assert.Equal("shelf 31 1", Told(answer.GetProperty("sensitivity"), "from", "orders", "changes"));
        // (56.3021 + 2.445)/0.971 = 60.50168, and 52/sigma above it.
        Assert.Equal(decimal.Round(60.50168m + 52 / sigma, 2, MidpointRounding.AwayFromZero), answer.GetProperty("best").GetDecimal());
        Assert.Equal("60.51 52.00  floor-beyond-one-step scarce-hours", Told(answer, "floorPrice", "price", "next", "nextReason", "aim"));
        Assert.Equal("1.00  ", Told(answer.GetProperty("changePaid"), "chance", "mayLose", "ordersToTell"));
        // 0.971 * 62 - 2.445 = 57.757, less 8.0145 for 1.07306 hours.
        Assert.Equal("62.00 46.36", Told(answer.GetProperty("expected"), "price", "earnedPerBenchHour"));
        var last = (await studio.Get(ShelfOfNine.Path + "&pieces=1")).Json;
        Assert.True(last.GetProperty("best").GetDecimal() > answer.GetProperty("best").GetDecimal());
        var lines = (await studio.Get(ShelfOfNine.Path + "&workings=true")).Json.GetProperty("workings").EnumerateArray().ToList();
        Assert.Equal("bestPrice priceLeavingIt + priceAsked / sensitivity", Told(lines[^1], "symbol", "formula"));
        Assert.Equal(answer.GetProperty("best").GetDecimal(), decimal.Round(lines[^1].GetProperty("value").GetDecimal(), 2));
    }

    [Fact]
    public async Task A_design_of_one_price_has_no_change_and_its_best_price_is_a_guess()
    {
        await using var studio = await Logged("1,2027-01-02,RB-014,web,1,58.00,\n2,2027-01-09,RB-014,web,2,58.00,\n");
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":58}""");
        var answer = (await studio.Get("/v1/designs/RB-014/demand?to=2027-01-15")).Json;
        Assert.Equal(" no-price-change", Told(answer, "changePaid", "changePaidReason"));
        Assert.Equal("2 0.68 3.88 general", Told(answer.GetProperty("sensitivity"), "value", "low", "high", "from"));
        // From 2 to 15 January listed: two weeks, (1/2 + 2)/2 orders a week of one and a half pieces each.
        Assert.Equal("1.2500 listed 2 2.00 1.50", Told(answer.GetProperty("rate"), "value", "exposure", "orders", "time", "piecesPerOrder"));
        Assert.Equal(["guess", "season-unknown", "too-few"], Warned(answer));
        Assert.Equal("2", Told(answer.GetProperty("maximum"), "observations"));
    }

    [Fact]
    public async Task Without_any_price_only_the_rate_is_told()
    {
        await using var studio = await Logged("1,2027-01-02,RB-014,web,1,58.00,\n2,2027-01-08,RB-014,web,1,58.00,\n");
        var answer = (await studio.Get("/v1/designs/RB-014/demand?to=2027-01-15")).Json;
        Assert.Equal("    ", Told(answer, "price", "expected", "best", "next", "makeUpTo"));
        Assert.Equal("2.5000 first-to-last-sale", Told(answer.GetProperty("rate"), "value", "exposure"));
    }

    [Fact]
    public async Task Days_without_stock_do_not_count()
    {
        await using var studio = await Logged("");
        await studio.Sheet("source=shop", "ref,on,what,sku,channel,pieces,price,listed\n1,2027-01-02,made,RB-014,,2,,\n"
            + "2,2027-01-02,sold,RB-014,web,1,58.00,58.00\n3,2027-01-08,sold,RB-014,web,1,58.00,58.00\n");
        // Two made on 2 January and gone on the 8th: one week, though it is the 31st.
        var rate = (await studio.Get("/v1/designs/RB-014/demand?to=2027-01-31")).Json.GetProperty("rate");
        Assert.Equal("in-stock 1.00", Told(rate, "exposure", "time"));
    }

    [Fact]
    public async Task What_the_log_does_not_have_cannot_be_told()
    {
        await using var studio = await Logged("1,2027-01-02,RB-014,web,1,58.00,\n");
        await studio.Has("/v1/designs/NEW", """{"profile":"main","making":{"minutesPerPiece":40}}""");
        await studio.Has("/v1/channels/fair", """{"sells":"retail","currency":"USD"}""");
        await studio.Has("/v1/channels/abroad", """{"sells":"retail","currency":"EUR"}""");
        Assert.Equal("nothing-logged", Reason(await studio.Get("/v1/designs/NEW/demand")));
        Assert.Equal("nothing-logged", Reason(await studio.Get("/v1/designs/RB-014/demand?channel=fair")));
        Assert.Equal("nothing-logged", Reason(await studio.Get("/v1/designs/RB-014/demand?to=2027-01-01")));
        Assert.Equal("currency-mismatch", Reason(await studio.Get("/v1/designs/RB-014/demand?channel=abroad")));
        (await studio.Get("/v1/designs/NONE/demand")).IsProblem(404, "not-found");
        (await studio.Get("/v1/designs/RB-014/demand?channel=none")).IsProblem(422, "unknown-reference");
        (await studio.Get("/v1/designs/RB-014/demand?price=0&pieces=0&days=0&aim=both&level=1")).IsProblem(422, "invalid-input");
    }

    [Fact]
    public async Task The_answer_has_a_tag_that_a_sale_changes()
    {
        await using var studio = await Logged("1,2027-01-02,RB-014,web,1,58.00,\n");
        const string Path = "/v1/designs/RB-014/demand?to=2027-02-01";
        var first = await studio.Get(Path);
        Assert.Equal(304, (await studio.Get(Path, null, ("If-None-Match", first["ETag"]!))).Status);
        var moment = studio.Clock.GetUtcNow().AddSeconds(30);
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        await studio.Sheet("source=shop", SentLog.Heading + "2,2027-01-05,RB-014,web,1,58.00,\n");
        Assert.Equal(200, (await studio.Get(Path, null, ("If-None-Match", first["ETag"]!))).Status);
        Assert.Equal(first.Text, (await studio.Get($"{Path}&asOf={moment:yyyy-MM-ddTHH:mm:ss}Z")).Text);
    }

    [Fact]
    public async Task A_key_held_to_a_profile_learns_nothing_of_other_designs()
    {
        await using var studio = await Logged("1,2027-01-02,RB-014,web,1,58.00,\n2,2027-01-09,RB-014,web,1,58.00,\n");
        await studio.Has("/v1/profiles/other", RiverDropLog.Profile);
        var made = await studio.Post("/v1/keys", """{"name":"held","scopes":["read"],"profiles":["main"]}""");
        using var held = studio.ClientWith(made.Json.GetProperty("key").GetString());
        const string Path = "/v1/designs/RB-014/demand?to=2027-02-01";
        var before = await studio.Get(Path, held);
        for (var design = 0; design < 9; design++)
        {
            await studio.Has($"/v1/designs/O{design}", """{"profile":"other","making":{"minutesPerPiece":40}}""");
            await studio.Sheet("source=shop", SentLog.Heading + $"o{design},2027-01-0{design + 1},O{design},web,1,10.00,\n");
        }

        // Only how far the log has come is different.
        Assert.Equal(before.Text.Replace("m2+b0", "m11+b0", StringComparison.Ordinal), (await studio.Get(Path, held)).Text);
        (await studio.Get("/v1/designs/O1/demand", held)).IsProblem(404, "not-found");
        foreach (var scope in new[] { "check", "verdict", "write", "log" })
        {
            using var other = await studio.ClientFor(scope);
            (await studio.Get(Path, other)).IsProblem(403, "key-not-allowed");
        }
    }

    private static async Task<Studio> Logged(string lines)
    {
        var studio = new Studio();
        await studio.HasTheRiverDrop();
        if (lines.Length > 0)
            await studio.Sheet("source=shop", SentLog.Heading + lines);
        return studio;
    }

    private static string? Reason(Answer answer) => answer.IsProblem(422, "cannot-compute").Json.GetProperty("reason").GetString();

    private static IEnumerable<string?> Warned(System.Text.Json.JsonElement answer) =>
        answer.GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("code").GetString());

    private static string Told(System.Text.Json.JsonElement json, params string[] names) =>
        string.Join(' ', names.Select(name => json.GetProperty(name) is { ValueKind: System.Text.Json.JsonValueKind.String } text ? text.GetString()
            : json.GetProperty(name) is { ValueKind: System.Text.Json.JsonValueKind.Null } ? "" : json.GetProperty(name).GetRawText()));
}
