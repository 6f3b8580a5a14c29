using System.Text;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Template;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using Xunit;

namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>Every address that reads a body refuses every kind of broken one with a problem, stores nothing and stays up.</summary>
public sealed class EveryBodyTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    public static TheoryData<string, Func<string, byte[]>, int, string> Broken => new()
    {
        { "cut short", good => Utf8(good[..^1]), 400, "malformed" },
        { "a second text", good => Utf8(good + good), 400, "malformed" },
        { "a trailing comma", good => Utf8(good[..^1] + ",}"), 400, "malformed" },
        { "a comment", good => Utf8("//\n" + good), 400, "malformed" },
        { "single quotes", good => Utf8(good.Replace('"', '\'')), 400, "malformed" },
        { "empty", _ => [], 400, "empty" },
        { "white space", _ => Utf8(" \r\n\t"), 400, "empty" },
        { "only a byte order mark", _ => [0xef, 0xbb, 0xbf], 400, "empty" },
        { "UTF-16", good => Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes(good)).ToArray(), 400, "malformed" },
        { "a byte that is no text", good => [.. Utf8(good[..^1] + ",\"x\":\""), 0xc3, 0x28, .. "\"}"u8], 400, "malformed" },
        { "a raw control character", good => Utf8(good.Insert(2, "\u0001")), 400, "malformed" },
        { "null", _ => Utf8("null"), 400, "null" },
        { "a number", _ => Utf8("7"), 400, "wrong-type" },
        { "a string", _ => Utf8("\"{}\""), 400, "wrong-type" },
        { "a list", good => Utf8($"[{good}]"), 400, "wrong-type" },
        { "an unknown property", good => Utf8(good[..^1] + ",\"unknown\":[[[]]]}"), 400, "unknown-property" },
        { "an empty name", good => Utf8(good[..^1] + ",\"\":1}"), 400, "unknown-property" },
        { "a name with a slash and a tilde", good => Utf8(good[..^1] + ",\"a/b~c\":1}"), 400, "unknown-property" },
        { "half a surrogate in a name", good => Utf8(good[..^1] + ",\"\\ud83d\":1}"), 400, "malformed" },
        { "a property twice", good => Utf8(good[..^1] + "," + good[1..]), 400, "duplicate-property" },
        { "not a number", good => Utf8(good[..^1] + ",\"price\":NaN}"), 400, "" },
        { "brackets without end", good => Utf8(good[..^1] + ",\"savedAt\":" + new string('[', 100_000)), 400, "" },
        { "all of it missing", _ => Utf8("{}"), 422, "required" },
    };

    [Fact]
    public async Task Every_address_that_reads_a_body_has_its_row()
    {
        var studio = await AStudioOf("Production");
        var routes = studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().Where(endpoint => endpoint.Metadata.GetMetadata<BodyMetadata>() is not null)
            .SelectMany(endpoint => endpoint.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods.Select(method => (Method: method, Path: endpoint.RoutePattern.RawText!))).ToList();
        Assert.True(routes.Count >= 9);
        Assert.Empty(routes.Where(route => !GoodBodies.OfJson.Any(row => row.Method == route.Method && Leads(route.Path, row.Path))).Select(route => $"{route.Method} {route.Path} has no row in {nameof(GoodBodies)}"));
        Assert.Empty(GoodBodies.OfJson.Where(row => !routes.Exists(route => row.Method == route.Method && Leads(route.Path, row.Path))).Select(row => $"{row.Method} {row.Path} reads no body"));
        foreach (var (method, path, good) in GoodBodies.OfJson.Where(row => row.Method == "POST" && row.Path != "/v1/keys"))
            Assert.Equal((path, 200), (path, (await studio.Send(method, path, good)).Status)); // what is broken above is good to begin with

        static bool Leads(string template, string path) => new TemplateMatcher(TemplateParser.Parse(template), []).TryMatch(path, []);
    }

    [Theory]
    [MemberData(nameof(Broken))]
    public async Task A_broken_body_is_refused_everywhere(string what, Func<string, byte[]> broken, int status, string code)
    {
        foreach (var environment in new[] { "Production", "Development" })
        {
            var studio = await AStudioOf(environment);
            foreach (var (method, path, good) in GoodBodies.OfJson)
            {
                var answer = await studio.SendBytes(method, path, broken(good), "application/json", headers: ("Accept", "*/*"));
                Assert.Equal((what, path, status), (what, path, answer.Status));
                answer.IsProblem(status, status == 400 ? "unreadable-request" : "invalid-input");
                var error = answer.Json.GetProperty("errors")[0];
                Assert.True(error.GetProperty("pointer").GetString()!.StartsWith('#') && error.GetProperty("detail").GetString()!.Length > 10);
                if (code.Length > 0)
                    Assert.Equal((what, path, code), (what, path, answer.Codes[0]));
                if (status == 400)
                    Assert.True(error.GetProperty("line").GetInt32() >= 1 && error.GetProperty("column").GetInt32() >= 1 && answer.Codes.Count == 1);
                Assert.DoesNotContain("System.", answer.Text, StringComparison.Ordinal);
            }

            await NothingWasStored(studio);
        }
    }

    [Fact]
    public async Task A_pointer_escapes_what_it_must()
    {
        var answer = await (await AStudioOf("Production")).Put("/v1/profiles/new", "{\"a/b~c\":1}");
        Assert.Equal(["#/a~1b~0c"], answer.IsProblem(400, "unreadable-request").Pointers);
    }

    [Fact]
    public async Task An_escaped_name_is_the_same_name()
    {
        var studio = await AStudioOf("Production");
        var twice = await studio.Put("/v1/profiles/new", "{\"currency\":\"USD\",\n  \"\\u0063urrency\":\"USD\"}");
        Assert.Equal(("#/currency", 2, 3), (twice.Pointers[0], twice.Json.GetProperty("errors")[0].GetProperty("line").GetInt32(), twice.Json.GetProperty("errors")[0].GetProperty("column").GetInt32()));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("text/json")]
    [InlineData("application/xml")]
    [InlineData("application/json; charset=utf-16")]
    [InlineData("multipart/form-data; boundary=x")]
    public async Task Another_format_is_refused_everywhere(string? contentType)
    {
        var studio = await AStudioOf("Production");
        foreach (var (method, path, good) in GoodBodies.OfJson)
            (await studio.SendBytes(method, path, Utf8(good), contentType)).IsProblem(415, "media-type");
        await NothingWasStored(studio);
    }

    [Fact]
    public async Task A_body_without_a_length_is_measured_as_it_comes()
    {
        var studio = await AStudioOf("Production");
        foreach (var (method, path, _) in GoodBodies.OfJson)
        {
            using var request = new HttpRequestMessage(new HttpMethod(method), path) { Content = new StreamContent(new Endless(2 * 1024 * 1024 + 1)) };
            request.Content.Headers.TryAddWithoutValidation("Content-Type", "application/json");
            using var response = await studio.Client.SendAsync(request, Studio.Cancellation);
            (await Answer.Of(response)).IsProblem(413, "too-large");
        }

        await NothingWasStored(studio);
    }

    [Fact]
    public async Task A_body_of_just_two_mebibytes_is_still_read()
    {
        var studio = await AStudioOf("Production");
        var padded = """{"sku":"RB-014","channel":"web","price":58}""".PadRight(2 * 1024 * 1024);
        Assert.Equal(200, (await studio.Post("/v1/price-checks", padded)).Status);
        (await studio.Post("/v1/price-checks", padded + " ")).IsProblem(413, "too-large");
    }

    private async Task<Studio> AStudioOf(string environment)
    {
        var studio = shared.Of(environment);
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/other", Sample.Shop);
        return studio;
    }

    private static async Task NothingWasStored(Studio studio)
    {
        foreach (var path in new[] { "/v1/profiles/new", "/v1/designs/new", "/v1/channels/new", "/v1/designs/RB-014/prices/other" })
            (await studio.Get(path)).IsProblem(404, "not-found");
        Assert.DoesNotContain("\"new\"", (await studio.Get("/v1/keys")).Text, StringComparison.Ordinal);
    }

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);

    /// <summary>Spaces that tell no length.</summary>
    private sealed class Endless(int count) : MemoryStream(Enumerable.Repeat((byte)' ', count).ToArray())
    {
        public override bool CanSeek => false;
    }
}
