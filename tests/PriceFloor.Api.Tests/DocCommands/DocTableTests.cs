using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Demo;
using PriceFloor.Api.Tests.Conventions;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>
/// The tables in docs that show the invented studio's figures are what the service answers. To rewrite them:
/// <c>WRITE_TABLES=1 dotnet run --project tests/PriceFloor.Api.Tests -- --filter-class '*DocTableTests'</c>
/// </summary>
public sealed class DocTableTests
{
    private static readonly string[] s_channels = ["web", "gallery", "wholesale"];

    /// <summary>One change each; the cells of its row are what the floor of RB-014 becomes by it.</summary>
    private static readonly (string Change, Action<Documents> Make)[] s_changes =
    [
        ("as it is", _ => { }),
        ("`normalUse` 0.75", documents => documents.Calendar["normalUse"] = 0.75m),
        ("`sellingShare` 0.1, `benchShare` unchanged", documents => documents.Calendar["sellingShare"] = 0.1m),
        ("`selling` of 12 `minutesPerOrder` on web", documents => documents.Channel("web")["selling"] = Json("""{ "minutesPerOrder": 12 }""")),
        ("both of these", documents =>
        {
            documents.Calendar["sellingShare"] = 0.1m;
            documents.Channel("web")["selling"] = Json("""{ "minutesPerOrder": 12 }""");
        }),
        ("`usualDiscount` 0.1 on web", documents => documents.Channel("web")["usualDiscount"] = 0.1m),
        ("`lossShare` 0.03 at the gallery", documents => documents.Channel("gallery")["lossShare"] = 0.03m),
        ("`development` of 12 hours and 150.00 over 100 pieces",
            documents => documents.Design["development"] = Json("""{ "hours": 12, "cost": 150.00, "pieces": 100 }""")),
        ("`rework` of 10 % for 6 minutes at the torch",
            documents => documents.Design["making"]!["steps"]![0]!["rework"] = Json("""{ "share": 0.1, "minutes": 6 }""")),
        ("a kiln with half its loads", documents => documents.CutLoadsTo(2)),
        ("a kiln with a third of its loads", documents => documents.CutLoadsTo(3)),
    ];

    [Fact]
    public async Task What_moves_a_floor_is_what_the_service_answers()
    {
        await using var studio = DemoFilled();
        var rows = new List<string[]>();
        foreach (var (change, make) in s_changes)
        {
            var documents = await Documents.Of(studio);
            make(documents);
            var answer = await studio.Post("/v1/floor-prices", documents.Question);
            Assert.Equal((change, 200), (change, answer.Status));
            string[] cells = [Figure(answer.Json, "floor"), .. answer.Json.GetProperty("channels").EnumerateArray()
                .Select(channel => Figure(channel, "floorPrice")), Figure(answer.Json, "piecesPerYear"), Figure(answer.Json, "floorWithinLimit")];
            rows.Add([change, .. cells.Select((cell, i) => rows.Count > 0 && cell != rows[0][i + 1] ? $"**{cell}**" : cell)]);
        }

        Holds("docs/what-moves-a-floor.md",
            ["alone", "floor", "price on web", "price at the gallery", "price by the dozen", "pieces a year", "floor within the limit"], rows);
    }

    [Fact]
    public async Task The_list_of_what_would_fix_each_price_is_what_the_service_answers()
    {
        await using var studio = DemoFilled();
        var answer = await studio.Get("/v1/remedies?sort=short-by");
        Assert.Equal(200, answer.Status);
        Holds("docs/eight-prices-fall-short.md", ["price", "listed", "short by", "raise to", "cut the year's costs by", "bench minutes",
            "hours a week", "charge for shipping", "pieces a stall", "sell on"], answer.Json.GetProperty("items").EnumerateArray().Select(RowOf));
    }

