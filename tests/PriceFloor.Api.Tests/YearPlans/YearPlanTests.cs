using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.YearPlans;

public sealed class YearPlanTests
{
    [Fact]
    public async Task A_year_of_two_lines_is_added_up()
    {
        // Pendants at 120.00 leave 116.87 for 2 h; studs (8 a day, 1 h) at the listed 50.00 leave 48.55: 400 and 300 leave 46,748 + 14,565 = 61,313.
        await using var studio = new Studio();
        await HasTwoDesigns(studio);
        var plan = (await studio.Post("/v1/year-plans",
            """{"profile":"main","lines":[{"sku":"ST-001","channel":"web","units":300},{"sku":"RB-014","channel":"web","price":120,"units":400}],"hoursKeptBack":900}""")).Json;
        Assert.Equal(("true", "1313.00", "1313.00", "0.00", "61313.00", "63000.00"), (Raw(plan, "closes"), Raw(plan, "surplusBeforeTax"),
            Raw(plan, "surplusAfterTax"), Raw(plan, "shortfall"), Raw(plan, "contribution"), Raw(plan, "revenue")));
        Assert.Equal("""[{"name":"hours","kind":"bench-hours","used":1100,"available":1100,"within":true}]""", Raw(plan, "limits"));
        var lines = plan.GetProperty("lines").EnumerateArray().ToList();
        // 58.435 an hour comes before 48.55.
        Assert.Equal(["ST-001 2 48.55", "RB-014 1 58.44"],
            lines.Select(line => $"{line.GetProperty("sku").GetString()} {Raw(line, "rank")} {Raw(line, "contributionPerBenchHour")}"));
        // A stud's floor is 30.00 and its target 60.00: 50.00 carries its share but breaks the studio's rule.
        Assert.Equal(["below-target", "meets-target"], lines.Select(line => line.GetProperty("verdict").GetString()));
    }

    [Fact]
    public async Task A_year_that_falls_short_or_has_too_few_hours_says_so()
    {
        await using var studio = new Studio();
        await HasTwoDesigns(studio);
        var plan = (await studio.Post("/v1/year-plans", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":1001}]}""")).Json;
        // 1,001 pieces at 56.358 leave 56,414.358: 3,585.642 short, in 2,002 hours of 2,000.
        Assert.Equal(("false", "0.00", "0.00", "3585.65", "false"),
            (Raw(plan, "closes"), Raw(plan, "surplusBeforeTax"), Raw(plan, "surplusAfterTax"), Raw(plan, "shortfall"), Raw(plan, "withinLimits")));
    }

    [Fact]
    public async Task Kiln_loads_and_materials_are_compared_with_what_is_available()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.Rich);
        await studio.Has("/v1/designs/RB-014", Sample.RichDesign);
        await studio.Has("/v1/channels/web", Sample.RichChannel);
        var plan = (await studio.Post("/v1/year-plans?workings=true",
            """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","price":80,"units":450}]}""")).Json;
        // 1 / 0.98 pieces enter the kiln for each good one, 0.9 of the good ones sell, 24 to a load: 450 / 0.98 / 0.9 / 24 = 21.2585.
        var kiln = plan.GetProperty("limits")[1];
        Assert.Equal(("\"kiln\"", "21.2585", "240"), (Raw(kiln, "name"), Raw(kiln, "used"), Raw(kiln, "available")));
        // Rod 38.00 x 0.062 / 0.92 / 0.931, kWh 0.21 x 16 / 24 / 0.98, box 1.55, all over 0.9: 4.938... a piece.
        var piece = (38m * 0.062m / 0.92m / 0.931m + 0.21m * 16 / 24 / 0.98m + 1.55m) / 0.9m;
        var spend = plan.GetProperty("materialSpend");
        Assert.Equal(decimal.Round(450 * piece, 2), spend.GetProperty("planned").GetDecimal());
        Assert.Equal(("3900.00", decimal.Round(3900 - 450 * piece, 2)), (Raw(spend, "bought"), spend.GetProperty("difference").GetDecimal()));
        Assert.Contains(plan.GetProperty("workings").EnumerateArray(), line => line.GetProperty("symbol").GetString() == "loads1");
        Assert.Equal("main@1", plan.GetProperty("basis").GetProperty("profile").GetString());
    }

    [Fact]
    public async Task All_unknown_lines_are_named_at_once_and_nothing_is_answered_in_part()
    {
        await using var studio = new Studio();
        await HasTwoDesigns(studio);
        var answer = await studio.Post("/v1/year-plans",
            """{"profile":"main","lines":[{"sku":"NOPE","channel":"web","units":1},{"sku":"RB-014","channel":"web","units":1},{"sku":"RB-014","channel":"nope","units":1}]}""");
        Assert.Equal(["#/lines/0/sku", "#/lines/2/channel"], answer.IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["#/lines/0/units"],
            (await studio.Post("/v1/year-plans", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":1.5}]}"""))
                .IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["#/lines"],
            (await studio.Post("/v1/year-plans", """{"profile":"main","lines":[]}""")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["too-many"], (await studio.Post("/v1/year-plans",
            $$"""{"profile":"main","lines":[{{string.Join(',', Enumerable.Repeat("""{"sku":"RB-014","channel":"web","units":1}""", 501))}}]}"""))
            .IsProblem(422, "invalid-input").Codes);
    }

    private static async Task HasTwoDesigns(Studio studio)
    {
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/ST-001", """{"profile":"main","making":{"piecesPerDay":8}}""");
        await studio.Has("/v1/designs/ST-001/prices/web", """{"price":50}""");
    }

    private static string Raw(JsonElement json, string name) => json.GetProperty(name).GetRawText();
}
