using System.Text.Json.Nodes;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>The OpenAPI document as it is served, with references followed.</summary>
public sealed class ContractDocument(JsonNode root)
{
    public JsonNode Root => root;

    public IEnumerable<(string Path, string Method, JsonObject Operation)> Operations =>
        from path in root["paths"]!.AsObject()
        from operation in path.Value!.AsObject()
        select (path.Key, operation.Key, operation.Value!.AsObject());

    public static async Task<ContractDocument> Of(Studio studio) => new(JsonNode.Parse((await studio.Get("/openapi/v1.json")).Text)!);

    /// <summary>The object itself, or the object that it refers to.</summary>
    public JsonObject Followed(JsonNode node) => node["$ref"] is { } reference
        ? reference.GetValue<string>().TrimStart('#', '/').Split('/').Aggregate(root, (found, name) => found[name]!).AsObject()
        : node.AsObject();

    /// <summary>The examples of a media type or a parameter by name, also those that it refers to; a single one has the empty name.</summary>
    public static IReadOnlyDictionary<string, JsonNode> ExamplesOf(JsonNode node) =>
        node["examples"] is JsonObject several
            ? several.ToDictionary(one => one.Key == SharedExamples.Only ? "" : one.Key,
                one => new ContractDocument(node.Root).Followed(one.Value!)["value"]!)
        : node["example"] is { } only ? new Dictionary<string, JsonNode> { [""] = only } : new Dictionary<string, JsonNode>();

    /// <summary>The first of them.</summary>
    public static JsonNode? ExampleOf(JsonNode node) => ExamplesOf(node).Values.FirstOrDefault();
}
