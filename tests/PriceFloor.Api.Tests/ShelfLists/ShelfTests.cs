using System.Globalization;
using System.Text.Json;
using PriceFloor.Api.Tests.Evidence.Logged;
using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.ShelfLists;

/// <summary>All designs of a profile beside each other, from the stored log.</summary>
public sealed class ShelfTests
{
    private static readonly string s_path = $"/v1/shelf?profile=main&to={RiverDropLog.LastDay}";

    [Fact]
    public async Task The_pendant_of_the_worked_example_has_its_line()
    {
        await using var studio = await RiverDropLog.Logged();
        var answer = await studio.Get(s_path);
        Assert.Equal("""["RB-014"]""", answer.Json.GetProperty("carriers").GetRawText());
        var line = Assert.Single(answer.Json.GetProperty("items").EnumerateArray());
        // 90/126 sold; 126 - 95 = 31 are there; the last load was made on day 330, and of the first load (day 0) none is left.
        Assert.Equal("RB-014 90 4324.23 3602.92 37.31 36.90 37.72 1.0000 1.0000 1.0000 0.7143 83 31", Told(line, "sku", "sold", "take",
            "contribution", "earned", "earnedLow", "earnedHigh", "shareOfContribution", "shareOfHours", "pull",
            "sellThrough", "daysToSell", "onHand"));
        Assert.Equal("""["#/findings/0","#/take"] redesign""", $"{line.GetProperty("because").GetRawText()} {line.GetProperty("decision")}");
        Assert.Equal("""{"profile":"main@1","log":"m221+b12"}""", answer.Json.GetProperty("basis").GetRawText());
        // 90 orders in 366 days: 90 * 365/366 a year on the mean of the run; each takes 1.07306 hours of 2,000.
        Assert.InRange(answer.Json.GetProperty("scarcity").GetDecimal(), 0.04m, 0.06m);
        Assert.Equal(304, (await studio.Get(s_path, null, ("If-None-Match", answer["ETag"]!))).Status);
    }

