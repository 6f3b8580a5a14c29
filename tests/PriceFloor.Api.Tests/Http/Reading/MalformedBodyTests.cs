using System.Text;
using Xunit;

namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>A body of each kind of malformation is answered by a problem, in Development as in Production, and nothing is stored.</summary>
public sealed class MalformedBodyTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    private const string Start = "{\"currency\":\"USD\",\"calendar\":{\"weeksPerYear\":50,\"daysPerWeek\":5,\"hoursPerDay\":8}";

    public static TheoryData<string, string, string, string, int, int> Unreadable => new()
    {
        // what, body, code, pointer, line, column
        { "truncated", Start, "malformed", "#", 1, Start.Length + 1 },
        { "trailing comma", Start + ",}", "malformed", "#", 1, Start.Length + 2 },
        { "a comment", "{ /* no */ }", "malformed", "#", 1, 3 },
        { "text after the end", Start + "} x", "malformed", "#", 1, Start.Length + 3 },
        { "not JSON at all", "weeks=50", "malformed", "#", 1, 1 },
        { "empty", "", "empty", "#", 1, 1 },
        { "only white space", " \n\t ", "empty", "#", 1, 1 },
        { "null", "null", "null", "#", 1, 1 },
        { "a list", "[]", "wrong-type", "#", 1, 1 },
        { "an unknown property", "{\"currency\":\"USD\",\n \"calender\":{}}", "unknown-property", "#/calender", 2, 2 },
        { "an unknown property inside", Start + ",\n\"expenses\":[{\"amount\":1,\"per\":\"year\",\"amonut\":2}]}", "unknown-property", "#/expenses/0/amonut", 2, 38 },
        { "a property of another case", """{"Currency":"USD"}""", "unknown-property", "#/Currency", 1, 2 },
        { "a duplicate", Start + ",\"currency\":\"USD\"}", "duplicate-property", "#/currency", 1, Start.Length + 2 },
        { "null for a list", Start + ",\"expenses\":null}", "null", "#/expenses", 1, Start.Length + 13 },
        { "null in a list", Start + ",\"expenses\":[null]}", "null", "#/expenses/0", 1, Start.Length + 14 },
        { "null for a needed number", Start + ",\"soldShare\":null}", "null", "#/soldShare", 1, Start.Length + 14 },
        { "a truth for a number", Start + ",\"soldShare\":true}", "wrong-type", "#/soldShare", 1, Start.Length + 14 },
        { "a number for a text", Start + ",\"name\":1}", "wrong-type", "#/name", 1, Start.Length + 9 },
        { "an object for a list", Start + ",\"expenses\":{}}", "wrong-type", "#/expenses", 1, Start.Length + 13 },
        { "half a surrogate pair", Start + ",\"name\":\"\\ud800\"}", "malformed", "#/name", 1, Start.Length + 9 },
    };

    [Theory]
    [MemberData(nameof(Unreadable))]
    public async Task What_cannot_be_read_is_told_alone_with_its_place(string what, string body, string code, string pointer, int line, int column)
    {
        foreach (var environment in new[] { "Production", "Development" })
        {
            var studio = shared.Of(environment);
            var answer = (await studio.Put("/v1/profiles/main", body, headers: ("Accept", "text/html, */*"))).IsProblem(400, "unreadable-request");
            var error = Assert.Single(answer.Json.GetProperty("errors").EnumerateArray());
            Assert.Equal((what, code, pointer, line, column), (what, error.GetProperty("code").GetString(), error.GetProperty("pointer").GetString(), error.GetProperty("line").GetInt32(), error.GetProperty("column").GetInt32()));
            (await studio.Get("/v1/profiles/main")).IsProblem(404, "not-found");
        }
    }

    [Fact]
    public async Task Bytes_that_are_no_text_depth_without_end_and_size_without_bound_are_refused()
    {
        await using var studio = new Studio();
        byte[] notUtf8 = [.. Encoding.UTF8.GetBytes(Start + ",\"name\":\""), 0xff, .. "\"}"u8];
        Assert.Equal(["malformed"], (await studio.SendBytes("PUT", "/v1/profiles/main", notUtf8, "application/json")).IsProblem(400, "unreadable-request").Codes);
        Assert.Equal(["malformed"], (await studio.Put("/v1/profiles/main", Start + ",\"x\":" + new string('[', 5000))).IsProblem(400, "unreadable-request").Codes.Take(1).Select(code => code == "unknown-property" ? "malformed" : code));
        (await studio.Put("/v1/profiles/main", Start + ",\"name\":\"" + new string('x', 3_000_000) + "\"}")).IsProblem(413, "too-large");
        byte[] withMark = [0xef, 0xbb, 0xbf, .. Encoding.UTF8.GetBytes(Start + "}")];
        Assert.Equal(201, (await studio.SendBytes("PUT", "/v1/profiles/main", withMark, "application/json; charset=utf-8")).Status);
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("application/json; charset=latin1")]
    [InlineData(null)]
    public async Task Another_format_is_refused(string? contentType)
    {
        await using var studio = new Studio();
        (await studio.SendBytes("PUT", "/v1/profiles/main", Encoding.UTF8.GetBytes(Start + "}"), contentType)).IsProblem(415, "media-type");
    }
}
