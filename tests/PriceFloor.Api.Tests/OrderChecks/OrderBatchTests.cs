using System.Text;
using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.OrderChecks;

/// <summary>Many orders in one request: each has its answer or its problem in its place.</summary>
public sealed class OrderBatchTests
{
    private const string Path = "/v1/order-checks", Good = """{"channel":"web","items":[{"sku":"RB-014","pieces":1,"price":90}]}""",
        Low = """{"channel":"web","items":[{"sku":"RB-014","pieces":1}]}""", Unknown = """{"channel":"no","items":[{"sku":"RB-014","pieces":1}]}""",
        Broken = """{"channel":"web","items":[{"sku":"RB-014","peices":1}]}""";

    [Fact]
    public async Task An_array_is_answered_item_by_item()
    {
        await using var studio = await AShop();
        var answer = await studio.Post(Path, $"[{Good},\n {Unknown},{Broken},{Low}]");
        Assert.Equal((200, "application/json"), (answer.Status, answer.ContentType));
        var items = answer.Json.GetProperty("items");
        Assert.Equal("""{"meetsFloor":1,"belowFloor":1,"unanswered":2}""", answer.Json.GetProperty("summary").GetRawText());
        Assert.Equal(("web", "meets-floor"), (items[0].GetProperty("channel").GetString(), items[0].GetProperty("verdict").GetString()));
        Assert.Equal(("no", 422), (items[1].GetProperty("channel").GetString(), items[1].GetProperty("status").GetInt32()));
        Assert.Equal("#/1/channel", items[1].GetProperty("errors")[0].GetProperty("pointer").GetString());
        Assert.Equal((400, "#/2/items/0/peices", 2), (items[2].GetProperty("status").GetInt32(),
            items[2].GetProperty("errors")[0].GetProperty("pointer").GetString(), items[2].GetProperty("errors")[0].GetProperty("line").GetInt32()));
        Assert.Equal("below-floor", items[3].GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task Lines_are_answered_as_lines_or_as_Accept_says()
    {
        await using var studio = await AShop();
        var body = Encoding.UTF8.GetBytes($"{Good}\n\nnot json\n{Low}\n");
        var answer = await studio.SendBytes("POST", Path, body, "application/x-ndjson");
        var lines = answer.Text.TrimEnd('\n').Split('\n').Select(line => JsonDocument.Parse(line).RootElement).ToList();
        Assert.Equal(("application/x-ndjson", 4), (answer.ContentType, lines.Count));
        Assert.Equal(("meets-floor", 400, "below-floor"), (lines[0].GetProperty("verdict").GetString(), lines[1].GetProperty("status").GetInt32(),
            lines[2].GetProperty("verdict").GetString()));
        Assert.Equal(3, lines[1].GetProperty("errors")[0].GetProperty("line").GetInt32());
        Assert.Equal("""{"summary":{"meetsFloor":1,"belowFloor":1,"unanswered":1}}""", lines[3].GetRawText());
        var json = await studio.SendBytes("POST", Path, body, "application/x-ndjson", null, ("Accept", "application/json"));
        Assert.Equal(3, json.Json.GetProperty("items").GetArrayLength());
        var one = await studio.SendBytes("POST", Path, Encoding.UTF8.GetBytes(Good), "application/json", null, ("Accept", "application/x-ndjson"));
        Assert.Equal(2, one.Text.TrimEnd('\n').Split('\n').Length);
    }

    [Fact]
    public async Task A_single_order_says_the_same_as_the_same_order_in_a_batch()
    {
        await using var studio = await AShop();
        var single = await studio.Post(Path, Good);
        Assert.Equal(single.Text.Insert(1, "\"channel\":\"web\","), (await studio.Post(Path, $"[{Good}]")).Json.GetProperty("items")[0].GetRawText());
    }

    [Theory]
    [InlineData("[]", 422, "invalid-input")]
    [InlineData("[", 400, "unreadable-request")]
    [InlineData("""[{"channel":"web"}] x""", 400, "unreadable-request")]
    [InlineData("7", 400, "unreadable-request")]
    [InlineData("", 400, "unreadable-request")]
    [InlineData("null", 400, "unreadable-request")]
    public async Task A_body_that_is_neither_is_refused_whole(string body, int status, string slug)
    {
        await using var studio = await AShop();
        (await studio.Post(Path, body)).IsProblem(status, slug);
    }

    [Fact]
    public async Task A_thousand_are_taken_and_one_more_is_not()
    {
        await using var studio = await AShop();
        string Many(int count) => $"[{string.Join(',', Enumerable.Repeat(Good, count))}]";
        Assert.Equal(1000, (await studio.Post(Path, Many(1000))).Json.GetProperty("items").GetArrayLength());
        (await studio.Post(Path, Many(1001))).IsProblem(413, "too-large");
        (await studio.SendBytes("POST", Path, "sku,channel\n"u8.ToArray(), "text/csv")).IsProblem(415, "media-type");
        (await studio.SendBytes("POST", Path, "{}"u8.ToArray(), "text/plain")).IsProblem(415, "media-type");
    }

    private static async Task<Studio> AShop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        return studio;
    }
}
