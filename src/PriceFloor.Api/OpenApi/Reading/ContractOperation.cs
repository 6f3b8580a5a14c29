using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace PriceFloor.Api.OpenApi.Reading;

/// <summary>One call of the contract.</summary>
internal sealed record ContractOperation(string Method, string Path, JsonElement Body)
{
    private static readonly JsonSerializerOptions s_indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public string Id => Body.Text("operationId");

    public IReadOnlyList<JsonElement> Parameters =>
        Body.TryGetProperty("parameters", out var parameters)
            ? [.. parameters.EnumerateArray().Where(one => !one.TryGetProperty("$ref", out _))]
            : [];

    /// <summary>All calls, under the tags and in the order that the contract lists them.</summary>
    public static IReadOnlyList<ContractTag> ByTag(JsonElement contract)
    {
        var calls = contract.GetProperty("paths").EnumerateObject()
            .SelectMany(path => path.Value.EnumerateObject()
                .Where(call => call.Value.ValueKind == JsonValueKind.Object && call.Value.TryGetProperty("operationId", out _))
                .Select(call => new ContractOperation(call.Name.ToUpperInvariant(), path.Name, call.Value)))
            .ToLookup(call => call.Body.GetProperty("tags")[0].GetString());
        return [.. contract.GetProperty("tags").EnumerateArray()
            .Select(tag => new ContractTag(tag.Text("name"), tag.Text("description"), [.. calls[tag.Text("name")]]))
            .Where(tag => tag.Operations.Count > 0)];
    }

    /// <summary>A command line with the examples of the contract, for a service on this machine.</summary>
    /// <param name="shared">The examples that several bodies refer to.</param>
    public string Command(JsonElement shared)
    {
        var query = Parameters.Where(one => one.Text("in") == "query" && one.TryGetProperty("required", out var needed) && needed.GetBoolean())
            .Select(one => $"{one.Text("name")}={Uri.EscapeDataString(ExampleOf(one))}").ToList();
        var path = Parameters.Where(one => one.Text("in") == "path")
            .Aggregate(Path, (text, one) => text.Replace("{" + one.Text("name") + "}", ExampleOf(one), StringComparison.Ordinal));
        var line = new StringBuilder($"curl -s{(Method == "GET" ? "" : " -X " + Method)} "
            + $"\"http://127.0.0.1:5080{path}{(query.Count > 0 ? "?" + string.Join('&', query) : "")}\" -H \"Authorization: Bearer $KEY\"");
        if (Body.TryGetProperty("requestBody", out var body) && body.TryGetProperty("content", out var contents)
                && contents.EnumerateObject().FirstOrDefault() is { Value.ValueKind: JsonValueKind.Object } content)
        {
            var sent = ExamplesOf(content.Value, shared).Select(example => example.Text).FirstOrDefault("...");
            line.Append($" \\\n  -H \"Content-Type: {content.Name}\" \\\n  -d '{sent.Replace("'", "'\\''", StringComparison.Ordinal)}'");
        }

        return line.ToString();
    }

    /// <summary>The examples of a body, JSON indented, other formats as they are.</summary>
    /// <param name="content">The body in one format.</param>
    /// <param name="shared">The examples that several bodies refer to.</param>
    public static IEnumerable<(string Summary, string Text)> ExamplesOf(JsonElement content, JsonElement shared) =>
        content.TryGetProperty("examples", out var several)
            ? several.EnumerateObject().Select(one => Followed(one.Value, shared))
                .Select(one => (one.Text("summary"), TextOf(one.GetProperty("value"))))
            : content.TryGetProperty("example", out var single) ? [("", TextOf(single))] : [];

    private static JsonElement Followed(JsonElement example, JsonElement shared) =>
        example.TryGetProperty("$ref", out var reference) ? shared.GetProperty(reference.GetString()!.Split('/')[^1]) : example;

    private static string ExampleOf(JsonElement parameter) => parameter.TryGetProperty("example", out var example) ? example.ToString() : "...";

    private static string TextOf(JsonElement value) =>
        value.ValueKind == JsonValueKind.String ? value.GetString()! : JsonSerializer.Serialize(value, s_indented);
}

/// <summary>Calls about one thing.</summary>
internal sealed record ContractTag(string Name, string Description, IReadOnlyList<ContractOperation> Operations)
{
    public string Anchor => "about-" + Name.ToLowerInvariant().Replace(' ', '-');
}
