using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.Evidence.Logged;

/// <summary>Designs, channels and profiles whose lines are in the log, and those who may ask for them.</summary>
public sealed class LoggedEvidenceTests
{
    private const string Globe = """{"profile":"other","making":{"minutesPerPiece":40}}""";

    private const string Both = SentLog.Heading + "1,2027-03-01,RB-014,web,1,52.00,A\n2,2027-03-01,GLOBE,web,1,48.00,A\n";

    [Fact]
    public async Task What_an_order_costs_is_shared_with_the_other_designs_in_it()
    {
        await using var studio = await WithGlobe("main");
        await studio.Sheet("source=shop", Both);
        // Fees 0.029 * (100 + 5) + 0.30 = 3.345, shipping 6.20 - 5.00: 52.00 - (3.345 + 1.20) * 0.52 - 0.80 = 48.8366.
        Assert.Equal("48.84", await Net(studio, "RB-014"));
        // 48.00 - 4.545 * 0.48 - 0.80 = 45.0184.
        Assert.Equal("45.02", await Net(studio, "GLOBE"));
        await studio.Delete("/v1/movements/shop/2");
        // Alone it bears all: 0.971 * 52 - 2.445 = 48.047.
        Assert.Equal("48.05", await Net(studio, "RB-014"));
    }

    [Fact]
    public async Task A_key_held_to_a_profile_sees_what_it_would_see_without_the_others()
    {
        await using var studio = await WithGlobe("other");
        await studio.Sheet("source=shop", Both);
        await studio.BenchSheet("source=book&wholeDays=true",
            "ref,on,sku,started,good,minutes\n1,2027-03-01,RB-014,2,2,90\n2,2027-03-01,GLOBE,2,2,90\n");
        var made = await studio.Post("/v1/keys", """{"name":"held","scopes":["read"],"profiles":["main"]}""");
        using var held = studio.ClientWith(made.Json.GetProperty("key").GetString());
        Assert.Equal("48.05", await Net(studio, "RB-014", held));
        (await studio.Get("/v1/designs/GLOBE/evidence", held)).IsProblem(404, "not-found");
        (await studio.Get("/v1/profiles/other/evidence", held)).IsProblem(404, "not-found");
        var channel = (await studio.Get("/v1/channels/web/evidence?to=2027-04-01", held)).Json.GetProperty("findings");
        Assert.Equal((1m, "#/piecesPerOrder"), (channel[0].GetProperty("value").GetDecimal(), channel[0].GetProperty("pointer").GetString()));
        Assert.Equal(2, (await studio.Get("/v1/channels/web/evidence?to=2027-04-01")).Json.GetProperty("findings")[0]
            .GetProperty("value").GetDecimal());
        // Days have work that this key may not see, so it learns of no bench share: and no piece was made.
        Assert.Equal("nothing-made", Reason(await studio.Get("/v1/profiles/main/evidence?to=2027-04-01", held)));
        Assert.Equal("#/calendar/benchShare", (await studio.Get("/v1/profiles/main/evidence?to=2027-04-01")).Json.GetProperty("findings")[0]
            .GetProperty("pointer").GetString());
    }

    [Fact]
    public async Task Keys_for_checks_and_for_sending_learn_nothing()
    {
        await using var studio = await RiverDropLog.Logged();
        foreach (var scope in new[] { "check", "verdict", "write", "log" })
        {
            using var other = await studio.ClientFor(scope);
            foreach (var path in new[] { "/v1/designs/RB-014/evidence", "/v1/channels/web/evidence", "/v1/profiles/main/evidence" })
                (await studio.Get(path, other)).IsProblem(403, "key-not-allowed");
        }
    }

