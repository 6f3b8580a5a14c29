using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace PriceFloor.Api.Tests.Http;

public sealed class HeadTests
{
    [Theory]
    [InlineData("/nowhere", 404)]
    [InlineData("/v1/profiles/none", 404)]
    [InlineData("/v1/markups", 405)]
    [InlineData("/v1/price-checks", 422)]
    [InlineData("/v1/profiles?limit=x", 422)]
    [InlineData("/v1/profiles?limit=0", 422)]
    [InlineData("/v1/profiles?x=1", 400)]
    public async Task A_problem_has_no_body_either(string path, int status)
    {
        await using var studio = new Studio();
        var get = await studio.Get(path);
        var head = await studio.Send("HEAD", path, null);
        Assert.Equal((status, status, ""), (get.Status, head.Status, head.Text));
        Assert.Equal(("application/problem+json", get["Content-Length"], get["Allow"]), (head.ContentType, head["Content-Length"], head["Allow"]));
    }

    [Fact]
    public async Task A_missing_key_is_reported_without_a_body()
    {
        await using var studio = new Studio();
        var head = await studio.Send("HEAD", "/v1/profiles", null, studio.ClientWith(null));
        Assert.Equal((401, "", "application/problem+json"), (head.Status, head.Text, head.ContentType));
    }

    [Fact]
    public async Task HEAD_works_wherever_GET_does()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/reading-rules/main", "{\"rules\":[]}");
        await studio.Has("/v1/scenarios/main", """{"profile":"main","changes":[]}""");
        await studio.Has("/v1/quotes/main", """{"profile":"main","channel":"web","extra":[{"hours":2}],"price":120,"validUntil":"2027-02-01"}""");
        await studio.Send("POST", "/v1/quotes/main/issue", null);
        await studio.Has("/v1/quotes/main/outcome", """{"result":"accepted"}""");
        await studio.Has("/v1/quotes/main/actual", """{"benchHours":3}""");
        await studio.Has("/v1/statement-layouts/main", "{\"dateColumn\":\"Booked\"}");
        await studio.Has("/v1/plans/main", Sample.Plan);
        await studio.Post("/v1/movements/batch?source=shop",
            """[{"ref":"1","on":"2027-01-01","sku":"RB-014","channel":"web","pieces":1,"price":58}]""");
        await studio.Post("/v1/bench-log/batch?source=book&countsAsMade=true",
            """[{"ref":"1","on":"2027-01-01","sku":"RB-014","started":2,"good":2,"minutes":60}]""");
        var paths = studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods.Contains("GET") == true)
            .Select(endpoint => endpoint.RoutePattern.RawText!.Replace("channels/{key}", "channels/web", StringComparison.Ordinal)
                .Replace("{key}", "main", StringComparison.Ordinal).Replace("{sku}", "RB-014", StringComparison.Ordinal)
                .Replace("{name}", "first-admin-key", StringComparison.Ordinal).Replace("{channel}", "web", StringComparison.Ordinal)
                .Replace("{number}", "1", StringComparison.Ordinal).Replace("{slug}", "busy", StringComparison.Ordinal)
                .Replace("{sheet}", "fees", StringComparison.Ordinal))
            .Where(path => !path.StartsWith("/v1/studios", StringComparison.Ordinal)) // a host's, tested beside them
            .Select(path => path.StartsWith("/v1/shelf", StringComparison.Ordinal) ? path + "?profile=main"
                : path == "/v1/price-checks" ? path + "?sku=RB-014&channel=web&price=1"
                : path.Contains("/break-even", StringComparison.Ordinal) || path.Contains("/run-prices", StringComparison.Ordinal)
                    || path.EndsWith("/remedies", StringComparison.Ordinal)
                    || path.Contains("/floor-history", StringComparison.Ordinal)
                    || path.EndsWith("price-list.svg", StringComparison.Ordinal)
                    || path.Contains("/line-sheet", StringComparison.Ordinal) ? path + "?channel=web"
                : path)
            .Concat(["/openapi/v1.json", "/openapi/v1.yaml", "/docs"]).ToList();
        Assert.True(paths.Count > 20);
        foreach (var path in paths)
        {
            var get = await studio.Get(path);
            var head = await studio.Send("HEAD", path, null);
            Assert.Equal((path, 200, 200, ""), (path, get.Status, head.Status, head.Text));
            Assert.Equal((get.ContentType, get["ETag"], get["Cache-Control"]), (head.ContentType, head["ETag"], head["Cache-Control"]));
            Assert.NotEqual(get["X-Request-Id"], head["X-Request-Id"]);
        }

        Assert.Equal((await studio.Get("/v1/profiles/main"))["Content-Length"],
            (await studio.Send("HEAD", "/v1/profiles/main", null))["Content-Length"]);
    }
}
