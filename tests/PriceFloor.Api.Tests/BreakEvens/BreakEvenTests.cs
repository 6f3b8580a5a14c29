using Xunit;

namespace PriceFloor.Api.Tests.BreakEvens;

public sealed class BreakEvenTests
{
    [Fact]
    public async Task The_listed_price_is_used_if_none_is_given()
    {
        // 58.00 nets 56.358: 60,000 / 56.358 = 1,064.6: 1,065 pieces of 2 h are 2,130 h of 2,000: more than the year has.
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answer = (await studio.Get("/v1/designs/RB-014/break-even?channel=web")).Json;
        string Raw(string name) => answer.GetProperty(name).GetRawText();
        Assert.Equal(("58.00", "56.36", "1065", "61770.00"), (Raw("price"), Raw("contribution"), Raw("units"), Raw("revenue")));
        Assert.Equal(("2130", "1000", "false", "1.065"), (Raw("benchHours"), Raw("capacity"), Raw("withinCapacity"), Raw("shareOfYear")));
    }

    [Fact]
    public async Task A_plan_has_a_margin_of_safety_and_a_leverage()
    {
        // At 120.00 a sale leaves 116.87; 514 carry the year. 600 planned: 86 / 600; 70,122 / 10,122 = 6.927682. 500 planned: -14 / 500.
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answer = (await studio.Get("/v1/designs/RB-014/break-even?channel=web&price=120.00&planned=600")).Json;
        Assert.Equal(("0.143333", "6.927682"),
            (answer.GetProperty("marginOfSafety").GetRawText(), answer.GetProperty("operatingLeverage").GetRawText()));
        var below = (await studio.Get("/v1/designs/RB-014/break-even?channel=web&price=120.00&planned=500")).Json;
        Assert.Equal(("-0.028", "null"), (below.GetProperty("marginOfSafety").GetRawText(), below.GetProperty("operatingLeverage").GetRawText()));
    }

    [Fact]
    public async Task Without_a_plan_neither_is_answered()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answer = (await studio.Get("/v1/designs/RB-014/break-even?channel=web")).Json;
        Assert.Equal((false, false), (answer.TryGetProperty("marginOfSafety", out _), answer.TryGetProperty("operatingLeverage", out _)));
    }

    [Fact]
    public async Task A_price_that_leaves_nothing_never_breaks_even()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answer = (await studio.Get("/v1/designs/RB-014/break-even?channel=web&price=0.25")).IsProblem(422, "cannot-compute");
        Assert.Equal("never-breaks-even", answer.Json.GetProperty("reason").GetString());
    }

    [Fact]
    public async Task What_is_missing_or_unknown_is_named()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/fair", Sample.Shop);
        (await studio.Get("/v1/designs/NOPE/break-even?channel=web")).IsProblem(404, "not-found");
        Assert.Equal(["channel"], (await studio.Get("/v1/designs/RB-014/break-even?channel=nope")).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["price"], (await studio.Get("/v1/designs/RB-014/break-even?channel=fair")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["planned"], (await studio.Get("/v1/designs/RB-014/break-even?channel=web&planned=0")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["#/lines/1/sku"], (await studio.Post("/v1/break-even",
            """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","ratio":1},{"sku":"x","channel":"web","ratio":1}]}"""))
            .IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["#/lines"], (await studio.Post("/v1/break-even", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","ratio":0}]}"""))
            .IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["#/profile"], (await studio.Post("/v1/break-even", """{"profile":"x","lines":[{"sku":"RB-014","channel":"web","ratio":1}]}"""))
            .IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["too-many"], (await studio.Post("/v1/break-even",
            $$"""{"profile":"main","lines":[{{string.Join(',', Enumerable.Repeat("""{"sku":"RB-014","channel":"web","ratio":1}""", 501))}}]}"""))
            .IsProblem(422, "invalid-input").Codes);
    }

    [Fact]
    public async Task A_mix_shares_the_year_and_a_surplus_before_tax_is_just_added()
    {
        // Pendants at 120.00 leave 116.87, studs (8 a day, 1 h) at 50.00 leave 48.55: 2 + 3 of them 379.39 a set; 61,884 / 379.39 = 163.114.
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/ST-001", """{"profile":"main","making":{"piecesPerDay":8}}""");
        var answer = (await studio.Post("/v1/break-even",
            """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":120,"ratio":2},{"sku":"ST-001","channel":"web","price":50,"ratio":3}],"surplus":{"amount":1884,"tax":"before"}}""")).Json;
        Assert.Equal(("61884.00", "379.39"),
            (answer.GetProperty("benchMustEarn").GetRawText(), answer.GetProperty("contributionPerMixUnit").GetRawText()));
        // 326.23 and 489.34, up
        Assert.Equal(["327", "490"], answer.GetProperty("lines").EnumerateArray().Select(line => line.GetProperty("units").GetRawText()));
        // 327 x 2 + 490
        Assert.Equal(("1144", "true"), (answer.GetProperty("benchHours").GetRawText(), answer.GetProperty("withinCapacity").GetRawText()));
    }
}
