using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace PriceFloor.Api.OpenApi;

/// <summary>
/// Gives each text and number of a schema that has no example the value that it has in the examples of whole requests and answers. A test sends those
/// and compares, so they cannot drift from the real answers.
/// </summary>
public sealed class ScalarExamples : IDocumentFilter
{
    private const JsonSchemaType Scalar = JsonSchemaType.String | JsonSchemaType.Number | JsonSchemaType.Integer;

    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        var found = new Dictionary<OpenApiSchema, JsonNode>();
        foreach (var media in Media(swaggerDoc))
            foreach (var example in ValuesOf(media, swaggerDoc))
                Walk(media.Schema, example, swaggerDoc, found);
        foreach (var (schema, value) in found)
            schema.Examples = [value.DeepClone()];
    }

    private static IEnumerable<IOpenApiMediaType> Media(OpenApiDocument document) =>
        from path in document.Paths.Values
        from operation in path.Operations!.Values
        from content in operation.Responses!.Values.Select(response => response.Content).Prepend(operation.RequestBody?.Content)
        where content is not null
        from media in content.Values
        select media;

    private static IEnumerable<JsonNode> ValuesOf(IOpenApiMediaType media, OpenApiDocument document)
    {
        if (media.Example is { } only)
            yield return only;
        foreach (var example in media.Examples?.Values ?? [])
            if ((example is OpenApiExampleReference reference ? document.Components!.Examples![reference.Reference.Id!] : example).Value is { } value)
                yield return value;
    }

    private static void Walk(IOpenApiSchema? schema, JsonNode? value, OpenApiDocument document, Dictionary<OpenApiSchema, JsonNode> found)
    {
        if (value is null || Followed(schema, document) is not { } concrete)
            return;
        foreach (var branch in (concrete.OneOf ?? []).Concat(concrete.AnyOf ?? []))
            if (Fits(Followed(branch, document), value))
                Walk(branch, value, document, found);
        if (value is JsonObject members)
            foreach (var (name, property) in concrete.Properties ?? new Dictionary<string, IOpenApiSchema>())
                Walk(property, members[name], document, found);
        else if (value is JsonArray items)
            foreach (var item in items)
                Walk(concrete.Items, item, document, found);
        else if (IsWithout(concrete) && (!found.TryGetValue(concrete, out var before) || (SaysLittle(before) && !SaysLittle(value))))
            found[concrete] = value;
    }

    private static OpenApiSchema? Followed(IOpenApiSchema? schema, OpenApiDocument document) =>
        schema is OpenApiSchemaReference reference ? (OpenApiSchema)document.Components!.Schemas![reference.Reference.Id!] : (OpenApiSchema?)schema;

    private static bool Fits(OpenApiSchema? branch, JsonNode value) => branch is not null && (value is JsonObject members
        ? branch.Properties is not null && (branch.Required ?? new HashSet<string>()).All(members.ContainsKey)
        : value is not JsonArray && IsScalar(branch));

    /// <summary>A scalar, or a value of any type, without an example.</summary>
    private static bool IsWithout(OpenApiSchema schema) =>
        schema is { Examples: null or [], Enum: null or [], OneOf: null or [] } && (schema.Type is null || IsScalar(schema));

    private static bool IsScalar(OpenApiSchema schema) =>
        schema.Type is { } type && (type | Scalar | JsonSchemaType.Null) == (Scalar | JsonSchemaType.Null) && type != JsonSchemaType.Null;

    /// <summary>A zero or an empty text is a worse example than any other value.</summary>
    private static bool SaysLittle(JsonNode value) => value.GetValueKind() == JsonValueKind.Number
        ? value.GetValue<decimal>() == 0
        : value.GetValueKind() == JsonValueKind.String && value.GetValue<string>().Length == 0;
}
