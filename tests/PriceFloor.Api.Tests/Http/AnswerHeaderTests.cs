using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace PriceFloor.Api.Tests.Http;

/// <summary>The headers of every answer, whatever happened to the request.</summary>
public sealed class AnswerHeaderTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    [Fact]
    public async Task Every_answer_has_an_id_of_its_own_what_is_left_of_the_rate_and_a_word_on_caching()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answers = new List<Answer>
        {
            await studio.Get("/v1/profiles"),
            await studio.Get("/v1/profiles/main"),
            await studio.Get("/v1/profiles/main", headers: ("If-None-Match", "\"1\"")),
            await studio.Get("/v1/profiles/main/requirement"),
            await studio.Put("/v1/profiles/main", Sample.SmallProfile),
            await studio.Put("/v1/profiles/new", Sample.SmallProfile),
            await studio.Delete("/v1/profiles/new"),
            await studio.Put("/v1/profiles/new", "{"),
            await studio.Put("/v1/profiles/new", "{}"),
            await studio.Get("/v1/profiles", studio.ClientWith(null)),
            await studio.Get("/v1/profiles", await studio.ClientFor("check")),
            await studio.Get("/nowhere"),
            await studio.Post("/v1/profiles", "{}"),
            await studio.Get("/v1/profiles", headers: ("Accept", "text/csv")),
            await studio.SendBytes("PUT", "/v1/profiles/x", [1], "text/plain"),
            await studio.Get("/health/live", studio.ClientWith(null)),
            await studio.Get("/openapi/v1.json"),
            await studio.Send("HEAD", "/v1/profiles/nope", null),
        };
        foreach (var answer in answers)
        {
            Assert.Matches("^[0-9a-f]{32}$", answer["X-Request-Id"]!);
            Assert.Matches("^\"default\";r=[0-9]+;t=[0-9]+$", answer["RateLimit"]!);
            Assert.Equal("\"default\";q=60000;w=60", answer["RateLimit-Policy"]);
            if (answer.Status >= 400)
                Assert.Equal((answer.Status, "no-store", "application/problem+json"), (answer.Status, answer["Cache-Control"], answer.ContentType));
        }

        Assert.Equal(answers.Count, answers.Select(answer => answer["X-Request-Id"]).Distinct().Count());
        Assert.Equal([200, 200, 304, 200, 200, 201, 204, 400, 422, 401, 403, 404, 405, 406, 415, 200, 200, 404],
            answers.Select(answer => answer.Status));
    }

    [Fact]
    public async Task What_is_stored_or_computed_is_for_this_caller_only()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        foreach (var path in studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods.Contains("GET")
                && endpoint.RoutePattern.RawText!.StartsWith("/v1", StringComparison.Ordinal))
            .Select(endpoint => endpoint.RoutePattern.RawText!.Replace("{key}", "main", StringComparison.Ordinal)
                .Replace("{sku}", "RB-014", StringComparison.Ordinal).Replace("{channel}", "web", StringComparison.Ordinal)
                .Replace("{number}", "1", StringComparison.Ordinal)))
        {
            var answer = await studio.Get(path == "/v1/price-checks" ? path + "?sku=RB-014&channel=web&price=1" : path);
            if (answer.Status >= 400)
                continue; // a route that needs more than its path; the important ones are named below
            Assert.Equal((path, path == "/v1/keys" ? "no-store" : "no-cache, private"), (path, answer["Cache-Control"]));
        }

        Assert.Equal("no-cache, private", (await studio.Post("/v1/floor-prices", """{"design":"RB-014"}"""))["Cache-Control"]);
        Assert.Equal("no-cache, private", (await studio.Post("/v1/price-checks", """{"sku":"RB-014","channel":"web","price":1}"""))["Cache-Control"]);
        Assert.Equal("no-cache, private", (await studio.Get("/v1/profiles/main", headers: ("If-None-Match", "\"1\"")))["Cache-Control"]);
    }

    [Theory]
    [InlineData("application/json", 200)]
    [InlineData("application/*", 200)]
    [InlineData("text/html, */*;q=0.1", 200)]
    [InlineData("application/problem+json", 200)]
    [InlineData("application/json; charset=utf-8", 200)]
    [InlineData("text/csv", 406)]
    [InlineData("text/html, application/xml", 406)]
    [InlineData("application/json;q=0", 406)]
    public async Task Accept_is_kept_to(string accept, int status)
    {
        var studio = shared.Of("Production");
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        Assert.Equal(status, (await studio.Get("/v1/profiles/main", headers: ("Accept", accept))).Status);
        Assert.Equal(status, (await studio.Put("/v1/profiles/main", Sample.SmallProfile, headers: ("Accept", accept))).Status);
        Assert.Equal(200, (await studio.Get("/problems/busy", headers: ("Accept", accept))).Status);
    }

    [Theory]
    [InlineData("PATCH", "/v1/profiles", "GET, HEAD")]
    [InlineData("POST", "/v1/profiles/main", "DELETE, GET, HEAD, PATCH, PUT")]
    [InlineData("PUT", "/v1/profiles", "GET, HEAD")]
    [InlineData("DELETE", "/v1/price-checks", "GET, HEAD, POST")]
    [InlineData("GET", "/v1/floor-prices", "POST")]
    [InlineData("HEAD", "/v1/floor-prices", "POST")]
    [InlineData("PURGE", "/v1/keys", "GET, HEAD, POST")]
    public async Task Another_method_is_answered_with_those_that_are_taken(string method, string path, string allowed)
    {
        foreach (var environment in new[] { "Production", "Development" })
        {
            var studio = shared.Of(environment);
            var answer = await studio.Send(method, path, method is "GET" or "HEAD" ? null : "{}", null, ("Accept", "text/html"));
            Assert.Equal((405, "application/problem+json"), (answer.Status, answer.ContentType));
            Assert.Equal(allowed.Split(", "), answer["Allow"]!.Split(", ").Order());
        }
    }
}
