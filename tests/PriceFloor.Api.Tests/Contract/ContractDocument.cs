using System.Text.Json.Nodes;

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

    /// <summary>The object itself, or what it refers to.</summary>
    public JsonObject Followed(JsonNode node) => node["$ref"] is { } reference
        ? reference.GetValue<string>().TrimStart('#', '/').Split('/').Aggregate(root, (found, name) => found[name]!).AsObject()
        : node.AsObject();
}
