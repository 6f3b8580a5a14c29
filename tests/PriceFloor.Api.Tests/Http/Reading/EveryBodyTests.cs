using System.Text;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Template;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Api.Http;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.Tests.ManyStudios;
using Xunit;

namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>
/// Every address that reads a body refuses every kind of broken body with a problem that names the place, in Development and in Production, stores
/// nothing and stays up.
/// </summary>
public sealed class EveryBodyTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    private const string Profile = "/v1/profiles/new";

    private const string Start = "{\"currency\":\"USD\",\"calendar\":{\"weeksPerYear\":50,\"daysPerWeek\":5,\"hoursPerDay\":8}";

    private static readonly BrokenBody[] s_broken =
    [
        new("cut short", good => Utf8(good[..^1]), "malformed", good => $"# 1:{good.Length}"),
        new("a second text", good => Utf8(good + good), "malformed", good => $"# 1:{good.Length + 1}"),
        new("text after the end", good => Utf8(good + " x"), "malformed", good => $"# 1:{good.Length + 2}"),
        new("a trailing comma", good => Utf8(good[..^1] + ",}"), "malformed", good => $"# 1:{good.Length + 1}"),
        new("a comment before", good => Utf8("//\n" + good), "malformed"),
        new("a comment within", _ => Utf8("{ /* no */ }"), "malformed", _ => "# 1:3"),
        new("single quotes", good => Utf8(good.Replace('"', '\'')), "malformed"),
        new("not JSON at all", _ => Utf8("weeks=50"), "malformed", _ => "# 1:1"),
        new("empty", _ => [], "empty", _ => "# 1:1"),
        new("white space", _ => Utf8(" \r\n\t"), "empty", _ => "# 1:1"),
        new("white space that ends with a space", _ => Utf8(" \n\t "), "empty", _ => "# 1:1"),
        new("only a byte order mark", _ => [0xef, 0xbb, 0xbf], "empty"),
        new("UTF-16", good => [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(good)], "malformed"),
        new("a byte that is no text", good => [.. Utf8(good[..^1] + ",\"x\":\""), 0xc3, 0x28, .. "\"}"u8], "malformed"),
        new("a raw control character", good => Utf8(good.Insert(2, "\u0001")), "malformed"),
        new("null", _ => Utf8("null"), "null", _ => "# 1:1"),
        new("a number", _ => Utf8("7"), "wrong-type", _ => "# 1:1"),
        new("a string", _ => Utf8("\"{}\""), "wrong-type", _ => "# 1:1"),
        new("a list", good => Utf8($"[{good}]"), "wrong-type", _ => "# 1:1"),
        new("an empty list", _ => Utf8("[]"), "wrong-type", _ => "# 1:1"),
        new("an unknown property", good => Utf8(good[..^1] + ",\"unknown\":[[[]]]}"), "unknown-property", good => $"#/unknown 1:{good.Length + 1}"),
        new("an empty name", good => Utf8(good[..^1] + ",\"\":1}"), "unknown-property", good => $"#/ 1:{good.Length + 1}"),
        new("a name with a slash and a tilde",
            good => Utf8(good[..^1] + ",\"a/b~c\":1}"), "unknown-property", good => $"#/a~1b~0c 1:{good.Length + 1}"),
        new("half a surrogate in a name", good => Utf8(good[..^1] + ",\"\\ud83d\":1}"), "malformed"),
        new("a property twice",
            good => Utf8(good[..^1] + "," + good[1..]), "duplicate-property", good => $"#/{good.Split('"')[1]} 1:{good.Length + 1}"),
        new("not a number", good => Utf8(good[..^1] + ",\"price\":NaN}"), ""),
        new("brackets without end", good => Utf8(good[..^1] + ",\"savedAt\":" + new string('[', 100_000)), ""),
        new("all of it missing", _ => Utf8("{}"), "required") { Status = 422 },
        OfProfile("an unknown property on another line", "{\"currency\":\"USD\",\n \"calender\":{}}", "unknown-property", "#/calender 2:2"),
        OfProfile("an unknown property inside",
            Start + ",\n\"expenses\":[{\"amount\":1,\"per\":\"year\",\"amonut\":2}]}", "unknown-property", "#/expenses/0/amonut 2:38"),
        OfProfile("a property of another case", """{"Currency":"USD"}""", "unknown-property", "#/Currency 1:2"),
        OfProfile("a property twice, with an escape in it",
            "{\"currency\":\"USD\",\n  \"\\u0063urrency\":\"USD\"}", "duplicate-property", "#/currency 2:3"),
        OfProfile("null for a list", Start + ",\"expenses\":null}", "null", $"#/expenses 1:{Start.Length + 13}"),
        OfProfile("null in a list", Start + ",\"expenses\":[null]}", "null", $"#/expenses/0 1:{Start.Length + 14}"),
        OfProfile("null for a needed number", Start + ",\"soldShare\":null}", "null", $"#/soldShare 1:{Start.Length + 14}"),
        OfProfile("a truth for a number", Start + ",\"soldShare\":true}", "wrong-type", $"#/soldShare 1:{Start.Length + 14}"),
        OfProfile("a number for a text", Start + ",\"name\":1}", "wrong-type", $"#/name 1:{Start.Length + 9}"),
        OfProfile("an object for a list", Start + ",\"expenses\":{}}", "wrong-type", $"#/expenses 1:{Start.Length + 13}"),
        OfProfile("half a surrogate pair in a text", Start + ",\"name\":\"\\ud800\"}", "malformed", $"#/name 1:{Start.Length + 9}"),
        new("a byte that is no text in a text", _ => [.. Utf8(Start + ",\"name\":\""), 0xff, .. "\"}"u8], "malformed") { Only = Profile },
    ];

    public static TheoryData<string> Broken => [.. s_broken.Select(one => one.What)];

    [Fact]
    public async Task Every_address_that_reads_a_body_has_its_row()
    {
        var studio = await AStudioOf("Production");
        var routes = studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<BodyMetadata>() is not null)
            .SelectMany(endpoint => endpoint.Metadata.GetMetadata<HttpMethodMetadata>()!
                .HttpMethods.Select(method => (Method: method, Path: endpoint.RoutePattern.RawText!))).ToList();
        Assert.True(routes.Count >= 9);
        Assert.Empty(routes.Where(route => !GoodBodies.OfJsonAnywhere.Any(row => row.Method == route.Method && Leads(route.Path, row.Path)))
            .Select(route => $"{route.Method} {route.Path} has no row in {nameof(GoodBodies)}"));
        Assert.Empty(GoodBodies.OfJsonAnywhere.Where(row => !routes.Exists(route => row.Method == route.Method && Leads(route.Path, row.Path)))
            .Select(row => $"{row.Method} {row.Path} reads no body"));
        foreach (var (method, path, good) in GoodBodies.OfJson.Where(row => row.Method == "POST" && !GoodBodies.NeedMore.Contains(row.Path)))
            Assert.Equal((path, 200), (path, (await studio.Send(method, path, good)).Status)); // what is broken above is good to begin with

        static bool Leads(string template, string path) => new TemplateMatcher(TemplateParser.Parse(template), []).TryMatch(path, []);
    }

    [Theory]
    [MemberData(nameof(Broken))]
    public async Task A_broken_body_is_refused_everywhere(string what)
    {
        var broken = s_broken.Single(one => one.What == what);
        foreach (var environment in new[] { "Production", "Development" })
        {
            var studio = await AStudioOf(environment);
            await using var host = HostedService.Start();
            foreach (var (method, path, good) in GoodBodies.OfJsonAnywhere
                .Where(body => broken.Only is null || body.Path == broken.Only))
            {
                var service = GoodBodies.IsHosts(path) ? host : studio;
                var answer = await service.SendBytes(method, path, broken.Of(good), "application/json", headers: ("Accept", "text/html, */*"));
                Assert.Equal((path, broken.Status), (path, answer.Status));
                answer.IsProblem(broken.Status, broken.Status == 400 ? "unreadable-request" : "invalid-input");
                var error = answer.Json.GetProperty("errors")[0];
                Assert.True(error.GetProperty("pointer").GetString()!.StartsWith('#') && error.GetProperty("detail").GetString()!.Length > 10);
                if (broken.Code.Length > 0)
                    Assert.Equal((path, broken.Code), (path, answer.Codes[0]));
                if (broken.Status == 400)
                    Assert.True(error.GetProperty("line").GetInt32() >= 1 && error.GetProperty("column").GetInt32() >= 1 && answer.Codes.Count == 1);
                if (broken.Place is { } place)
                    Assert.Equal((path, place(good)), (path, $"{answer.Pointers[0]} {error.GetProperty("line")}:{error.GetProperty("column")}"));
                Assert.DoesNotContain("System.", answer.Text, StringComparison.Ordinal);
            }

            await NothingWasStored(studio);
        }
    }

    [Fact]
    public async Task A_byte_order_mark_before_a_body_changes_nothing()
    {
        await using var studio = new Studio();
        byte[] withMark = [0xef, 0xbb, 0xbf, .. Utf8(Start + "}")];
        Assert.Equal(201, (await studio.SendBytes("PUT", "/v1/profiles/main", withMark, "application/json; charset=utf-8")).Status);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("text/json")]
    [InlineData("application/xml")]
    [InlineData("application/json; charset=utf-16")]
    [InlineData("multipart/form-data; boundary=x")]
    [InlineData("text/plain")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("application/json; charset=latin1")]
    public async Task Another_format_is_refused_everywhere(string? contentType)
    {
        var studio = await AStudioOf("Production");
        await using var host = HostedService.Start();
        foreach (var (method, path, good) in GoodBodies.OfJsonAnywhere)
            (await (GoodBodies.IsHosts(path) ? host : studio).SendBytes(method, path, Utf8(good), contentType)).IsProblem(415, "media-type");
        await NothingWasStored(studio);
    }

    [Fact]
    public async Task A_body_without_a_length_is_measured_as_it_comes()
    {
        var studio = await AStudioOf("Production");
        foreach (var (method, path, _) in GoodBodies.OfJson)
        {
            using var request =
                new HttpRequestMessage(new HttpMethod(method), path) { Content = new StreamContent(new Endless(2 * 1024 * 1024 + 1)) };
            request.Content.Headers.TryAddWithoutValidation("Content-Type", "application/json");
            using var response = await studio.Client.SendAsync(request, Studio.Cancellation);
            (await Answer.Of(response)).IsProblem(413, "too-large");
        }

        await NothingWasStored(studio);
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

    private static BrokenBody OfProfile(string what, string body, string code, string place) =>
        new(what, _ => Utf8(body), code, _ => place) { Only = Profile };

    /// <summary>One kind of broken body.</summary>
    /// <param name="What">A description.</param>
    /// <param name="Of">Makes it from a good one.</param>
    /// <param name="Code">The code of the first error; empty for any.</param>
    /// <param name="Place">Pointer, line and column of the error, by the good body; null if addresses differ.</param>
    private sealed record BrokenBody(string What, Func<string, byte[]> Of, string Code, Func<string, string>? Place = null)
    {
        public int Status { get; init; } = 400;

        /// <summary>The only address that it is for; null for all.</summary>
        public string? Only { get; init; }
    }

    /// <summary>Spaces of unknown length.</summary>
    private sealed class Endless(int count) : MemoryStream(Enumerable.Repeat((byte)' ', count).ToArray())
    {
        public override bool CanSeek => false;
    }
}
