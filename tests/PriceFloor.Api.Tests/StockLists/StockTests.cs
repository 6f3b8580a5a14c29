using System.Text.Json;
using PriceFloor.Api.Tests.Evidence.Logged;
using PriceFloor.Api.Tests.LogLines;
using Xunit;

namespace PriceFloor.Api.Tests.StockLists;

/// <summary>Pieces on hand that are slow to sell, and what can be done with them, from the stored log.</summary>
public sealed class StockTests
{
    private const string Gallery = """{"sells":"retail","currency":"USD","shopShare":0.4}""";

    [Fact]
    public async Task Pieces_are_there_by_place_and_by_age_and_add_up()
    {
        await using var studio = await TwoLoads();
        var answer = await studio.Get("/v1/stock?to=2027-03-31");
        var item = Assert.Single(answer.Json.GetProperty("items").EnumerateArray());
        // 8 made on 2026-01-01 and 5 on 2026-12-01; two of the first were sold, three stand at the gallery.
        Assert.Equal("RB-014 main USD 11 6 web 52.00", Told(item, "sku", "profile", "currency", "onHand", "slow", "channel", "price"));
        Assert.Equal(["null 8", "\"gallery\" 3"], Pairs(item, "places", "channel", "pieces"));
        Assert.Equal(["\"2026-01-01\" 454 6", "\"2026-12-01\" 120 5"], Pairs(item, "ages", "made", "days", "pieces"));
        Assert.Equal("365 2027-03-31 []", Told(answer.Json, "olderThan", "to", "unknown"));
        Assert.Equal("""{"profiles":["main@1"],"designs":["RB-014@1"],"channels":["web@1"],"log":"m5+b0"}""",
            answer.Json.GetProperty("basis").GetRawText());
        Assert.Equal(304, (await studio.Get("/v1/stock?to=2027-03-31", null, ("If-None-Match", answer["ETag"]!))).Status);
        // With younger ones: all eleven.
        Assert.Equal("11", Told(Assert.Single((await studio.Get("/v1/stock?to=2027-03-31&olderThan=100")).Json.GetProperty("items")
            .EnumerateArray()), "slow"));
        Assert.Empty((await studio.Get("/v1/stock?to=2027-03-31&olderThan=454")).Json.GetProperty("items").EnumerateArray());
    }

    [Fact]
    public async Task No_mark_down_undercuts_a_gallery_unless_it_is_sold_off_there_too()
    {
        await using var studio = await TwoLoads();
        var down = Way(await studio.Get("/v1/stock?to=2027-03-31"), "mark-down");
        Assert.Equal("null undercuts-gallery", Told(down, "worth", "reason"));
        Assert.Contains("undercuts-gallery", await Warned(studio));
        await studio.Has("/v1/designs/RB-014/prices/gallery", """{"price":70.00,"clears":{"pieces":3,"until":"2027-12-31"}}""");
        Assert.DoesNotContain("undercuts-gallery", await Warned(studio));
        Assert.NotEqual("undercuts-gallery", Reason(Way(await studio.Get("/v1/stock?to=2027-03-31"), "mark-down")));
        // Once the day has passed, the gallery is undercut again.
        await studio.Has("/v1/designs/RB-014/prices/gallery", """{"price":70.00,"clears":{"pieces":3,"until":"2027-01-01"}}""");
        Assert.Contains("undercuts-gallery", await Warned(studio));
    }