    [Fact]
    public async Task What_dearer_glass_does_is_what_the_service_answers()
    {
        await using var studio = DemoFilled();
        var before = await OnWeb(studio);
        var sheet = (await studio.Get("/v1/sheets/stock")).Text;
        foreach (var (was, now) in new[] { ("clear-rod,kg,38", "42.56"), ("clear-tube,kg,44", "49.28"), ("colour-rod,kg,155", "173.6"),
            ("soft-rod,kg,32", "35.84"), ("frit,kg,58", "64.96") })
        {
            Assert.Contains(was + "\r\n", sheet, StringComparison.Ordinal);
            sheet = sheet.Replace(was + "\r\n", $"{was[..(was.LastIndexOf(',') + 1)]}{now}\r\n", StringComparison.Ordinal);
        }

        Assert.Equal(200, (await studio.SendBytes("PUT", "/v1/sheets/stock", Encoding.UTF8.GetBytes(sheet), "text/csv")).Status);
        Holds("docs/glass-is-dearer.md", ["design", "price that holds was", "is", "listed"],
            before.Zip(await OnWeb(studio), (was, now) =>
                new[] { Text(was, "sku"), Figure(was, "floorPrice"), Figure(now, "floorPrice"), Figure(now, "listedPrice") }));
    }

    [Fact]
    public async Task What_a_run_must_sell_for_is_what_the_service_answers()
    {
        await using var studio = DemoFilled();
        var answer = await studio.Get("/v1/designs/RB-014/run-prices?channel=web&quantities=1,2,6,12,24,48,60");
        Assert.Equal(200, answer.Status);
        string[] shown = ["quantity", "floor", "floorTotal", "perPiece", "earned", "mostOff"];
        Holds("docs/orders-and-runs.md", ["pieces", "floor a piece", "floor total", "a piece", "earned off one", "off the listed 58.00"],
            answer.Json.GetProperty("runs").EnumerateArray().Select(run => shown.Select(name => Figure(run, name)).ToArray()));
    }

    [Fact]
    public async Task What_a_seat_in_a_class_must_bring_in_is_what_the_service_answers()
    {
        await using var studio = DemoFilled();
        var rows = new List<string[]>();
        foreach (var seats in new[] { "2", "3", "4", "5", "6", "8" })
            rows.Add([seats, .. await OfASeat(studio, seats, "1"), .. await OfASeat(studio, seats, "0.8")]);
        Holds("docs/classes-and-bench-hire.md",
            ["seats", "all taken: floor a seat", "price on web", "80 % taken: floor a seat", "price on web"], rows);
        var bench = await studio.Post("/v1/floor-prices", """
            {"profile":"main","design":{"making":{"minutesPerPiece":20},"materials":[{"material":"torch-gas","quantity":2.5}],"soldShare":1},"channels":[]}
            """);
        Assert.Contains($"the floor is {Figure(bench.Json, "floor")}", File.ReadAllText(Repository.File("docs/classes-and-bench-hire.md")),
            StringComparison.Ordinal);
    }

    private static async Task<string[]> OfASeat(Studio studio, string seats, string taken)
    {
        string Step(string name, int minutes) => $$"""{"name":"{{name}}","handsOnMinutes":{{minutes}},"batchSize":{{seats}}}""";
        var answer = await studio.Post("/v1/floor-prices", $$"""
            {"profile":"main","design":{"making":{"steps":[{{Step("prepare", 60)}},{{Step("lead", 180)}},{{Step("clear up", 45)}}]},
             "materials":[{"name":"glass and gas","amount":14}],"soldShare":{{taken}}},"channels":["web"]}
            """);
        Assert.Equal(200, answer.Status);
        return [Figure(answer.Json, "floor"), Figure(answer.Json.GetProperty("channels")[0], "floorPrice")];
    }

    private static async Task<List<JsonElement>> OnWeb(Studio studio) =>
        [.. (await studio.Get("/v1/price-list?channel=web")).Json.GetProperty("items").EnumerateArray()];

