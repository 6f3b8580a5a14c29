using System.Text;
using System.Text.Json.Nodes;
using Xunit;

namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>Values of every kind in every place of every document: an answer or a problem, never a fault.</summary>
public sealed class FuzzTests
{
    private static readonly string[] s_values =
    [
        "0", "-1", "1", "0.0001", "0.000001", "0.00000001", "0.9999", "1000000", "1000000000000", "1e5", "\"1\"", "\"\"", "\"x\"", "\"year\"", "null", "true", "[]", "{}", "[null]", "[{}]", "[[]]", "{\"a\":1}", "\"\\u0000\"", "\"2027-13-01\"", "12345678901234567890",
    ];

    [Theory]
    [InlineData("/v1/profiles/main", Sample.Rich, 20270103)]
    [InlineData("/v1/designs/RB-014", Sample.RichDesign, 20270104)]
    [InlineData("/v1/channels/web", Sample.RichChannel, 20270105)]
    public async Task Any_value_in_any_place_is_answered(string path, string document, int seed)
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.Rich);
        await studio.Has("/v1/designs/RB-014", Sample.RichDesign);
        await studio.Has("/v1/channels/web", Sample.RichChannel);
        var random = new Random(seed);
        for (var i = 0; i < 60; i++)
        {
            var changed = JsonNode.Parse(document)!;
            for (var times = random.Next(1, 4); times > 0; times--)
                Change(changed, random);
            var text = changed.ToJsonString();
            var answer = await studio.Put(path, text);
            Assert.True(answer.Status is 200 or 400 or 409 or 422, $"{answer.Status}: {text}");
            if (answer.Status != 200)
                continue;
            Assert.Equal(answer.Text, (await studio.Put(path, answer.Text)).Text);
            await AsksEverything(studio, text);
        }
    }

    private static async Task AsksEverything(Studio studio, string document)
    {
        string[] gets =
        [
            "/v1/profiles/main/requirement?", "/v1/designs/RB-014/floor-price?", "/v1/price-checks?sku=RB-014&channel=web&price=58&", "/v1/designs/RB-014/remedies?channel=web&price=58&",
            "/v1/designs/RB-014/break-even?channel=web&price=1000000000000&planned=1000000&", "/v1/designs/RB-014/price-parts?channel=web&price=58&",
        ];
        const string line = """{"sku":"RB-014","channel":"web","price":1000000000000,""";
        (string Path, string Body)[] posts =
        [
            ("/v1/break-even", $$"""{"profile":"main","lines":[{{line}}"ratio":1000000}],"surplus":{"amount":1000000000000,"tax":"after"} }"""),
            ("/v1/year-plans", $$"""{"profile":"main","lines":[{{line}}"units":1000000}],"hoursKeptBack":1}"""),
            ("/v1/year-plans/best", $$"""{"profile":"main","goal":"maximum-surplus","lines":[{{line}}"maximum":1000000}]}"""),
            ("/v1/design-budgets", """{"profile":"main","channel":"web","price":58,"materials":1}"""),
        ];
        foreach (var path in gets)
            IsAnswered(path, await studio.Get(path + "workings=true"));
        foreach (var (path, body) in posts)
            IsAnswered(path, await studio.Post(path + "?workings=true", body));

        void IsAnswered(string path, Answer answer) => Assert.True(answer.Status is 200 or 422, $"{answer.Status} to {path}: {document}");
    }

    private static void Change(JsonNode root, Random random)
    {
        var node = root;
        while (true)
        {
            var places = node switch
            {
                JsonObject members => members.Select(member => (object)member.Key).ToList(),
                JsonArray items => [.. Enumerable.Range(0, items.Count).Cast<object>()],
                _ => [],
            };
            if (places.Count == 0)
                return;
            var place = places[random.Next(places.Count)];
            var below = place is string name ? node![name] : node![(int)place];
            if (below is JsonValue or null || random.Next(4) == 0)
            {
                var value = JsonNode.Parse(s_values[random.Next(s_values.Length)]);
                if (place is string member && random.Next(8) == 0)
                    ((JsonObject)node).Remove(member);
                else if (place is string key)
                    node[key] = value;
                else
                    node[(int)place] = value;
                return;
            }

            node = below;
        }
    }

    [Fact]
    public async Task Damaged_bytes_of_a_what_if_never_bring_the_service_down()
    {
        await using var studio = new Studio();
        var whole = Encoding.UTF8.GetBytes($$"""{"profile":{{Sample.Rich}},"design":{{Sample.RichDesign}},"channels":[{{Sample.RichChannel}}]}""");
        var random = new Random(20270106);
        for (var i = 0; i < 100; i++)
        {
            var damaged = (byte[])whole.Clone();
            damaged[random.Next(damaged.Length)] = "0123456789eE-+.,:{}[]\"\\ntf\0\t"u8[random.Next(28)];
            var answer = await studio.SendBytes("POST", "/v1/floor-prices?workings=true", damaged, "application/json");
            Assert.True(answer.Status is 200 or 400 or 422, $"{answer.Status}: {Encoding.UTF8.GetString(damaged)}");
        }
    }
}
