using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Json.Schema;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>The contract's schemas as JSON Schema 2020-12, to check real texts with.</summary>
public sealed partial class ContractSchemas(ContractDocument contract)
{
    private const string Components = "#/components/schemas/";

    private readonly JsonObject _all = contract.Root["components"]!["schemas"]!.AsObject();
    private readonly Dictionary<string, JsonSchema> _schemas = [];

    /// <summary>The faults of the text; none if it is valid.</summary>
    public IReadOnlyList<string> Faults(JsonNode schema, string json)
    {
        var text = schema.ToJsonString();
        if (!_schemas.TryGetValue(text, out var built))
            _schemas[text] = built = Build(text);
        using var document = JsonDocument.Parse(json);
        var result = built.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return result.IsValid ? [] : [.. (result.Details ?? []).Where(detail => detail.Errors is { Count: > 0 })
            .Select(detail => $"{detail.InstanceLocation}: {string.Join("; ", detail.Errors!.Values)}")];
    }

    /// <summary>The schema with just the definitions that it reaches.</summary>
    private JsonSchema Build(string schema)
    {
        var reached = new Dictionary<string, string>();
        void Reach(string text)
        {
            foreach (var name in Reference().Matches(text).Select(match => match.Groups["name"].Value))
                if (!reached.ContainsKey(name))
                {
                    var found = reached[name] = _all[name]!.ToJsonString();
                    Reach(found);
                }
        }

        Reach(schema);
        var definitions = string.Join(',', reached.Select(one => $"\"{one.Key}\":{one.Value}"));
        return JsonSchema.FromText(
            $"{{\"$schema\":\"https://json-schema.org/draft/2020-12/schema\",\"$defs\":{{{definitions}}},\"allOf\":[{schema}]}}".Replace(Components,
                "#/$defs/", StringComparison.Ordinal));
    }

    [GeneratedRegex($"\"{Components}(?<name>[A-Za-z]+)\"", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Reference();
}
