using System.Text.Json;
using PriceFloor.Api.Http;
using Xunit;

namespace PriceFloor.Api.Tests.Contract;

/// <summary>The document agrees exactly with the service.</summary>
public sealed class SchemaTests
{
    private static readonly string[] s_inexact = ["double", "float"];

    [Fact]
    public async Task Every_operation_has_its_own_id_a_tag_with_a_description_and_an_answer_with_an_example()
    {
        await using var studio = new Studio();
        var document = (await studio.Get("/openapi/v1.json")).Json;
        var operations = document.GetProperty("paths").EnumerateObject().SelectMany(path => path.Value.EnumerateObject())
            .Select(operation => operation.Value).ToList();
        var ids = operations.Select(operation => operation.GetProperty("operationId").GetString()!).ToList();
        Assert.Equal(ids.Distinct(), ids);
        var tags = document.GetProperty("tags").EnumerateArray().Select(tag => tag.GetProperty("name").GetString()!).ToHashSet();
        foreach (var operation in operations)
        {
            Assert.All(operation.GetProperty("tags").EnumerateArray(), tag => Assert.Contains(tag.GetString()!, tags));
            foreach (var response in operation.GetProperty("responses").EnumerateObject().Where(response => response.Name is "200" or "201"))
                Assert.True(response.Value.GetProperty("content").EnumerateObject().First() is var content
                    && (content.Name == Format.Xlsx.MediaType || content.Value.EnumerateObject().Any(
                        member => member.Name is "example" or "examples")),
                    operation.GetProperty("operationId").GetString());
        }
    }

    [Fact]
    public async Task No_number_is_binary_and_no_body_is_one_of_several_by_a_discriminator()
    {
        await using var studio = new Studio();
        var document = (await studio.Get("/openapi/v1.json")).Json;
        foreach (var (path, value) in Walk(document, "#"))
        {
            Assert.False(value.ValueKind == JsonValueKind.Object && value.TryGetProperty("discriminator", out _), path);
            if (value.ValueKind != JsonValueKind.Object || !value.TryGetProperty("type", out var type)
                    || path.Contains("/example", StringComparison.Ordinal))
                continue;
            var format = value.TryGetProperty("format", out var found) ? found.GetString() : null;
            Assert.DoesNotContain(format, s_inexact);
            if (type.ToString().Contains("number", StringComparison.Ordinal))
                Assert.Equal((path, "decimal"), (path, format));
        }
    }

    [Fact]
    public async Task Every_answer_has_the_properties_that_its_schema_requires()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var schemas = (await studio.Get("/openapi/v1.json")).Json.GetProperty("components").GetProperty("schemas");
        foreach (var (schema, path) in new[]
        {
            ("CostProfile", "/v1/profiles/main"),
            ("Design", "/v1/designs/RB-014"),
            ("Channel", "/v1/channels/web"),
            ("ListedPrice", "/v1/designs/RB-014/prices/web"),
            ("RequirementAnswer", "/v1/profiles/main/requirement"),
            ("FloorPriceAnswer", "/v1/designs/RB-014/floor-price?workings=true"),
            ("PriceCheckAnswer", "/v1/price-checks?sku=RB-014&channel=web&price=58&workings=true"),
        })
        {
            var answer = (await studio.Get(path)).Json.EnumerateObject().Select(property => property.Name).ToHashSet();
            var told = schemas.GetProperty(schema);
            Assert.Empty(told.GetProperty("required").EnumerateArray().Select(name => name.GetString()!).Except(answer));
            Assert.Empty(answer.Except(told.GetProperty("properties").EnumerateObject().Select(property => property.Name)));
        }
    }

    private static IEnumerable<(string Path, JsonElement Value)> Walk(JsonElement element, string path) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(member => Walk(member.Value, $"{path}/{member.Name}")).Prepend((path, element)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany((item, index) => Walk(item, $"{path}/{index}")).Prepend((path, element)),
        _ => [(path, element)],
    };
}