    private static string[] RowOf(JsonElement item)
    {
        JsonElement? Way(string name) => item.GetProperty("remedies").EnumerateArray()
            .Where(way => way.GetProperty("remedy").GetString() == name).Select(way => (JsonElement?)way).SingleOrDefault();
        string Of(string way, string figure = "after") => Way(way) is { } found ? found.GetProperty(figure).GetRawText() : "";
        var elsewhere = Way("sell-elsewhere") is { } found ? found.GetProperty("channels").EnumerateArray().Select(one => Text(one, "channel")) : [];
        return [$"{Text(item, "sku")} on {Text(item, "channel")}", Figure(item, "listedPrice"), Figure(item, "shortBy"), Of("raise-the-price"),
            Of("spend-less", "cut"), $"{Of("work-faster")} instead of {Of("work-faster", "before")}", Of("more-hours"), Of("charge-more-shipping"),
            Of("fuller-stall"), string.Join(", ", elsewhere)];
    }

    private static string Figure(JsonElement of, string name) =>
        of.GetProperty(name) is { ValueKind: not JsonValueKind.Null } figure ? figure.GetRawText() : "none";

    private static string Text(JsonElement of, string name) => of.GetProperty(name).GetString()!;

    internal static Studio DemoFilled()
    {
        var studio = new Studio();
        _ = studio.ClientWith(null);
        studio.Services.GetRequiredService<DemoStudio>().Fill(studio.Services.GetRequiredService<Store>());
        return studio;
    }

    /// <summary>The page has this table, cell by cell. It is found by its head.</summary>
    internal static void Holds(string page, string[] head, IEnumerable<string[]> rows)
    {
        var (path, heading) = (Repository.File(page), Row(head));
        var lines = File.ReadAllLines(path).ToList();
        var from = lines.IndexOf(heading);
        Assert.True(from >= 0, $"{page} has no table with the head {heading}");
        var length = lines.Skip(from).TakeWhile(line => line.StartsWith('|')).Count();
        string[] table = [heading, Row([.. head.Select(_ => "---")]), .. rows.Select(Row)];
        if (Environment.GetEnvironmentVariable("WRITE_TABLES") is "1")
        {
            lines.RemoveRange(from, length);
            lines.InsertRange(from, table);
            File.WriteAllText(path, string.Join('\n', lines) + "\n");
            length = table.Length;
        }

        Assert.Equal(table, lines.Skip(from).Take(length));
    }

    private static string Row(string[] cells) => $"| {string.Join(" | ", cells)} |".Replace("|  |", "| |", StringComparison.Ordinal)
        .Replace("|  |", "| |", StringComparison.Ordinal);

    private static JsonObject Json(string text) => JsonNode.Parse(text)!.AsObject();

    /// <summary>The demo's documents that the floor of RB-014 rests on, as they can be sent back with a change.</summary>
    private sealed record Documents(JsonObject Profile, JsonObject Design, IReadOnlyList<JsonObject> Channels)
    {
        public JsonObject Calendar => Profile["calendar"]!.AsObject();

        public string Question => new JsonObject
        {
            ["profile"] = Profile.DeepClone(),
            ["design"] = Design.DeepClone(),
            ["channels"] = new JsonArray([.. Channels.Select(channel => channel.DeepClone())]),
        }.ToJsonString();

        public static async Task<Documents> Of(Studio studio)
        {
            async Task<JsonObject> Stored(string path) => Json((await studio.Get(path)).Text);
            var channels = new List<JsonObject>();
            foreach (var key in s_channels)
                channels.Add(await Stored($"/v1/channels/{key}"));
            var design = await Stored("/v1/designs/RB-014");
            design.Remove("profile");
            return new Documents(await Stored("/v1/profiles/main"), design, channels);
        }

        /// <param name="part">2 for half of the kiln's loads, 3 for a third.</param>
        public void CutLoadsTo(decimal part)
        {
            var kiln = Profile["limits"]!.AsArray().Single(limit => limit!["name"]!.GetValue<string>() == "kiln")!.AsObject();
            kiln["loadsPerYear"] = kiln["loadsPerYear"]!.GetValue<decimal>() / part;
        }

        public JsonObject Channel(string key) => Channels.Single(channel => channel["key"]!.GetValue<string>() == key);
    }
}
