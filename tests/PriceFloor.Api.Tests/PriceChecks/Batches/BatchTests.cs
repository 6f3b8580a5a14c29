using System.Globalization;
using System.Text;
using System.Text.Json;
using PriceFloor.Api.Http.Reading;
using Xunit;

namespace PriceFloor.Api.Tests.PriceChecks.Batches;

public sealed class BatchTests
{
    private const string Path = "/v1/price-checks/batch";
    private const string Json = "application/json", Ndjson = "application/x-ndjson", Csv = "text/csv";

    [Fact]
    public async Task The_same_checks_alone_in_an_array_in_lines_and_in_a_sheet_give_the_same_answers()
    {
        var random = new Random(11);
        await using var studio = await AShop();
        var asked = Enumerable.Range(0, 120).Select(_ => (Sku: (string[])["RB-014", "ST-001", "Stud / silver", "NOPE", "rb-014"],
            Channel: (string[])["web", "order", "abroad", "nope"]))
            .Select(from => (Sku: from.Sku[random.Next(5)], Channel: from.Channel[random.Next(10) % 4],
                Price: (random.Next(1, 30000) / 100m).ToString(CultureInfo.InvariantCulture) + (random.Next(20) == 0 ? "1" : ""))).ToList();
        var bodies = asked.Select(one => JsonSerializer.Serialize(new Dictionary<string, object>
        {
            ["sku"] = one.Sku,
            ["channel"] = one.Channel,
            ["price"] = one.Price,
        })).ToList();

        var alone = new List<JsonElement>();
        foreach (var body in bodies)
            alone.Add((await studio.Post("/v1/price-checks", body)).Json);
        var array = (await studio.Post(Path, $"[{string.Join(',', bodies)}]")).Json.GetProperty("items").EnumerateArray().ToList();
        var lines = Lines(await Post(studio, Ndjson, string.Join('\n', bodies)));
        var sheet = (await Post(studio, Csv, "sku,channel,price\n" + string.Concat(asked.Select(one => $"{one.Sku},{one.Channel},{one.Price}\n"))))
            .Text.TrimEnd('\n').Split('\n').Skip(1).ToList();

        Assert.Equal((asked.Count, asked.Count + 1, asked.Count), (array.Count, lines.Count, sheet.Count));
        Assert.Contains(alone, answer => answer.TryGetProperty("verdict", out _));
        Assert.Contains(alone, answer => answer.TryGetProperty("status", out _));
        for (var i = 0; i < asked.Count; i++)
        {
            if (alone[i].TryGetProperty("verdict", out var verdict))
            {
                var echoed = $$"""{"sku":"{{asked[i].Sku}}","channel":"{{asked[i].Channel}}",{{alone[i].GetRawText()[1..]}}""";
                Assert.Equal((echoed, echoed), (array[i].GetRawText(), lines[i].GetRawText()));
                var (floor, target) = (alone[i].GetProperty("floorPrice").GetRawText(), alone[i].GetProperty("targetPrice").GetRawText());
                Assert.StartsWith($"{asked[i].Sku},{asked[i].Channel},{asked[i].Price},{verdict.GetString()},{floor},{target},,", sheet[i],
                    StringComparison.Ordinal);
            }
            else
            {
                var detail = alone[i].GetProperty("detail").GetString()!;
                foreach (var other in new[] { array[i], lines[i] })
                    Assert.Equal((asked[i].Sku, asked[i].Channel), (other.GetProperty("sku").GetString(), other.GetProperty("channel").GetString()));
                foreach (var other in new[] { array[i], lines[i] })
                    Assert.Equal((alone[i].GetProperty("type").GetString(), detail),
                        (other.GetProperty("type").GetString(), other.GetProperty("detail").GetString()));
                Assert.Contains(alone[i].TryGetProperty("errors", out var errors) ? errors[0].GetProperty("detail").GetString()!
                    .Replace("\"", "\"\"", StringComparison.Ordinal) : detail, sheet[i], StringComparison.Ordinal);
            }
        }

        var counted = alone.GroupBy(answer => answer.TryGetProperty("verdict", out var word) ? word.GetString()! : "")
            .ToDictionary(group => group.Key, group => group.Count());
        var summary = lines[^1].GetProperty("summary");
        Assert.Equal((counted.GetValueOrDefault("meets-target"), counted.GetValueOrDefault("below-target"), counted.GetValueOrDefault("below-floor"),
            counted.GetValueOrDefault("")),
            (summary.GetProperty("meetsTarget").GetInt32(), summary.GetProperty("belowTarget").GetInt32(),
                summary.GetProperty("belowFloor").GetInt32(), summary.GetProperty("unanswered").GetInt32()));
    }

