using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Http;
using PriceFloor.Api.OpenApi;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.Contract;

public sealed class OpenApiTests
{
    private static readonly string[] s_withoutBody = ["/v1/backups", "/v1/keys/{name}/rotation", "/v1/quotes/{key}/issue"];

    [Fact]
    public async Task The_committed_document_is_the_one_that_the_code_writes()
    {
        await using var studio = new Studio();
        var written = await OpenApiSetup.TextOf(studio.Services, Studio.Cancellation);
        Assert.True(await File.ReadAllTextAsync(Repository.File("openapi/pricefloor.v1.yaml"), Studio.Cancellation) == written,
            "openapi/pricefloor.v1.yaml differs; rewrite it: dotnet run --project src/PriceFloor.Api -- openapi > openapi/pricefloor.v1.yaml");
        Assert.Equal(written, (await studio.Get("/openapi/v1.yaml", studio.ClientWith(null))).Text);
    }

    [Fact]
    public async Task Every_route_is_in_the_document_with_its_problems_and_examples()
    {
        await using var studio = new Studio();
        var document = (await studio.Get("/openapi/v1.json", studio.ClientWith(null))).Json;
        var contract = await ContractDocument.Of(studio);
        Assert.StartsWith("3.1", document.GetProperty("openapi").GetString(), StringComparison.Ordinal);
        var routes = studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<IExcludeFromDescriptionMetadata>() is null).ToList();
        Assert.True(routes.Count > 30);
        foreach (var route in routes)
        {
            var method = route.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods[0];
            var operation = document.GetProperty("paths").GetProperty(route.RoutePattern.RawText!)
                .GetProperty(method == "GET" ? "get" : method == "PUT" ? "put" : method == "POST" ? "post" : "delete");
            foreach (var name in new[] { "operationId", "summary", "description" })
                Assert.NotEqual("", operation.GetProperty(name).GetString());
            if (method is "PUT" or "POST" && !s_withoutBody.Contains(route.RoutePattern.RawText))
                Assert.All(operation.GetProperty("requestBody").GetProperty("content").EnumerateObject()
                        .Where(content => content.Name != Format.Xlsx.MediaType), // a workbook is no text
                    content => Assert.True(content.Value.EnumerateObject().Any(member => member.Name is "example" or "examples"), content.Name));
            foreach (var response in operation.GetProperty("responses").EnumerateObject().Where(response => response.Name[0] is '4' or '5'))
                Assert.NotNull(contract.Followed(JsonNode.Parse(response.Value.GetRawText())!)["content"]!["application/problem+json"]);
        }
    }

    [Fact]
    public async Task The_document_and_the_route_table_name_the_same_addresses_but_for_pages_and_metrics()
    {
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_METRICS", "on"));
        var told = (await studio.Get("/openapi/v1.json")).Json.GetProperty("paths").EnumerateObject()
            .SelectMany(path => path.Value.EnumerateObject().Select(operation => $"{operation.Name.ToUpperInvariant()} {path.Name}"));
        var there = studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().SelectMany(endpoint =>
            endpoint.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods.Select(method => $"{method} {endpoint.RoutePattern.RawText}"));
        Assert.Equal(there.Except(["GET /problems", "GET /problems/{slug}", "GET /metrics", "GET /.well-known/api-catalog"]).Order(), told.Order());
    }

    [Fact]
    public async Task A_problem_that_several_operations_answer_stands_in_the_document_once()
    {
        await using var studio = new Studio();
        var contract = await ContractDocument.Of(studio);
        var beside = contract.Operations.SelectMany(one => one.Operation["responses"]!.AsObject())
            .Where(response => response.Key[0] is '4' or '5' && response.Value!["$ref"] is null)
            .Select(response => response.Value!.ToJsonString()).ToList();
        Assert.Equal(beside.Distinct(), beside);
        Assert.InRange(contract.Root["components"]!["responses"]!.AsObject().Count, 12, 40);
    }

    [Fact]
    public async Task Many_may_ask_for_the_document_at_once()
    {
        await using var studio = new Studio();
        var answers = await Task.WhenAll(Enumerable.Range(0, 24).Select(_ => Task.Run(() => studio.Get("/openapi/v1.json"), Studio.Cancellation)));
        Assert.All(answers, answer => Assert.Equal((200, answers[0].Text), (answer.Status, answer.Text)));
    }

    [Fact]
    public async Task Every_number_is_an_exact_decimal_with_the_bounds_that_the_reader_keeps()
    {
        await using var studio = new Studio();
        var schemas = (await studio.Get("/openapi/v1.json")).Json.GetProperty("components").GetProperty("schemas");
        foreach (var property in schemas.EnumerateObject().Where(schema => schema.Value.TryGetProperty("properties", out _))
                .SelectMany(schema => schema.Value.GetProperty("properties").EnumerateObject()))
            if (property.Value.TryGetProperty("type", out var type) && type.ToString().Contains("number", StringComparison.Ordinal))
                Assert.Equal((property.Name, "decimal"), (property.Name, property.Value.GetProperty("format").GetString()));

        var calendar = schemas.GetProperty("StudioCalendar").GetProperty("properties");
        Assert.Equal((0, 52), (calendar.GetProperty("weeksPerYear").GetProperty("exclusiveMinimum").GetInt32(),
            calendar.GetProperty("weeksPerYear").GetProperty("maximum").GetInt32()));
        Assert.Equal(500, schemas.GetProperty("CostProfile").GetProperty("properties").GetProperty("expenses").GetProperty("maxItems").GetInt32());
        Assert.Equal(["calendar", "currency"],
            schemas.GetProperty("CostProfile").GetProperty("required").EnumerateArray().Select(name => name.GetString()!).Order());
        Assert.False(schemas.GetProperty("Design").GetProperty("additionalProperties").GetBoolean());
        Assert.DoesNotContain(schemas.EnumerateObject(), schema => schema.Value.TryGetProperty("discriminator", out _));
        Assert.Equal(["below-floor", "below-target", "meets-target"],
            schemas.GetProperty("Verdict").GetProperty("enum").EnumerateArray().Select(word => word.GetString()!));
    }
}
