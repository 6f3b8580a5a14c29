using Xunit;

namespace PriceFloor.Api.Tests.BreakEvens;

public sealed class BreakEvenTests
{
    [Fact]
    public async Task The_listed_price_is_asked_about_where_none_is_given()
    {
        // 58.00 nets 55.96: 60,000 / 55.96 = 1,072.2: 1,073 pieces of 2 h are 2,146 h of 2,000: more than the year has.
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answer = (await studio.Get("/v1/designs/RB-014/break-even?channel=web")).Json;
        string Raw(string name) => answer.GetProperty(name).GetRawText();
        Assert.Equal(("58.00", "55.96", "1073", "62234.00"), (Raw("price"), Raw("contribution"), Raw("units"), Raw("revenue")));
        Assert.Equal(("2146", "1000", "false", "1.073"), (Raw("benchHours"), Raw("capacity"), Raw("withinCapacity"), Raw("shareOfYear")));
    }

    [Fact]
    public async Task A_plan_has_a_margin_of_safety_and_a_leverage()
    {
        // At 120.00 a sale leaves 116.10; 517 carry the year. 600 planned: 83 / 600; 69,660 / 9,660 = 7.211180.
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answer = (await studio.Get("/v1/designs/RB-014/break-even?channel=web&price=120.00&planned=600")).Json;
        Assert.Equal(("0.138333", "7.21118"), (answer.GetProperty("marginOfSafety").GetRawText(), answer.GetProperty("operatingLeverage").GetRawText()));
        var below = (await studio.Get("/v1/designs/RB-014/break-even?channel=web&price=120.00&planned=500")).Json;
        Assert.Equal(("-0.034", "null"), (below.GetProperty("marginOfSafety").GetRawText(), below.GetProperty("operatingLeverage").GetRawText()));
    }

    [Fact]
    public async Task Without_a_plan_neither_is_told()
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
        var answer = (await studio.Get("/v1/designs/RB-014/break-even?channel=web&price=0.30")).IsProblem(422, "cannot-compute");
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
        Assert.Equal(["#/lines/1/sku"], (await studio.Post("/v1/break-even", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","ratio":1},{"sku":"x","channel":"web","ratio":1}]}""")).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["#/lines"], (await studio.Post("/v1/break-even", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","ratio":0}]}""")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["#/profile"], (await studio.Post("/v1/break-even", """{"profile":"x","lines":[{"sku":"RB-014","channel":"web","ratio":1}]}""")).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["too-many"], (await studio.Post("/v1/break-even", $$"""{"profile":"main","lines":[{{string.Join(',', Enumerable.Repeat("""{"sku":"RB-014","channel":"web","ratio":1}""", 501))}}]}""")).IsProblem(422, "invalid-input").Codes);
    }

    [Fact]
    public async Task A_mix_shares_the_year_and_a_surplus_before_tax_is_just_added()
    {
        // Pendants at 120.00 leave 116.10, studs (8 a day, 1 h) at 50.00 leave 48.20: 2 + 3 of them 376.80 a set; 61,884 / 376.80 = 164.235.
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/ST-001", """{"profile":"main","making":{"piecesPerDay":8}}""");
        var answer = (await studio.Post("/v1/break-even", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":120,"ratio":2},{"sku":"ST-001","channel":"web","price":50,"ratio":3}],"surplus":{"amount":1884,"tax":"before"}}""")).Json;
        Assert.Equal(("61884.00", "376.80"), (answer.GetProperty("benchMustEarn").GetRawText(), answer.GetProperty("contributionPerMixUnit").GetRawText()));
        Assert.Equal(["329", "493"], answer.GetProperty("lines").EnumerateArray().Select(line => line.GetProperty("units").GetRawText())); // 328.47 and 492.71, up
        Assert.Equal(("1151", "true"), (answer.GetProperty("benchHours").GetRawText(), answer.GetProperty("withinCapacity").GetRawText())); // 329 x 2 + 493
    }
}