    [Fact]
    public async Task A_line_with_a_fault_is_answered_in_its_place_and_the_rest_continues()
    {
        await using var studio = await AShop();
        const string Good = """{"sku":"RB-014","channel":"web","price":58}""";
        var lines = Lines(await Post(studio, Ndjson,
            $"{Good}\r\n\r\n{{\"sku\":\"RB-014\",\n{Good}\n[1]\n{{\"sku\":\"RB-014\",\"channel\":\"web\",\"price\":\"x\"}}\n{Good}"));
        Assert.Equal(["below-floor", "400 # 3 16", "below-floor", "400 # 5 1", "422 #/price 6 1", "below-floor", "summary"], lines.Select(Short));

        var items = (await studio.Post(Path, $"[{Good},\n  {{\"sku\":1}}, null,\n{Good}]")).Json.GetProperty("items").EnumerateArray();
        Assert.Equal(["below-floor", "400 #/1/sku 2 10", "400 #/2 2 14", "below-floor"], items.Select(Short));
    }

    [Fact]
    public async Task A_refused_row_of_a_sheet_repeats_its_names_as_far_as_they_can_be_read()
    {
        await using var studio = await AShop();
        var sheet = $"sku,note,channel,price\nRB-014,\"two\nlines\",web,\"5,8\"\n\"RB\n014\",,web,58\n{new string('x', 129)},,web,58\n,,web,58\n"
            + "RB-014,,,58\nRB-014,\"x\"y,web,58\n";
        var rows = Lines(await Post(studio, Csv, sheet, headers: ("Accept", Ndjson)))[..^1];
        string? Told(JsonElement row, string name) => row.TryGetProperty(name, out var value) ? value.GetString() : null;
        Assert.Equal(
            [("RB-014", "web"), ("RB\n014", "web"), (null, "web"), (null, "web"), ("RB-014", null), (null, null)],
            rows.Select(row => (Told(row, "sku"), Told(row, "channel"))));
        Assert.Equal([3, 4, 6, 7, 8, 9], rows.Select(row => row.GetProperty("errors")[0].GetProperty("line").GetInt32()));
    }

    [Fact]
    public async Task A_sheet_comes_back_untouched_with_our_columns_beside_it()
    {
        await using var studio = await AShop();
        var sheet = "\uFEFFItem;Note;List price\r\n\"RB-014\";\"two\r\nlines; and \"\"quotes\"\"\";58,00\r\nST-001; kept as it is ;1.234,50\r\n"
            + "ST-001;x;\"1,5\"\r\n";
        var answer = await Post(studio, Csv, sheet, "?skuColumn=Item&priceColumn=List%20price&channel=web&dialect=semicolon");
        Assert.Equal(
            "Item;Note;List price;verdict;floorPrice;targetPrice;problem;shortBy\r\n\"RB-014\";\"two\r\n"
            + "lines; and \"\"quotes\"\"\";58,00;below-floor;61,74;120,00;;3,65\r\n"
            + "ST-001; kept as it is ;1.234,50;;;;\"Line 4, column 24: price is \"\"1.234,50\"\"; remove the thousands point, "
            + "so that it reads like 1200,50.\";\r\n"
            + "ST-001;x;\"1,5\";below-floor;31,00;60,00;;28,79\r\n", answer.Text);
        Assert.Equal("text/csv", answer.ContentType);
    }

