using Xunit;

namespace PriceFloor.Api.Tests.FloorPrices;

/// <summary>Inline documents follow every rule of stored ones, with pointers from the request's root.</summary>
public sealed class WhatIfInputTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    private static readonly int[] s_answered = [200, 422];

    public static TheoryData<string, string[], string[]> Refused => new()
    {
        { """{"profile":{"currency":"usd","calendar":{"weeksPerYear":60,"daysPerWeek":5}},"design":{"making":{}},"channels":[{"sells":"retail","currency":"USD"},{"sells":"no","currency":"USD","returns":{"share":1} }]}""",
            ["#/channels/1/returns/share", "#/channels/1/sells", "#/design/making", "#/profile/calendar/hoursPerDay",
                "#/profile/calendar/weeksPerYear", "#/profile/currency"],
            ["out-of-range", "not-one-of", "exactly-one", "required", "out-of-range", "unknown-currency"] },
        { """{"profile":"main"}""", ["#/design"], ["required"] },
        { """{"profile":"","design":""}""", ["#/design", "#/profile"], ["required", "required"] },
        { """{"profile":"a\tb","design":"x"}""", ["#/profile"], ["control-character"] },
        { $$"""{"profile":{{Sample.SmallProfile}},"design":{"making":{"piecesPerDay":4},"materials":[{"amount":1,"at":"polish"}] } }""",
            ["#/design/materials/0/at"], ["unknown-step"] },
        { $$"""{"profile":{{Sample.SmallProfile}},"design":{"making":{"piecesPerDay":4} },"channels":[{{string.Join(',', Enumerable.Repeat("\"web\"", 101))}}]}""",
            ["#/channels"], ["too-many"] },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public async Task All_faults_of_all_documents_are_reported_at_once(string body, string[] pointers, string[] codes)
    {
        var answer = (await shared.Of("Production").Post("/v1/floor-prices", body)).IsProblem(422, "invalid-input");
        Assert.Equal(pointers, answer.Pointers);
        Assert.Equal(codes, answer.Codes);
    }

    [Theory]
    [InlineData("""{"profile":1,"design":"x"}""", "wrong-type", "#/profile")]
    [InlineData("""{"profile":null,"design":null}""", "null", "#/profile")]
    [InlineData("""{"design":null}""", "null", "#/design")]
    [InlineData("""{"profile":[],"design":"x"}""", "wrong-type", "#/profile")]
    [InlineData("""{"design":{"making":{"piecesPerDay":4,"pieces":1}}}""", "unknown-property", "#/design/making/pieces")]
    [InlineData("""{"design":"x","channels":["web",null]}""", "null", "#/channels/1")]
    [InlineData("""{"design":"x","channels":"web"}""", "wrong-type", "#/channels")]
    [InlineData("""{"design":"x","Design":"x"}""", "unknown-property", "#/Design")]
    public async Task Anything_that_cannot_be_read_is_reported_with_its_place(string body, string code, string pointer)
    {
        var answer = (await shared.Of("Production").Post("/v1/floor-prices", body)).IsProblem(400, "unreadable-request");
        Assert.Equal((code, pointer), (Assert.Single(answer.Codes), Assert.Single(answer.Pointers)));
    }

    [Fact]
    public async Task A_material_that_the_tried_profile_lacks_is_an_unknown_reference()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.Rich);
        await studio.Has("/v1/profiles/bare", Sample.SmallProfile);
        await studio.Has("/v1/designs/RB-014", Sample.RichDesign);
        var query = (await studio.Get("/v1/designs/RB-014/floor-price?profile=bare")).IsProblem(422, "unknown-reference");
        Assert.Equal([("profile", "unknown-material"), ("profile", "unknown-material")], query.Pointers.Zip(query.Codes));
        Assert.Equal(
            ["The price list of the profile \"bare\" has no material \"clear-rod\", which the design \"RB-014\" uses; add it there, "
                + "or try another profile.",
                "The price list of the profile \"bare\" has no material \"kiln-kwh\", which the design \"RB-014\" uses; add it there, "
                + "or try another profile."],
            query.Json.GetProperty("errors").EnumerateArray().Select(error => error.GetProperty("detail").GetString()));
        Assert.Equal(["#/profile", "#/profile"],
            (await studio.Post("/v1/floor-prices", """{"profile":"bare","design":"RB-014"}""")).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["#/profile", "#/profile"],
            (await studio.Post("/v1/floor-prices", $$"""{"profile":{{Sample.SmallProfile}},"design":"RB-014"}"""))
                .IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["#/design/materials/0/material", "#/design/materials/1/material"],
            (await studio.Post("/v1/floor-prices", $$"""{"profile":"bare","design":{{Sample.RichDesign}}}"""))
                .IsProblem(422, "unknown-reference").Pointers);
        await studio.Has("/v1/channels/web", Sample.Shop);
        var mix = (await studio.Post("/v1/break-even",
            """{"profile":"bare","lines":[{"sku":"RB-014","channel":"web","price":58,"ratio":1},{"sku":"RB-014","channel":"web","price":60,"ratio":1}]}"""))
            .IsProblem(422, "unknown-reference");
        Assert.Equal(["#/profile", "#/profile"], mix.Pointers); // each material once, not once for each line
    }

    [Fact]
    public async Task Two_documents_that_are_valid_each_may_have_no_answer_together()
    {
        // All bench time is a helper's, so a day of the maker's bench is no time at all: piecesPerDay of 0 hours.
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        await studio.Has("/v1/designs/RB-014", Sample.Pendant);
        await studio.Has("/v1/profiles/main", Sample.SmallProfile.Replace("\"hoursPerDay\":8}",
            "\"hoursPerDay\":8,\"benchShare\":0},\"helpers\":[{\"benchHoursPerYear\":500}]", StringComparison.Ordinal));
        Assert.Equal("no-bench-time",
            (await studio.Get("/v1/designs/RB-014/floor-price")).IsProblem(422, "cannot-compute").Json.GetProperty("reason").GetString());
    }

    [Fact]
    public async Task The_dearest_year_that_can_be_stored_is_answered_or_refused_but_never_a_fault()
    {
        await using var studio = new Studio();
        var lines = string.Join(',', Enumerable.Repeat("""{"amount":1000000000000,"per":"week"}""", 500));
        await studio.Has("/v1/profiles/main", Sample.SmallProfile.Replace("""{"amount":24000,"per":"year"}""", lines, StringComparison.Ordinal)
            .Replace("\"hoursPerDay\":8", "\"hoursPerDay\":8,\"benchShare\":0.00000501", StringComparison.Ordinal));
        await studio.Has("/v1/designs/A", """{"profile":"main","making":{"minutesPerPiece":1000000}}""");
        foreach (var share in new[] { "0.1", "0.01", "0.001", "0.0001" })
            Assert.Contains((await studio.Put("/v1/designs/A",
                $$"""{"profile":"main","soldShare":{{share}},"making":{"goodShare":{{share}},"minutesPerPiece":1000000},"seconds":{"share":1,"price":1000000000000} }""")).Status,
                s_answered);
        await studio.Has("/v1/channels/web", Sample.Shop);
        foreach (var path in new[]
        {
            "/v1/profiles/main/requirement",
            "/v1/designs/A/floor-price",
            "/v1/price-checks?sku=A&channel=web&price=1000000000000",
        })
            Assert.Contains(
                (await studio.Get(path + (path.Contains('?', StringComparison.Ordinal) ? "&" : "?") + "workings=true")).Status, s_answered);
    }
}
