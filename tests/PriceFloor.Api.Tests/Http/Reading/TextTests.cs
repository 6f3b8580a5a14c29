using Xunit;

namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>Control characters are refused in every string of every document; so is what is too long.</summary>
public sealed class TextTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    private const string Start = "{\"currency\":\"USD\",\"calendar\":{\"weeksPerYear\":50,\"daysPerWeek\":5,\"hoursPerDay\":8},";

    public static TheoryData<string, string, string> Strings => new()
    {
        { "/v1/profiles/new", Start + "\"name\":\"@\"}", "#/name" },
        { "/v1/profiles/new", Start + "\"helpers\":[{\"name\":\"@\",\"benchHoursPerYear\":1}]}", "#/helpers/0/name" },
        { "/v1/profiles/new", Start + "\"expenses\":[{\"name\":\"@\",\"amount\":1,\"per\":\"year\"}]}", "#/expenses/0/name" },
        { "/v1/profiles/new", Start + "\"household\":[{\"name\":\"@\",\"amount\":1,\"per\":\"year\"}]}", "#/household/0/name" },
        { "/v1/profiles/new", Start + "\"otherIncome\":[{\"name\":\"@\",\"amount\":1,\"per\":\"year\",\"kind\":\"net\"}]}", "#/otherIncome/0/name" },
        { "/v1/profiles/new", Start + "\"equipment\":[{\"name\":\"@\",\"cost\":1,\"depreciation\":{\"method\":\"declining-balance\",\"rate\":0.2}}]}",
            "#/equipment/0/name" },
        { "/v1/profiles/new", Start + "\"tax\":{\"kind\":\"levies\",\"levies\":[{\"name\":\"@\",\"bands\":[{\"rate\":0.1}]}]}}",
            "#/tax/levies/0/name" },
        { "/v1/profiles/new", Start + "\"materials\":[{\"material\":\"@\",\"price\":1}]}", "#/materials/0/material" },
        { "/v1/profiles/new", Start + "\"materials\":[{\"material\":\"rod\",\"unit\":\"@\",\"price\":1}]}", "#/materials/0/unit" },
        { "/v1/profiles/new", Start + "\"limits\":[{\"name\":\"@\",\"loadsPerYear\":1}]}", "#/limits/0/name" },
        { "/v1/designs/new", "{\"name\":\"@\",\"profile\":\"main\",\"making\":{\"piecesPerDay\":4}}", "#/name" },
        { "/v1/designs/new", "{\"profile\":\"@\",\"making\":{\"piecesPerDay\":4}}", "#/profile" },
        { "/v1/designs/new", "{\"profile\":\"main\",\"making\":{\"steps\":[{\"name\":\"@\",\"handsOnMinutes\":1}]}}", "#/making/steps/0/name" },
        { "/v1/designs/new", "{\"profile\":\"main\",\"making\":{\"steps\":[{\"uses\":\"@\",\"handsOnMinutes\":1}]}}", "#/making/steps/0/uses" },
        { "/v1/designs/new", "{\"profile\":\"main\",\"making\":{\"piecesPerDay\":4},\"materials\":[{\"name\":\"@\",\"amount\":1}]}",
            "#/materials/0/name" },
        { "/v1/designs/new", "{\"profile\":\"main\",\"making\":{\"piecesPerDay\":4},\"materials\":[{\"material\":\"@\",\"quantity\":1}]}",
            "#/materials/0/material" },
        { "/v1/designs/new",
            "{\"profile\":\"main\",\"making\":{\"piecesPerDay\":4},\"materials\":[{\"at\":\"@\",\"amount\":1}]}", "#/materials/0/at" },
        { "/v1/channels/new", "{\"name\":\"@\",\"sells\":\"retail\",\"currency\":\"USD\"}", "#/name" },
        { "/v1/channels/new", "{\"fees\":[{\"name\":\"@\"}],\"sells\":\"retail\",\"currency\":\"USD\"}", "#/fees/0/name" },
        { "/v1/channels/new", "{\"sells\":\"retail\",\"currency\":\"@\"}", "#/currency" },
    };

    [Theory]
    [MemberData(nameof(Strings))]
    public async Task A_control_character_is_refused_everywhere(string path, string body, string pointer)
    {
        var studio = shared.Of("Production");
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        foreach (var character in new[] { "a\\tb", "a\\nb", "\\u0000", "\\u007f", "\\u0085", "\\u001b[2J" })
        {
            var answer = (await studio.Put(path, body.Replace("@", character, StringComparison.Ordinal))).IsProblem(422, "invalid-input");
            Assert.Contains((pointer, "control-character"), answer.Pointers.Zip(answer.Codes));
        }

        var tooLong = (await studio.Put(path, body.Replace("@", new string('n', 201), StringComparison.Ordinal))).IsProblem(422, "invalid-input");
        Assert.Contains((pointer, "too-long"), tooLong.Pointers.Zip(tooLong.Codes));
        (await studio.Get(path)).IsProblem(404, "not-found");
    }

    [Theory]
    [MemberData(nameof(Strings))]
    public async Task A_direction_mark_is_refused_everywhere(string path, string body, string pointer)
    {
        var studio = shared.Of("Production");
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        foreach (var mark in new[] { "\\u202e", "\u061c" })
        {
            var answer = (await studio.Put(path, body.Replace("@", $"a{mark}b", StringComparison.Ordinal))).IsProblem(422, "invalid-input");
            Assert.Contains((pointer, "control-character"), answer.Pointers.Zip(answer.Codes));
        }

        (await studio.Get(path)).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task Each_mark_of_direction_is_named_with_what_to_do()
    {
        var studio = shared.Of("Production");
        foreach (var mark in "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
        {
            var answer = (await studio.Put("/v1/channels/new", $$"""{"name":"Shop {{mark}}pohs","sells":"retail","currency":"USD"}"""))
                .IsProblem(422, "invalid-input");
            Assert.Contains($"name holds U+{(int)mark:X4} (", answer.Text, StringComparison.Ordinal);
        }

        var query = (await studio.Get("/v1/price-checks?sku=RB-014%E2%80%AE&channel=web&price=1")).IsProblem(422, "invalid-input");
        Assert.Contains(
            "sku holds U+202E (RIGHT-TO-LEFT OVERRIDE), which is invisible and lets a text read as another; remove it, or type the text again.",
            query.Text, StringComparison.Ordinal);
        var sheet = await studio.SendBytes("POST", "/v1/price-checks/batch", "sku,channel,price\nRB\u200f-014,web,58\n"u8.ToArray(), "text/csv", null,
            ("Accept", "application/json"));
        Assert.Contains("sku holds U+200F (RIGHT-TO-LEFT MARK)", sheet.Text, StringComparison.Ordinal);
        foreach (var kept in new[] { "\u200b", "\u202f", "\u2065", "\u05d0\u05d1" }) // neighbours of the marks, and letters that run from the right
            Assert.True(
                (await studio.Put("/v1/channels/kept", $$"""{"name":"a{{kept}}b","sells":"retail","currency":"USD"}""")).Status is 200 or 201);
    }

    [Theory]
    [InlineData("sku=a%00&channel=web&price=1", "sku")]
    [InlineData("sku=a&channel=w%0Aeb&price=1", "channel")]
    [InlineData("sku=a&channel=web&price=%09", "price")]
    [InlineData("sku=a&channel=web&price=1&currency=%1b", "currency")]
    public async Task And_in_queries(string query, string parameter) =>
        Assert.Equal([parameter], (await shared.Of("Production").Get($"/v1/price-checks?{query}")).IsProblem(422, "invalid-input").Pointers);
}
