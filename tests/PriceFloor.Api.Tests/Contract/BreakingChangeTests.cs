using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using Microsoft.OpenApi.Reader;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.Contract;

public sealed class BreakingChangeTests
{
    /// <summary>A little contract: a design is sent and comes back.</summary>
    private const string Little = """
        { "paths": { "/designs/{sku}": { "put": { "operationId": "putDesign",
            "parameters": [ { "name": "sku", "in": "path", "required": true, "schema": { "type": "string", "maxLength": 64 } }, { "name": "asOf", "in": "query", "schema": { "type": "string" } } ],
            "requestBody": { "required": true, "content": { "application/json": { "schema": { "$ref": "#/components/schemas/Sent" } } } },
            "responses": { "200": { "headers": { "ETag": {} }, "content": { "application/json": { "schema": { "$ref": "#/components/schemas/Got" } } } }, "304": {} } } } },
          "components": { "schemas": {
            "Sent": { "type": "object", "required": ["minutes"], "additionalProperties": false, "properties": {
              "minutes": { "type": "number", "exclusiveMinimum": 0, "maximum": 100 }, "name": { "type": ["string", "null"], "maxLength": 200 },
              "kind": { "$ref": "#/components/schemas/Kind" }, "parts": { "type": "array", "maxItems": 50, "items": { "$ref": "#/components/schemas/Sent" } } } },
            "Got": { "type": "object", "required": ["floor", "verdict"], "properties": {
              "floor": { "type": "number", "format": "decimal" }, "verdict": { "$ref": "#/components/schemas/Verdict" }, "reason": { "type": "string" } } },
            "Kind": { "type": "string", "enum": ["torch", "kiln"] },
            "Verdict": { "type": "string", "enum": ["below-floor", "meets-target"] } } } }
        """;

    public static TheoryData<string, string, string> Breaking => new()
    {
        { "\"/designs/{sku}\"", "\"/pieces/{sku}\"", "PUT /designs/{sku}: gone" },
        { "\"put\":", "\"post\":", "PUT /designs/{sku}: gone" },
        { "\"putDesign\"", "\"storeDesign\"", "operationId" },
        { "\"304\": {}", "\"404\": {}", "304: no longer answered" },
        { "\"ETag\"", "\"Other\"", "header ETag is gone" },
        { "\"200\": { \"headers\": { \"ETag\": {} }, \"content\": { \"application/json\"",
            "\"200\": { \"headers\": { \"ETag\": {} }, \"content\": { \"text/csv\"", "no longer answered in application/json" },
        { "\"required\": true, \"content\": { \"application/json\"", "\"required\": true, \"content\": { \"text/csv\"",
            "a body in application/json is no longer read" },
        { "\"name\": \"asOf\"", "\"name\": \"at\"", "parameter query asOf is gone" },
        { "\"name\": \"asOf\", \"in\": \"query\"", "\"name\": \"asOf\", \"in\": \"query\", \"required\": true",
            "parameter query asOf is newly required" },
        { "\"maxLength\": 64", "\"maxLength\": 32", "maxLength 64 is now 32" },
        { "[\"minutes\"]", "[\"minutes\", \"name\"]", "/name: newly required" },
        { "\"maximum\": 100", "\"maximum\": 99", "maximum 100 is now 99" },
        { "\"exclusiveMinimum\": 0", "\"exclusiveMinimum\": 1", "exclusiveMinimum 0 is now 1" },
        { "[\"string\", \"null\"]", "\"string\"", "null is no longer taken" },
        { "[\"string\", \"null\"], \"maxLength\": 200", "[\"string\", \"null\"], \"maxLength\": 100", "maxLength 200 is now 100" },
        { "[\"string\", \"null\"], \"maxLength\": 200", "[\"string\", \"null\"], \"maxLength\": 200, \"pattern\": \"^a\"", "pattern" },
        { "\"maxItems\": 50", "\"maxItems\": 49", "maxItems 50 is now 49" },
        { "\"name\": { \"type\": [\"string\", \"null\"]", "\"title\": { \"type\": [\"string\", \"null\"]", "body/name: gone" },
        { "\"minutes\": { \"type\": \"number\"", "\"minutes\": { \"type\": \"integer\"", "number is no longer taken" },
        { "[\"torch\", \"kiln\"]", "[\"torch\"]", "kiln is no longer taken" },
        { "\"reason\"", "\"why\"", "answer/reason: gone" },
        { "[\"floor\", \"verdict\"]", "[\"floor\"]", "verdict: no longer sure to be there" },
        { "{ \"type\": \"number\", \"format\": \"decimal\" }", "{ \"type\": [\"number\", \"null\"], \"format\": \"decimal\" }",
            "null is answered now" },
        { "{ \"type\": \"number\", \"format\": \"decimal\" }", "{ \"type\": \"string\", \"format\": \"decimal\" }", "string is answered now" },
        { "\"format\": \"decimal\"", "\"format\": \"double\"", "format decimal is now \"double\"" },
        { "[\"below-floor\", \"meets-target\"]", "[\"below-floor\", \"below-target\", \"meets-target\"]", "below-target is a new word in an answer" },
    };

