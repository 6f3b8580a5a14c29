using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace PriceFloor.Api.OpenApi;

/// <summary>
/// Puts each example that several answers have into the document once, named by an operation and its case; the answers refer to it.
/// </summary>
public sealed class SharedExamples : IDocumentFilter
{
    /// <summary>The name of an answer's example where it is the only one.</summary>
    public const string Only = "answer";

    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        var shared = swaggerDoc.Components!.Examples!;
        foreach (var same in Shown(swaggerDoc).GroupBy(one => one.Value.ToJsonString()).Where(group => group.Skip(1).Any()).ToList())
        {
            var named = same.FirstOrDefault(one => one.Name != Only) ?? same.First();
            var id = named.Name == Only ? named.Operation : $"{named.Operation}.{named.Name}";
            while (shared.ContainsKey(id))
                id += ".more"; // the same operation shares one in another format
            shared.Add(id, new OpenApiExample { Summary = named.Summary, Value = named.Value });
            foreach (var one in same)
            {
                one.Media.Example = null;
                (one.Media.Examples ??= new Dictionary<string, IOpenApiExample>())[one.Name] = new OpenApiExampleReference(id, swaggerDoc);
            }
        }

        swaggerDoc.Components.Examples = shared.OrderBy(one => one.Key, StringComparer.Ordinal).ToDictionary();
    }

    private static IEnumerable<Place> Shown(OpenApiDocument document) =>
        from path in document.Paths.Values
        from operation in path.Operations!.Values
        from response in operation.Responses!
        where response.Key[0] == '2' && response.Value.Content is not null
        from content in response.Value.Content!.Values
        from place in In((OpenApiMediaType)content, operation.OperationId!)
        select place;

    private static IEnumerable<Place> In(OpenApiMediaType media, string operation) => media.Example is { } only
        ? [new Place(media, operation, Only, null, only)]
        : from example in media.Examples ?? new Dictionary<string, IOpenApiExample>()
          where example.Value.Value is not null
          select new Place(media, operation, example.Key, example.Value.Summary, example.Value.Value!);

    private sealed record Place(OpenApiMediaType Media, string Operation, string Name, string? Summary, JsonNode Value);
}
