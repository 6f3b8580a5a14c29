using Xunit;

namespace PriceFloor.Api.Tests.Plans;

/// <summary>Plans that cannot be: each fault with its place, all at once.</summary>
public sealed class PlanInputTests
{
    private const string Line = """{"sku":"RB-014","channel":"web","units":1}""";

    public static TheoryData<string, string, string> Faulty => new()
    {
        { """ "lines":[]""", "#/lines", "required" },
        { $$""" "lines":[{{Line}}],"seasons":{"a":[1,2,3]}""", "#/seasons/a", "not-a-season" },
        { $$""" "lines":[{{Line}}],"seasons":{"a/b":[0,0,0,0,0,0,0,0,0,0,0,0]}""", "#/seasons/a~1b", "not-a-season" },
        { $$""" "lines":[{{Line}}],"seasons":{"a":[1,1,1,1,1,1,1,1,1,1,1,-1]}""", "#/seasons/a/11", "out-of-range" },
        { $$""" "lines":[{{Line}}],"seasons":{"":[1,1,1,1,1,1,1,1,1,1,1,1]}""", "#/seasons/", "required" },
        { $$""" "lines":[{{Line}}],"work":[1,2]""", "#/work", "not-a-season" },
        { """ "lines":[{"sku":"RB-014","channel":"web","units":1,"season":"none"}]""", "#/lines/0/season", "unknown-season" },
        { """ "lines":[{"sku":"RB-014","channel":"web","units":1.5}]""", "#/lines/0/units", "too-many-decimals" },
        { """ "lines":[{"sku":"RB-014","channel":"web","price":1.005,"units":1}]""", "#/lines/0/price", "too-many-decimals" },
        { $$""" "lines":[{{Line}}],"terms":[{"channel":"web"},{"channel":"web"}]""", "#/terms/1/channel", "duplicate" },
        { $$""" "lines":[{{Line}}],"terms":[{"channel":"web","depositMonthsBefore":12}]""", "#/terms/0/depositMonthsBefore", "out-of-range" },
        { $$""" "lines":[{{Line}}],"paidIn":[{"at":"/expenses/Rent","months":[1]}]""", "#/paidIn/0/at", "leads-nowhere" },
        { $$""" "lines":[{{Line}}],"paidIn":[{"at":"/calendar","months":[1]}]""", "#/paidIn/0/at", "leads-nowhere" },
        { $$""" "lines":[{{Line}}],"paidIn":[{"at":"/expenses/0","months":[1]},{"at":"/expenses/*","months":[2]}]""", "#/paidIn/1/at", "duplicate" },
        { $$""" "lines":[{{Line}}],"paidIn":[{"at":"/expenses/0","months":[13]}]""", "#/paidIn/0/months/0", "out-of-range" },
        { $$""" "lines":[{{Line}}],"paidIn":[{"at":"/expenses/0","months":[1,1]}]""", "#/paidIn/0/months/1", "duplicate" },
        { $$""" "lines":[{{Line}}],"taxPaid":[{"month":1}]""", "#/taxPaid/0", "exactly-one" },
        { $$""" "lines":[{{Line}}],"taxPaid":[{"month":1,"amount":1,"share":0.5}]""", "#/taxPaid/0", "exactly-one" },
        { $$""" "lines":[{{Line}}],"salesTaxPaid":[3,3]""", "#/salesTaxPaid/1", "duplicate" },
        { $$""" "lines":[{{Line}}],"steady":true,"opening":{"owedToUs":[{"month":1,"amount":5}]}""", "#/opening/owedToUs", "contradictory" },
        { $$""" "lines":[{{Line}}],"steady":true,"opening":{"stock":[{"sku":"RB-014","pieces":5}]}""", "#/opening/stock", "contradictory" },
        {
            $$""" "lines":[{{Line}}],"opening":{"stock":[{"sku":"RB-014","pieces":5},{"sku":"drop","pieces":5}]}""",
            "#/opening/stock/1/sku", "duplicate"
        },
    };