    public static TheoryData<string, string> Harmless => new()
    {
        { "\"maximum\": 100", "\"maximum\": 101" },
        { "\"exclusiveMinimum\": 0", "\"minimum\": 0" },
        { ", \"maximum\": 100", "" },
        { "\"maxLength\": 200", "\"maxLength\": 201" },
        { "[\"torch\", \"kiln\"]", "[\"torch\", \"kiln\", \"bench\"]" },
        { "\"required\": [\"minutes\"], ", "" },
        { "\"minutes\": { \"type\": \"number\"", "\"note\": { \"type\": \"string\" }, \"minutes\": { \"type\": \"number\"" },
        { "\"minutes\": { \"type\": \"number\"", "\"minutes\": { \"type\": [\"number\", \"string\"]" },
        { "\"reason\": {", "\"detail\": { \"type\": \"string\" }, \"reason\": {" },
        { "[\"floor\", \"verdict\"]", "[\"floor\", \"verdict\", \"reason\"]" },
        { "[\"below-floor\", \"meets-target\"]", "[\"below-floor\"]" },
        { "\"304\": {}", "\"304\": {}, \"409\": {}" },
        { "{ \"name\": \"asOf\"", "{ \"name\": \"limit\", \"in\": \"query\", \"schema\": {} }, { \"name\": \"asOf\"" },
        { "{ \"paths\": {", "{ \"paths\": { \"/more\": { \"get\": {} }," },
    };

    [Theory]
    [MemberData(nameof(Breaking))]
    public void A_change_that_breaks_a_client_is_found_and_named(string from, string to, string said)
    {
        Assert.Contains(from, Little, StringComparison.Ordinal);
        Assert.Contains(BreakingChanges.Between(JsonNode.Parse(Little)!, JsonNode.Parse(Little.Replace(from, to, StringComparison.Ordinal))!),
            change => change.Contains(said, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Harmless))]
    public void A_change_that_breaks_nobody_passes(string from, string to)
    {
        Assert.Contains(from, Little, StringComparison.Ordinal);
        Assert.Empty(BreakingChanges.Between(JsonNode.Parse(Little)!, JsonNode.Parse(Little.Replace(from, to, StringComparison.Ordinal))!));
    }

    [Fact]
    public async Task This_contract_breaks_no_client_of_the_last_released_one()
    {
        var released = await JsonOf("openapi/released.v1.yaml");
        Assert.True(released["paths"]!.AsObject().Count > 25);
        var changes = BreakingChanges.Between(released, await JsonOf("openapi/pricefloor.v1.yaml"));
        Assert.True(changes.Count == 0, "These would break clients (docs/versioning.md says what to do):\n" + string.Join('\n', changes));
    }

    private static async Task<JsonNode> JsonOf(string path)
    {
        var settings = new OpenApiReaderSettings();
        settings.AddYamlReader();
        await using var file = File.OpenRead(Repository.File(path));
        var read = await OpenApiDocument.LoadAsync(file, "yaml", settings, Studio.Cancellation);
        return JsonNode.Parse(await read.Document!.SerializeAsJsonAsync(OpenApiSpecVersion.OpenApi3_1, Studio.Cancellation))!;
    }
}