    [Fact]
    public async Task Without_lines_there_is_no_answer_and_the_reason_says_so()
    {
        await using var studio = new Studio();
        await studio.HasTheRiverDrop();
        foreach (var path in new[] { "/v1/designs/RB-014/evidence", "/v1/channels/web/evidence", "/v1/profiles/main/evidence" })
            Assert.Equal("nothing-logged", Reason(await studio.Get(path)));
        await studio.Sheet("source=book", "ref,on,what,sku,pieces\n1,2027-01-01,given,RB-014,1\n");
        Assert.Equal("nothing-made", Reason(await studio.Get("/v1/designs/RB-014/evidence")));
        Assert.Equal("nothing-made", Reason(await studio.Get("/v1/profiles/main/evidence")));
        Assert.Equal("nothing-logged", Reason(await studio.Get("/v1/designs/RB-014/evidence?from=2027-01-02&to=2027-02-01")));
        (await studio.Get("/v1/designs/NONE/evidence")).IsProblem(404, "not-found");
        (await studio.Get("/v1/channels/none/evidence")).IsProblem(404, "not-found");
        (await studio.Get("/v1/designs/RB-014/evidence?channel=none")).IsProblem(422, "unknown-reference");
        Assert.Equal(["out-of-range"], (await studio.Get("/v1/designs/RB-014/evidence?level=0.4")).IsProblem(422, "invalid-input").Codes);
        Assert.Equal(["out-of-order"],
            (await studio.Get("/v1/designs/RB-014/evidence?from=2027-01-02&to=2027-01-01")).IsProblem(422, "invalid-input").Codes);
    }

    [Fact]
    public async Task The_take_is_of_one_channel_where_one_is_asked_for()
    {
        await using var studio = await WithGlobe("main");
        await studio.Has("/v1/channels/fair", """{"sells":"retail","currency":"USD"}""");
        await studio.Sheet("source=shop", SentLog.Heading + "1,2027-03-01,GLOBE,web,1,52.00,\n2,2027-03-01,GLOBE,fair,2,50.00,\n");
        // The fair takes nothing: 100.00. On the web 48.047.
        Assert.Equal(["148.05", "48.05", "100.00"],
            [await Net(studio, "GLOBE"), await Net(studio, "GLOBE", null, "&channel=web"), await Net(studio, "GLOBE", null, "&channel=fair")]);
    }

    [Fact]
    public async Task Sales_in_another_currency_are_left_out_and_the_answer_says_so()
    {
        await using var studio = await WithGlobe("main");
        await studio.Has("/v1/channels/euro", """{"sells":"retail","currency":"EUR"}""");
        await studio.Sheet("source=shop", SentLog.Heading + "1,2027-03-01,GLOBE,web,1,52.00,\n2,2027-03-01,GLOBE,euro,2,50.00,\n");
        var answer = (await studio.Get("/v1/designs/GLOBE/evidence?to=2027-03-02")).Json;
        Assert.Equal("48.05", answer.GetProperty("take").GetProperty("net").GetRawText());
        Assert.Contains(answer.GetProperty("warnings").EnumerateArray(), warning => warning.GetProperty("code").GetString() == "other-money"
            && warning.GetProperty("message").GetString()!.StartsWith("1 sold line", StringComparison.Ordinal));

        // What was sold in the shop's former currency is not read as its present one.
        await studio.Has("/v1/channels/euro", """{"sells":"retail","currency":"USD"}""");
        Assert.Equal("48.05", await Net(studio, "GLOBE"));
        Assert.Equal("nothing-logged", Reason(await studio.Get("/v1/channels/euro/evidence?to=2027-04-01")));
    }

    [Fact]
    public async Task The_level_asked_for_makes_ranges_wider_and_moves_no_value()
    {
        await using var studio = await RiverDropLog.Logged();
        var before = (Low: decimal.MaxValue, High: decimal.MinValue);
        foreach (var level in new[] { "0.5", "0.9", "0.99" })
        {
            var finding = (await studio.Get($"/v1/designs/RB-014/evidence?to={RiverDropLog.LastDay}&level={level}")).Json.GetProperty("findings")[1];
            var now = (Low: finding.GetProperty("low").GetDecimal(), High: finding.GetProperty("high").GetDecimal());
            Assert.Equal(0.8695m, finding.GetProperty("value").GetDecimal());
            Assert.True(now.Low < before.Low && now.High > before.High, level);
            before = now;
        }
    }

    private static async Task<Studio> WithGlobe(string profile)
    {
        var studio = new Studio();
        await studio.HasTheRiverDrop();
        if (profile != "main")
            await studio.Has("/v1/profiles/" + profile, RiverDropLog.Profile);
        await studio.Has("/v1/designs/GLOBE", Globe.Replace("other", profile, StringComparison.Ordinal));
        return studio;
    }

    private static async Task<string> Net(Studio studio, string sku, HttpClient? client = null, string query = "") =>
        (await studio.Get($"/v1/designs/{sku}/evidence?to=2027-04-01{query}", client)).Json.GetProperty("take").GetProperty("net").GetRawText();

    private static string? Reason(Answer answer) => answer.IsProblem(422, "cannot-compute").Json.GetProperty("reason").GetString();
}
