using System.Globalization;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace PriceFloor.Api.OpenApi;

/// <summary>
/// Puts each problem response that several operations have into the document once, named by its problems; the operations refer to it.
/// </summary>
public sealed class SharedProblems : IDocumentFilter
{
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        var shared = new Dictionary<string, IOpenApiResponse>();
        var responses = from path in swaggerDoc.Paths.Values
                        from operation in path.Operations!.Values
                        from response in operation.Responses!
                        where response.Key[0] is '4' or '5'
                        select (operation.Responses, Status: response.Key, Response: (OpenApiResponse)response.Value);
        foreach (var same in responses.Where(one => HasNothingOfItsOwn(one.Response))
            .GroupBy(one => $"{one.Status} {one.Response.Description} {string.Join(' ', one.Response.Headers!.Keys)}")
            .Where(group => group.Skip(1).Any()).ToList())
        {
            var first = same.First();
            var name = NameOf(first.Response);
            while (!shared.TryAdd(name, first.Response))
                name += "_"; // the same problems with other headers, if addresses retire
            foreach (var one in same)
                one.Responses![one.Status] = new OpenApiResponseReference(name, swaggerDoc);
        }

        swaggerDoc.Components!.Responses = shared.OrderBy(one => one.Key, StringComparer.Ordinal).ToDictionary();
    }

    /// <summary>An example of a single operation keeps its response with the operation.</summary>
    private static bool HasNothingOfItsOwn(OpenApiResponse response) => Examples(response).Values.All(example => example is OpenApiExampleReference);

    private static string NameOf(OpenApiResponse response) => string.Join("Or",
        Examples(response).Keys.Select(slug => CultureInfo.InvariantCulture.TextInfo.ToTitleCase(slug).Replace("-", "", StringComparison.Ordinal)));

    private static IDictionary<string, IOpenApiExample> Examples(OpenApiResponse response) => response.Content!["application/problem+json"].Examples!;
}