    [Theory]
    [MemberData(nameof(Faulty))]
    public async Task A_rule_that_is_broken_is_named_at_its_place(string members, string pointer, string code)
    {
        await using var studio = await Shop();
        var answer = (await studio.Put("/v1/plans/p", "{\"profile\":\"main\"," + members + "}")).IsProblem(422, "invalid-input");
        Assert.Equal((pointer, code), (Assert.Single(answer.Pointers), answer.Codes[0]));
        var inline = (await studio.Post("/v1/plan-months", "{\"plan\":{\"profile\":\"main\"," + members + "}}")).IsProblem(422, "invalid-input");
        Assert.Equal(("#/plan" + pointer[1..], code), (Assert.Single(inline.Pointers), inline.Codes[0]));
    }

    [Fact]
    public async Task Names_that_lead_nowhere_are_reported_together()
    {
        await using var studio = await Shop();
        const string Plan = """
            {"profile":"nope","lines":[{"sku":"nope","channel":"web","units":1},{"sku":"RB-014","channel":"nope","units":1}],
             "terms":[{"channel":"nope"}],"opening":{"stock":[{"sku":"nope","pieces":1}]}}
            """;
        var answer = (await studio.Put("/v1/plans/p", Plan)).IsProblem(422, "unknown-reference");
        Assert.Equal(["#/lines/0/sku", "#/lines/1/channel", "#/opening/stock/0/sku", "#/profile", "#/terms/0/channel"], answer.Pointers);
        Assert.Equal(["#/plan"], (await studio.Post("/v1/plan-months", """{"plan":"nope"}""")).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["#/profile"],
            (await studio.Post("/v1/plan-months", $$"""{"plan":{"lines":[{{Line}}]} }""")).IsProblem(422, "invalid-input").Pointers);
    }

    [Fact]
    public async Task Two_currencies_never_meet()
    {
        await using var studio = await Shop();
        await studio.Has("/v1/channels/abroad", """{"sells":"retail","currency":"EUR"}""");
        const string Abroad = """{"profile":"main","lines":[{"sku":"RB-014","channel":"abroad","price":60,"units":1}]}""";
        (await studio.Put("/v1/plans/p", Abroad)).IsProblem(422, "currency-mismatch");
        (await studio.Post("/v1/plan-months", $$"""{"plan":{{Abroad}} }""")).IsProblem(422, "currency-mismatch");
    }

    [Theory]
    [InlineData("""{"seasons":{"a":[1],"a":[1]}}""", "duplicate-property")]
    [InlineData("""{"seasons":{"a":1}}""", "wrong-type")]
    [InlineData("""{"seasons":{"a":null}}""", "null")]
    [InlineData("""{"seasons":[]}""", "wrong-type")]
    [InlineData("""{"profits":1}""", "unknown-property")]
    public async Task What_cannot_be_read_is_reported_alone(string body, string code)
    {
        await using var studio = await Shop();
        Assert.Equal(code, Assert.Single((await studio.Put("/v1/plans/p", body)).IsProblem(400, "unreadable-request").Codes));
    }

    [Fact]
    public async Task A_plan_whose_bills_have_gone_from_the_profile_says_so()
    {
        await using var studio = await Shop();
        await studio.Has("/v1/profiles/main",
            Sample.SmallProfile.Replace("\"amount\":24000", "\"name\":\"All\",\"amount\":24000", StringComparison.Ordinal));
        await studio.Has("/v1/plans/p", $$"""{"profile":"main","lines":[{{Line}}],"paidIn":[{"at":"/expenses/All","months":[2]}]}""");
        Assert.Equal("24000.00", (await studio.Get("/v1/plans/p/months")).Json.GetProperty("months")[1].GetProperty("bills").GetRawText());
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        var answer = (await studio.Get("/v1/plans/p/months")).IsProblem(422, "cannot-compute");
        Assert.Equal("leads-nowhere", answer.Json.GetProperty("reason").GetString());
        Assert.Contains("/paidIn/0/at", answer.Text, StringComparison.Ordinal);
    }

    private static async Task<Studio> Shop()
    {
        var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":4},"aliases":["drop"]}""");
        return studio;
    }
}