    [Fact]
    public async Task As_a_sheet_it_has_a_row_for_each_design()
    {
        await using var studio = await RiverDropLog.Logged();
        var sheet = await studio.Get(s_path, null, ("Accept", "text/csv"));
        var rows = sheet.Text.TrimStart('\uFEFF').Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, rows.Length);
        Assert.StartsWith("sku,name,currency,sold,take,contribution,earned,", rows[0], StringComparison.Ordinal);
        Assert.StartsWith("RB-014,River drop pendant,USD,90,4324.23,3602.92,37.31,36.90,37.72,", rows[1], StringComparison.Ordinal);
        Assert.EndsWith("#/findings/0 #/take,redesign,", rows[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Three_designs_share_contribution_and_hours_and_the_fewest_that_bring_70_percent_are_named()
    {
        await using var studio = new Studio();
        await studio.HasTheRiverDrop();
        await studio.Has("/v1/channels/shop", """{"sells":"retail","currency":"USD"}""");
        foreach (var (sku, minutes) in new[] { ("A", 60), ("B", 60), ("C", 30) })
            await studio.Has($"/v1/designs/{sku}", $$$"""{"profile":"main","making":{"minutesPerPiece":{{{minutes}}}}}""");
        await studio.Sheet("source=book",
            SentLog.Heading + "1,2027-03-01,A,shop,6,50.00,\n2,2027-03-01,B,shop,2,50.00,\n3,2027-03-01,C,shop,4,25.00,\n");
        var answer = (await studio.Get("/v1/shelf?to=2027-04-01&profile=main")).Json;
        // Contributions 300, 100, 100 of 500; hours 6, 2, 2 of 10: all pull alike. 300 is 60 %, with B (first of equals) 80 %.
        Assert.Equal(["A 0.6000 0.6000 1.0000 50.00", "B 0.2000 0.2000 1.0000 50.00", "C 0.2000 0.2000 1.0000 50.00"],
            answer.GetProperty("items").EnumerateArray()
                .Select(line => Told(line, "sku", "shareOfContribution", "shareOfHours", "pull", "earned")));
        Assert.Equal("""["A","B"]""", answer.GetProperty("carriers").GetRawText());
        Assert.All(answer.GetProperty("items").EnumerateArray(), line => Assert.Equal("wait", line.GetProperty("decision").GetString()));
    }

    [Fact]
    public async Task A_sale_changes_the_line_of_its_design_and_of_those_in_the_same_order()
    {
        await using var studio = await TwoDesigns();
        var first = await Lines(studio);
        Assert.Equal(first, await Lines(studio));
        await studio.Sheet("source=shop", SentLog.Heading + "3,2027-03-02,GLOBE,web,1,48.00,\n");
        var second = await Lines(studio);
        Assert.Equal((first["RB-014"], "48.84"), (second["RB-014"], second["RB-014"]));
        // Its part of the first order and a sale alone: 45.0184 + 0.971 * 48 - 2.445 = 89.1814.
        Assert.Equal("89.18", second["GLOBE"]);
        // A third line of the first order takes a part of its costs: 0.029 * (200 + 5) + 0.30 + 1.20 = 7.445; 52 - 7.445 * 52/200 - 0.80 = 49.2643.
        await studio.Sheet("source=shop", SentLog.Heading + "4,2027-03-01,GLOBE,web,1,100.00,A\n");
        Assert.Equal("49.26", (await Lines(studio))["RB-014"]);
        await studio.Delete("/v1/movements/shop/4");
        Assert.Equal(second, await Lines(studio));
        await studio.Has("/v1/channels/web", RiverDropLog.Web.Replace("0.8", "0.9", StringComparison.Ordinal));
        Assert.Equal("48.74", (await Lines(studio))["RB-014"]);
    }

    [Fact]
    public async Task What_is_kept_says_what_a_new_start_says()
    {
        await using var studio = await TwoDesigns();
        var random = new Random(7);
        for (var round = 0; round < 25; round++)
        {
            var line = $"r{random.Next(8)},2027-03-0{random.Next(1, 9)},{(random.Next(2) == 0 ? "RB-014" : "GLOBE")},web,{random.Next(1, 4)},"
                + $"{random.Next(20, 90)}.00,{(random.Next(3) == 0 ? "" : "O" + random.Next(3).ToString(CultureInfo.InvariantCulture))}\n";
            if (random.Next(4) == 0)
                await studio.Delete($"/v1/movements/shop/r{random.Next(8)}");
            else
                await studio.Sheet("source=shop", SentLog.Heading + line);
            // As of a later moment nothing is kept: every line is read.
            var kept = await studio.Get("/v1/shelf?to=2027-04-01&profile=main");
            studio.Clock.Advance(TimeSpan.FromMinutes(1));
            var anew = await studio.Get($"/v1/shelf?to=2027-04-01&profile=main&asOf={studio.Clock.GetUtcNow():yyyy-MM-ddTHH:mm:ss}Z");
            Assert.Equal(anew.Text, kept.Text);
        }
    }

    [Fact]
    public async Task Whose_shelf_must_be_said_and_a_held_key_sees_its_own()
    {
        await using var studio = await RiverDropLog.Logged();
        await studio.Has("/v1/profiles/other", RiverDropLog.Profile);
        await studio.Has("/v1/designs/ON-1", """{"profile":"other","making":{"minutesPerPiece":40}}""");
        Assert.Equal(["required"], (await studio.Get("/v1/shelf")).IsProblem(422, "invalid-input").Codes);
        (await studio.Get("/v1/shelf?profile=none")).IsProblem(422, "unknown-reference");
        Assert.Equal(0, (await studio.Get("/v1/shelf?profile=other")).Json.GetProperty("items").GetArrayLength());
        var made = await studio.Post("/v1/keys", """{"name":"held","scopes":["read"],"profiles":["other"]}""");
        using var held = studio.ClientWith(made.Json.GetProperty("key").GetString());
        Assert.Equal("other", (await studio.Get("/v1/shelf?profile=other", held)).Json.GetProperty("profile").GetString());
        (await studio.Get("/v1/shelf?profile=main", held)).IsProblem(422, "unknown-reference");
        foreach (var scope in new[] { "check", "verdict", "write", "log" })
        {
            using var client = await studio.ClientFor(scope);
            (await studio.Get("/v1/shelf?profile=main", client)).IsProblem(403, "key-not-allowed");
        }
    }

    private static async Task<Studio> TwoDesigns()
    {
        var studio = new Studio();
        await studio.HasTheRiverDrop();
        await studio.Has("/v1/designs/GLOBE", """{"profile":"main","making":{"minutesPerPiece":40}}""");
        await studio.Sheet("source=shop", SentLog.Heading + "1,2027-03-01,RB-014,web,1,52.00,A\n2,2027-03-01,GLOBE,web,1,48.00,A\n");
        return studio;
    }

    private static async Task<Dictionary<string, string>> Lines(Studio studio) =>
        (await studio.Get("/v1/shelf?to=2027-04-01&profile=main")).Json.GetProperty("items").EnumerateArray()
            .ToDictionary(line => line.GetProperty("sku").GetString()!, line => line.GetProperty("take").GetRawText());

    private static string Told(JsonElement line, params string[] fields) => string.Join(' ', fields.Select(field =>
        line.GetProperty(field) is { ValueKind: JsonValueKind.String } text ? text.GetString() : line.GetProperty(field).GetRawText()));
}
