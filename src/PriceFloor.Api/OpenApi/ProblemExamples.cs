using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OpenApi;

/// <summary>One answer of each problem type, as the tests provoke it.</summary>
public static class ProblemExamples
{
    private static readonly ExampleFolder s_files = new(typeof(ProblemType));

    public static Example Of(ProblemType type) => s_files[$"problem.{type.Slug}.answer.json"];

    /// <summary>Puts the examples that are referred to into the document.</summary>
    public static void Define(OpenApiDocument document)
    {
        var used = (from response in HeaderText.Responses(document)
                    where response.Content is not null
                    from media in response.Content!.Values
                    where media.Examples is not null
                    from example in media.Examples!.Values.OfType<OpenApiExampleReference>()
                    select example.Reference.Id!).ToHashSet();
        document.Components!.Examples = ProblemTypes.All.Where(type => used.Contains(type.Slug)).OrderBy(type => type.Slug, StringComparer.Ordinal)
            .ToDictionary(type => type.Slug, type => (IOpenApiExample)new OpenApiExample
            {
                Summary = type.Title,
                Value = JsonNode.Parse(Of(type).Text),
            });
    }
}