    [Fact]
    public async Task Ways_come_with_the_one_that_brings_most_first_and_their_workings()
    {
        await using var studio = await RiverDropLog.Logged();
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":52.00}""");
        // A year after the last load: all 31 are more than a year old, and nothing more is known to sell past the oldest age.
        var answer = await studio.Get("/v1/stock?to=2028-11-30&materialsKept=0.5&reworkMinutes=2&workings=true&days=56");
        var item = Assert.Single(answer.Json.GetProperty("items").EnumerateArray());
        Assert.Equal("31 31", Told(item, "onHand", "slow"));
        var ways = item.GetProperty("ways").EnumerateArray().ToList();
        var worths = ways.Where(way => way.GetProperty("worth").ValueKind == JsonValueKind.Number)
            .Select(way => way.GetProperty("worth").GetDecimal()).ToList();
        Assert.Equal(worths.OrderDescending(), worths);
        // Half of 6.00 less two minutes at 45.00 an hour: 3.00 - 1.50.
        Assert.Equal("1.50", Told(Way(answer, "rework"), "worth"));
        var down = Way(answer, "mark-down");
        Assert.True(down.GetProperty("price").GetDecimal() < 52);
        var lines = item.GetProperty("workings").EnumerateArray()
            .ToDictionary(line => line.GetProperty("symbol").GetString()!, line => line.GetProperty("value").GetDecimal());
        // net(p) = 0.971 p - 2.445, as of the worked example.
        Assert.Equal(0.971m * down.GetProperty("price").GetDecimal() - 2.445m, lines["netMarked"]);
        Assert.Equal(lines["markDown"], lines["netMarked"] * lines["soldInTime"]);
        Assert.Equal(decimal.Round(31 * lines["netMarked"] / lines["fullSaleLeaves"], 2), down.GetProperty("mayDisplace").GetDecimal());
        Assert.Equal("0.0000", Told(item, "soldSoon"));
        Assert.Equal("0.00 52.00", Told(Way(answer, "hold"), "worth", "price"));
    }

    [Fact]
    public async Task Fewer_that_wait_longer_are_marked_down_less()
    {
        await using var studio = await RiverDropLog.Logged();
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":52.00}""");
        decimal Best(Answer answer) => Way(answer, "mark-down").GetProperty("best").GetDecimal();
        var soon = Best(await studio.Get("/v1/stock?to=2028-11-30&days=28"));
        Assert.True(Best(await studio.Get("/v1/stock?to=2028-11-30&days=120")) > soon);
        // What a piece taken apart brings need not be earned by the mark-down.
        Assert.True(Best(await studio.Get("/v1/stock?to=2028-11-30&days=28&materialsKept=1")) > soon);
    }

    [Fact]
    public async Task Pieces_that_hardly_sell_are_slow_before_they_are_old_once_enough_was_sold_to_know()
    {
        await using var studio = await RiverDropLog.Logged();
        var item = Assert.Single((await studio.Get($"/v1/stock?to={RiverDropLog.LastDay}")).Json.GetProperty("items").EnumerateArray());
        // None is a year old; those whose age few ever outlived by a sale are slow.
        Assert.InRange(item.GetProperty("slow").GetInt32(), 1, 30);
        Assert.True(item.GetProperty("soldSoon").GetDecimal() < 0.25m);
        await using var young = await TwoLoads(); // two sold: too few to know
        Assert.Empty((await young.Get("/v1/stock?to=2026-12-02")).Json.GetProperty("items").EnumerateArray());
    }

    [Fact]
    public async Task What_was_sold_and_never_made_is_not_known_to_be_there()
    {
        await using var studio = new Studio();
        await studio.HasTheRiverDrop();
        await studio.Sheet("source=shop", SentLog.Heading + "1,2027-01-02,RB-014,web,1,58.00,\n");
        var answer = (await studio.Get("/v1/stock?to=2029-01-01&olderThan=0")).Json;
        Assert.Equal("""[] ["RB-014"]""", Told(answer, "items", "unknown"));
    }

    [Fact]
    public async Task The_past_is_answered_as_it_was_known()
    {
        await using var studio = await TwoLoads();
        const string Path = "/v1/stock?to=2027-03-31";
        var first = await studio.Get(Path);
        var moment = studio.Clock.GetUtcNow().AddSeconds(30);
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        await studio.Sheet("source=book", RiverDropLog.Heading + "9,2027-01-05,sold,RB-014,web,1,52.00,52.00,\n");
        Assert.NotEqual(first.Text, (await studio.Get(Path)).Text);
        Assert.Equal(first.Text, (await studio.Get($"{Path}&asOf={moment:yyyy-MM-ddTHH:mm:ss}Z")).Text);
    }

    [Fact]
    public async Task A_held_key_sees_the_stock_of_its_profiles_and_others_none()
    {
        await using var studio = await TwoLoads();
        await studio.Has("/v1/profiles/other", RiverDropLog.Profile);
        await studio.Has("/v1/designs/ON-1", """{"profile":"other","making":{"minutesPerPiece":40}}""");
        await studio.Sheet("source=book", RiverDropLog.Heading + "10,2026-01-01,made,ON-1,,4,,,\n");
        var made = await studio.Post("/v1/keys", """{"name":"held","scopes":["read"],"profiles":["other"]}""");
        using var held = studio.ClientWith(made.Json.GetProperty("key").GetString());
        var own = (await studio.Get("/v1/stock?to=2027-03-31", held)).Json;
        Assert.Equal("ON-1 4 null", Told(Assert.Single(own.GetProperty("items").EnumerateArray()), "sku", "onHand", "channel"));
        Assert.Equal("""["other@1"]""", own.GetProperty("basis").GetProperty("profiles").GetRawText());
        Assert.Equal(["no-price", "no-price"], own.GetProperty("items")[0].GetProperty("ways").EnumerateArray().Select(Reason));
        (await studio.Get("/v1/stock?profile=main", held)).IsProblem(422, "unknown-reference");
        (await studio.Get("/v1/stock?sku=RB-014", held)).IsProblem(422, "unknown-reference");
        Assert.Equal(["ON-1", "RB-014"], (await studio.Get("/v1/stock?to=2027-03-31")).Json.GetProperty("items").EnumerateArray()
            .Select(item => Told(item, "sku")));
        Assert.Equal(["RB-014"], (await studio.Get("/v1/stock?to=2027-03-31&sku=RB-014")).Json.GetProperty("items").EnumerateArray()
            .Select(item => Told(item, "sku")));
        (await studio.Get("/v1/stock?olderThan=-1&days=0&materialsKept=2&profile=")).IsProblem(422, "invalid-input");
        Assert.Equal(["required"], (await studio.Get("/v1/stock?reworkMinutes=4")).IsProblem(422, "invalid-input").Codes);
        (await studio.Get("/v1/stock?from=2027-01-01")).IsProblem(400, "unreadable-request");
        foreach (var scope in new[] { "check", "verdict", "write", "log" })
        {
            using var client = await studio.ClientFor(scope);
            (await studio.Get("/v1/stock", client)).IsProblem(403, "key-not-allowed");
        }
    }

    /// <summary>Eight and five pendants, of which three stand at a gallery and two were sold.</summary>
    private static async Task<Studio> TwoLoads()
    {
        var studio = new Studio();
        await studio.HasTheRiverDrop();
        await studio.Has("/v1/channels/gallery", Gallery);
        Assert.StartsWith("5 stored, ", (await studio.Sheet("source=book", RiverDropLog.Heading
            + "1,2026-01-01,made,RB-014,,8,,,\n2,2026-02-01,sold,RB-014,web,1,52.00,52.00,\n3,2026-03-01,sent,RB-014,gallery,3,,,\n"
            + "4,2026-06-01,sold,RB-014,web,1,52.00,52.00,\n5,2026-12-01,made,RB-014,,5,,,\n")).Told(), StringComparison.Ordinal);
        return studio;
    }

    private static JsonElement Way(Answer answer, string way) => answer.Json.GetProperty("items")[0].GetProperty("ways").EnumerateArray()
        .Single(one => one.GetProperty("way").GetString() == way);

    private static string? Reason(JsonElement way) => way.TryGetProperty("reason", out var reason) ? reason.GetString() : null;

    private static async Task<IEnumerable<string?>> Warned(Studio studio) => (await studio.Get("/v1/stock?to=2027-03-31")).Json
        .GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("code").GetString());

    private static IEnumerable<string> Pairs(JsonElement item, string list, params string[] fields) => item.GetProperty(list).EnumerateArray()
        .Select(one => string.Join(' ', fields.Select(field => one.GetProperty(field).GetRawText())));

    private static string Told(JsonElement line, params string[] fields) => string.Join(' ', fields.Select(field =>
        line.GetProperty(field) is { ValueKind: JsonValueKind.String } text ? text.GetString() : line.GetProperty(field).GetRawText()));
}
