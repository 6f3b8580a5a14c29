using Microsoft.AspNetCore.Hosting;
using Xunit;

namespace PriceFloor.Api.Tests.Http;

/// <summary>The headers for browsers, and which other pages may call.</summary>
public sealed class BrowserHeaderTests
{
    private const string Nothing = "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";

    [Fact]
    public async Task Every_answer_tells_browsers_to_load_nothing_for_it_to_guess_nothing_and_to_tell_nobody()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        foreach (var answer in new[]
        {
            await studio.Get("/v1/profiles"), await studio.Get("/v1/price-list", headers: ("Accept", "text/csv")),
            await studio.Delete("/v1/designs/RB-014/prices/web"), await studio.Get("/v1/profiles", studio.ClientWith(null)),
            await studio.Get("/nowhere"), await studio.Put("/v1/profiles/x", "{"), await studio.Get("/problems"), await studio.Get("/problems/busy"),
            await studio.Get("/openapi/v1.yaml"), await studio.Get("/health/live"),
        })
        {
            Assert.Equal((Nothing, "nosniff", "no-referrer", "same-origin"), (answer["Content-Security-Policy"], answer["X-Content-Type-Options"],
                answer["Referrer-Policy"], answer["Cross-Origin-Resource-Policy"]));
            Assert.Null(answer["Server"]);
            Assert.Null(answer["X-Powered-By"]);
        }
    }

    [Fact]
    public async Task The_page_of_the_contract_has_a_style_in_itself_and_loads_and_runs_nothing()
    {
        await using var studio = new Studio();
        var page = await studio.Get("/docs", studio.ClientWith(null));
        Assert.Equal((200, "text/html"), (page.Status, page.ContentType));
        Assert.Equal("default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'",
            page["Content-Security-Policy"]);
        Assert.DoesNotMatch("<script|<link|<img|\\ssrc=|url\\(|\\son[a-z]+=\"", page.Text);
    }

    [Fact]
    public async Task A_listed_origin_is_allowed_before_a_key_is_needed_and_can_read_problems_too()
    {
        await using var studio = WithOrigins("https://shop.example, https://till.example");
        using var nobody = studio.ClientWith(null);
        foreach (var origin in new[] { "https://shop.example", "https://till.example" })
        {
            var preflight = await studio.Send("OPTIONS", "/v1/price-checks", null, nobody, ("Origin", origin),
                ("Access-Control-Request-Method", "POST"), ("Access-Control-Request-Headers", "authorization,content-type"));
            Assert.Equal((204, origin, "authorization,content-type"),
                (preflight.Status, preflight["Access-Control-Allow-Origin"], preflight["Access-Control-Allow-Headers"]));
            Assert.Null(preflight["Access-Control-Allow-Credentials"]);
            foreach (var answer in new[]
            {
                await studio.Get("/v1/profiles", nobody, ("Origin", origin)),
                await studio.Get("/nowhere", headers: ("Origin", origin)),
                await studio.Get("/v1/profiles", headers: ("Origin", origin)),
            })
            {
                Assert.Equal(origin, answer["Access-Control-Allow-Origin"]);
                Assert.Contains("Origin", answer["Vary"], StringComparison.Ordinal);
                Assert.Contains("ETag", answer["Access-Control-Expose-Headers"], StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [InlineData("https://other.example")]
    [InlineData("http://shop.example")]
    [InlineData("https://shop.example.evil.example")]
    [InlineData("https://shop.example:8443")]
    [InlineData("null")]
    public async Task Any_other_origin_learns_nothing(string origin)
    {
        await using var studio = WithOrigins("https://shop.example");
        Assert.Null((await studio.Send("OPTIONS", "/v1/price-checks", null, null, ("Origin", origin),
            ("Access-Control-Request-Method", "POST")))["Access-Control-Allow-Origin"]);
        Assert.Null((await studio.Get("/v1/profiles", headers: ("Origin", origin)))["Access-Control-Allow-Origin"]);
    }

    [Fact]
    public async Task Without_listed_origins_there_is_no_preflight()
    {
        await using var studio = new Studio();
        var answer = (await studio.Send("OPTIONS", "/v1/price-checks", null, null, ("Origin", "https://shop.example"),
            ("Access-Control-Request-Method", "POST"))).IsProblem(405, "method-not-allowed");
        foreach (var one in new[] { answer, await studio.Get("/v1/profiles", headers: ("Origin", "https://shop.example")) })
            Assert.DoesNotContain(one.Headers.Keys, name => name.StartsWith("Access-Control", StringComparison.Ordinal));
    }

    private static Studio WithOrigins(string origins) => new(configure: host => host.UseSetting("PRICEFLOOR_CORS_ORIGINS", origins));
}