    [Fact]
    public async Task Last_months_answer_can_be_sent_again_and_is_answered_in_place()
    {
        await using var studio = await AShop();
        var first = (await Post(studio, Csv, "sku,channel,price,note\r\nRB-014,web,58.00,a\r\nNOPE,web,1,b\r\n")).Text;
        Assert.Equal(first, (await Post(studio, Csv, first)).Text);
        Assert.StartsWith("sku,channel,price,note,verdict,floorPrice,targetPrice,problem,shortBy\r\n", first, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Json, Csv)]
    [InlineData(Json, Ndjson)]
    [InlineData(Ndjson, Csv)]
    [InlineData(Ndjson, Json)]
    [InlineData(Csv, Json)]
    [InlineData(Csv, Ndjson)]
    public async Task Any_format_is_answered_in_any_other(string given, string wanted)
    {
        await using var studio = await AShop();
        const string One = """{"sku":"RB-014","channel":"web","price":58}""", Other = """{"sku":"=NOPE","channel":"web","price":7}""";
        var body = given == Json ? $"[{One},{Other}]" : given == Ndjson ? $"{One}\n{Other}\n" : "sku,channel,price\nRB-014,web,58\n=NOPE,web,7\n";
        var answer = await Post(studio, given, body, headers: ("Accept", wanted));
        Assert.Equal(wanted, answer.ContentType!.Split(';')[0]);
        if (wanted == Csv)
            Assert.Matches("^sku,channel,price,verdict,floorPrice,targetPrice,problem,shortBy\r\nRB-014,web,58,below-floor,61.74,120.00,,3.65\r\n"
                + "'=NOPE,web,7,,,,\"Line \\d, column \\d+: There is no design \"\"=NOPE\"\"; there are RB-014, ST-001; case counts.\",\r\n$",
                answer.Text);
        else
            Assert.Equal(["below-floor", "422"],
                (wanted == Json ? answer.Json.GetProperty("items").EnumerateArray() : Lines(answer).Take(2)).Select(one => Short(one).Split(' ')[0]));
        Assert.Equal("Accept", answer["Vary"]);
    }

    [Fact]
    public async Task A_key_learns_from_a_batch_just_what_it_learns_from_one_check()
    {
        await using var studio = await AShop();
        using var verdict = await studio.ClientFor("verdict");
        using var check = await studio.ClientFor("check");
        const string Sheet = "sku,channel,price\nRB-014,web,58\nrb-014,web,58\n", Line = """{"sku":"RB-014","channel":"web","price":58}""";
        Assert.Equal("RB-014,web,58,below-floor,,,", (await Post(studio, Csv, Sheet, client: verdict)).Text.Split('\n')[1]);
        Assert.Equal("RB-014,web,58,below-floor,61.74,120.00,", (await Post(studio, Csv, Sheet, client: check)).Text.Split('\n')[1]);
        Assert.DoesNotContain("there is \"\"RB-014", (await Post(studio, Csv, Sheet, client: check)).Text, StringComparison.Ordinal);
        Assert.Contains("there is \"\"RB-014", (await Post(studio, Csv, Sheet)).Text, StringComparison.Ordinal);
        foreach (var client in new[] { verdict, check, studio.Client })
            Assert.Equal("""{"sku":"RB-014","channel":"web",""" + (await studio.Post("/v1/price-checks", Line, client)).Text[1..],
                Lines(await Post(studio, Ndjson, Line, client: client))[0].GetRawText());
    }

