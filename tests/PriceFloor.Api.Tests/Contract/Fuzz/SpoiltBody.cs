using System.Text;
using System.Text.Json.Nodes;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>
/// A body with one thing wrong in it. What a JSON tree cannot express (a property twice, a number of 400 digits) is inserted as text.
/// </summary>
internal sealed class SpoiltBody(OddValues odd, Random random)
{
    private const string Twice = "@twice@", Instead = "@instead@";

    private static readonly byte[][] s_bytes = [[0], [0xFF], [0xEF, 0xBB, 0xBF], "\""u8.ToArray(), "\r\n"u8.ToArray(), "\n"u8.ToArray(),
        "\r"u8.ToArray(), ","u8.ToArray(), ";"u8.ToArray(), "{"u8.ToArray(), "]"u8.ToArray(), "<"u8.ToArray(), "&"u8.ToArray(), "="u8.ToArray(),
        [0xC3, 0x28], [0xED, 0xA0, 0x80], "\\"u8.ToArray(), "\t"u8.ToArray()];

    /// <summary>JSON with a fault in one place, and a description of the fault.</summary>
    public (string Json, string Done) Json(string json)
    {
        var root = JsonNode.Parse(json);
        if (root is null || random.Next(12) == 0)
            return (odd.Json, "another body");
        var (parent, place) = Place(root);
        if (place is null)
            return (odd.Json, "another body");
        var (done, odds) = ("", "");
        switch (random.Next(8), place)
        {
            case (0, string name):
                ((JsonObject)parent).Remove(name);
                done = $"{name} dropped";
                break;
            case (1, string name):
                parent[name + Twice] = parent[name]?.DeepClone();
                done = $"{name} twice";
                break;
            case (2, string name):
                var value = parent[name]?.DeepClone();
                ((JsonObject)parent).Remove(name);
                parent[odd.Any([name.ToUpperInvariant(), name + "s", "x", "", name + "\u0000", "__proto__"])] = value;
                done = $"{name} renamed";
                break;
            case (3, string):
                parent[odd.Any(["extra", "key", "revision", "savedAt", "$ref"])] = Instead;
                (done, odds) = ("one too many", odd.Json);
                break;
            default:
                Put(parent, place, Instead);
                (done, odds) = ($"{place} changed", odd.Json);
                break;
        }

        return (root.ToJsonString().Replace(Twice, "", StringComparison.Ordinal).Replace($"\"{Instead}\"", odds, StringComparison.Ordinal), done);
    }

    /// <summary>Bytes with a fault in one place.</summary>
    public (byte[] Bytes, string Done) Bytes(byte[] bytes)
    {
        var list = bytes.ToList();
        var at = random.Next(list.Count + 1);
        switch (random.Next(6))
        {
            case 0:
                return ([.. list.Take(at)], $"cut off at {at}");
            case 1 when at < list.Count:
                list[at] = (byte)random.Next(256);
                return ([.. list], $"byte {at} changed");
            case 2:
                list.InsertRange(at, odd.Any(s_bytes));
                return ([.. list], $"bytes put in at {at}");
            case 3:
                var length = Math.Min(random.Next(1, 30), list.Count - at);
                list.RemoveRange(at, length);
                return ([.. list], $"{length} bytes taken out at {at}");
            case 4:
                return ([.. Enumerable.Repeat(bytes, random.Next(2, 40)).SelectMany(one => one)], "again and again");
            default:
                list.InsertRange(at, Encoding.UTF8.GetBytes(odd.Json));
                return ([.. list], $"an odd value put in at {at}");
        }
    }

    private (JsonNode Parent, object? Place) Place(JsonNode root)
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
                return (node, null);
            var place = odd.Any(places);
            var below = place is string name ? node[name] : node[(int)place];
            if (below is not (JsonObject { Count: > 0 } or JsonArray { Count: > 0 }) || random.Next(4) == 0)
                return (node, place);
            node = below;
        }
    }

    private static void Put(JsonNode parent, object place, JsonNode value)
    {
        if (place is string name)
            parent[name] = value;
        else
            parent[(int)place] = value;
    }
}
