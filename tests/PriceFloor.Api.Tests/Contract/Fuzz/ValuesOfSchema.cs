using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>Values that a schema of the contract allows. References are mostly to documents in the store.</summary>
internal sealed class ValuesOfSchema(ContractDocument contract, Random random)
{
    private const int Deepest = 6;

    private static readonly Dictionary<string, string[]> s_stored = new()
    {
        ["profile"] = ["main", "second"],
        ["sku"] = ["RB-014", "RB-015", "RB-016"],
        ["design"] = ["RB-014", "RB-015"],
        ["channel"] = ["web", "stall"],
        ["currency"] = ["USD"],
        ["material"] = ["clear-rod", "kiln-kwh"],
        ["uses"] = ["kiln"],
        ["at"] = ["start", "finish", "anneal"],
        ["key"] = ["main", "second"],
        ["rules"] = ["main"],
    };

    /// <param name="node">A schema.</param>
    /// <param name="name">The name of the property, which shows what it refers to.</param>
    public JsonNode? Of(JsonNode node, string name, int depth = 0)
    {
        var schema = contract.Followed(node);
        if (s_stored.TryGetValue(name, out var keys) && IsText(schema) && random.Next(12) > 0)
            return Any(keys);
        if (schema["examples"] is JsonArray { Count: > 0 } examples && random.Next(2) == 0)
            return examples[random.Next(examples.Count)]?.DeepClone();
        if (schema["enum"] is JsonArray words)
            return words[random.Next(words.Count)]?.DeepClone();
        if ((schema["oneOf"] ?? schema["anyOf"]) is JsonArray ways)
            return Of(depth >= Deepest ? ways[0]! : ways[random.Next(ways.Count)]!, name, depth + 1);
        return TypeOf(schema) switch
        {
            "object" => Object(schema, depth),
            "array" => Array(schema, name, depth),
            "string" => Text(schema),
            "integer" => JsonNode.Parse(decimal.Truncate(Number(schema)).ToString(CultureInfo.InvariantCulture)),
            "number" => JsonNode.Parse(Number(schema).ToString(CultureInfo.InvariantCulture)),
            "boolean" => random.Next(2) == 0,
            _ => null,
        };
    }

    /// <summary>The document with one of its properties, at any depth, replaced or added.</summary>
    public JsonNode? Varied(JsonNode? document, JsonNode node, string name, int depth = 0)
    {
        var schema = contract.Followed(node);
        if (document is JsonArray { Count: > 0 } items && schema["items"] is { } item)
        {
            var at = random.Next(items.Count);
            items[at] = Varied(items[at]?.DeepClone(), item, name, depth + 1);
            return items;
        }

        if (document is not JsonObject members || schema["properties"] is not JsonObject properties)
            return Of(schema, name, depth);
        var (chosen, inner) =
            Any([.. properties.Where(property => contract.Followed(property.Value!)["readOnly"] is null && property.Value!["readOnly"] is null)]);
        members[chosen] = members[chosen] is { } there && random.Next(4) > 0
            ? Varied(there.DeepClone(), inner!, chosen, depth + 1)
            : Of(inner!, chosen, depth + 1);
        return members;
    }

    private JsonObject Object(JsonObject schema, int depth)
    {
        var made = new JsonObject();
        var required = (schema["required"] as JsonArray)?.Select(one => one!.GetValue<string>()).ToHashSet() ?? [];
        foreach (var (name, property) in schema["properties"] as JsonObject ?? [])
            if (required.Contains(name) || (property!["readOnly"] is null && depth < Deepest && random.Next(4) == 0))
                made[name] = Of(property!, name, depth + 1);
        return made;
    }

    private JsonArray Array(JsonObject schema, string name, int depth) =>
        [.. Enumerable.Range(0, depth >= Deepest ? 0 : random.Next((int)(schema["minItems"]?.GetValue<int>() ?? 0), 4))
            .Select(_ => Of(schema["items"]!, name, depth + 1))];

    private string Text(JsonObject schema) => schema["format"]?.GetValue<string>() switch
    {
        "date" => $"{random.Next(2024, 2029)}-{random.Next(1, 13):00}-{random.Next(1, 29):00}",
        "date-time" => $"2027-01-{random.Next(1, 29):00}T{random.Next(24):00}:00:00Z",
        _ => new string(Any(['a', 'k', 'Z', '9']),
            random.Next(Math.Max(1, Length(schema, "minLength", 1)), Math.Min(Length(schema, "maxLength", 40), 40) + 1)),
    };

    private decimal Number(JsonObject schema)
    {
        var least = Bound(schema, "minimum") ?? Bound(schema, "exclusiveMinimum") + 0.01m ?? 0;
        var most = Math.Min(Bound(schema, "maximum") ?? 1000, 1_000_000_000_000);
        return random.Next(8) switch
        {
            0 => least,
            1 => most,
            _ =>
                decimal.Round(least + (Math.Min(most, Any([1m, 50m, 5000m])) - least) * random.Next(1, 100) / 100, 2) is var number && number >= least
                    ? number
                    : least,
        };
    }

    private static decimal? Bound(JsonObject schema, string name) =>
        schema[name] is JsonValue value && decimal.TryParse(value.ToJsonString(), CultureInfo.InvariantCulture, out var bound) ? bound : null;

    private static int Length(JsonObject schema, string name, int otherwise) => schema[name]?.GetValue<int>() ?? otherwise;

    private static bool IsText(JsonObject schema) => TypeOf(schema) == "string" && schema["enum"] is null || schema["oneOf"] is JsonArray;

    private static string? TypeOf(JsonObject schema) => schema["type"] switch
    {
        JsonArray several => several.Select(one => one!.GetValue<string>()).FirstOrDefault(one => one != "null"),
        JsonValue one when one.GetValueKind() == JsonValueKind.String => one.GetValue<string>(),
        _ => schema["properties"] is null ? null : "object",
    };

    private T Any<T>(IReadOnlyList<T> list) => list[random.Next(list.Count)];
}