    [Fact]
    public async Task What_cannot_be_a_batch_is_refused_before_anything_is_answered()
    {
        await using var studio = await AShop();
        foreach (var body in new[] { "", "{}", "[{]", "[1,]", "[1", "[] []", "[1 2]" })
            (await studio.Post(Path, body)).IsProblem(400, "unreadable-request");
        foreach (var type in new[] { null, "text/plain", "application/json; charset=utf-16" })
            (await Post(studio, type, "[]")).IsProblem(415, "media-type");
        (await Post(studio, Json, "[]", headers: ("Accept", "image/png"))).IsProblem(406, "not-acceptable");
        (await Post(studio, Csv, "")).IsProblem(400, "unreadable-request");
        Assert.Equal(["channelColumn", "priceColumn", "skuColumn"], (await Post(studio, Csv, "a,b\n1,2\n")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["channel"], (await Post(studio, Csv, "sku,price\n", "?channel=nope")).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["channelColumn"],
            (await Post(studio, Csv, "sku,price\n", "?channel=web&channelColumn=shop")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["channel"], (await Post(studio, Ndjson, "", "?channel=web")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["dialect"], (await Post(studio, Csv, "sku,price\n", "?dialect=tab")).IsProblem(422, "invalid-input").Pointers);
    }

    [Fact]
    public async Task Nothing_asked_is_nothing_answered()
    {
        await using var studio = await AShop();
        const string Summary = """{"summary":{"meetsTarget":0,"belowTarget":0,"belowFloor":0,"unanswered":0}}""";
        Assert.Equal("""{"items":[],""" + Summary[1..], (await studio.Post(Path, "[]")).Text);
        Assert.Equal(Summary + "\n", (await Post(studio, Ndjson, "\n\n")).Text);
        Assert.Equal("sku,channel,price,verdict,floorPrice,targetPrice,problem,shortBy\n", (await Post(studio, Csv, "sku,channel,price\n")).Text);
    }

    [Fact]
    public async Task A_batch_can_be_asked_as_of_another_time()
    {
        await using var studio = await AShop();
        studio.Clock.Advance(TimeSpan.FromDays(40));
        await studio.Put("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "54000", StringComparison.Ordinal));
        const string Sheet = "sku,channel,price\nRB-014,web,58\n";
        Assert.Contains("below-floor,61.74,", (await Post(studio, Csv, Sheet, "?asOf=2027-01-20T00:00:00Z")).Text, StringComparison.Ordinal);
        Assert.Contains("below-floor,92.47,", (await Post(studio, Csv, Sheet)).Text, StringComparison.Ordinal); // (90 + 0.25) / 0.976
    }

    /// <summary>RB-014 at 60.00 an hour's rule, ST-001 half of it, a web shop, an order book and a channel in another currency.</summary>
    internal static async Task<Studio> AShop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/ST-001", """{"profile":"main","making":{"piecesPerDay":8},"aliases":["Stud / silver"]}""");
        await studio.Has("/v1/channels/order", """{"sells":"wholesale","currency":"USD","priceStep":0.5}""");
        await studio.Has("/v1/channels/abroad", """{"sells":"retail","currency":"EUR"}""");
        return studio;
    }

    internal static Task<Answer> Post(Studio studio, string? type, string body, string query = "", HttpClient? client = null,
        params (string Name, string Value)[] headers) =>
            studio.SendBytes("POST", Path + query, Encoding.UTF8.GetBytes(body), type, client, headers);

    private static List<JsonElement> Lines(Answer answer) =>
        [.. answer.Text.TrimEnd('\n').Split('\n').Select(line => JsonDocument.Parse(line).RootElement)];

    private static string Short(JsonElement line) => line.TryGetProperty("verdict", out var verdict) ? verdict.GetString()!
        : line.TryGetProperty("summary", out _) ? "summary"
        : line.GetProperty("status").GetRawText() + string.Concat(line.GetProperty("errors").EnumerateArray().Take(1).Select(error => " "
            + $"{(error.TryGetProperty("pointer", out var pointer) ? pointer.GetString() : "")} {error.GetProperty("line").GetRawText()} "
            + $"{error.GetProperty("column").GetRawText()}"));
}
