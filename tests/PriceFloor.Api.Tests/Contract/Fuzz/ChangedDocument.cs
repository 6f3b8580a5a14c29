using System.Text.Json.Nodes;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>A document with one to three values changed to another kind or size; it often can still be stored.</summary>
internal static class ChangedDocument
{
    private static readonly string[] s_values =
    [
        "0", "-1", "1", "0.0001", "0.000001", "0.00000001", "0.9999", "1000000", "1000000000000", "1e5", "\"1\"", "\"\"", "\"x\"", "\"year\"", "null",
        "true", "[]", "{}", "[null]", "[{}]", "[[]]", "{\"a\":1}", "\"\\u0000\"", "\"2027-13-01\"", "12345678901234567890",
    ];

    public static string Of(string document, Random random)
    {
        var changed = JsonNode.Parse(document)!;
        for (var times = random.Next(1, 4); times > 0; times--)
            Change(changed, random);
        return changed.ToJsonString();
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
}
