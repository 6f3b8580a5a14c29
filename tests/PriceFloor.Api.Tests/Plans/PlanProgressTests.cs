using System.Text.Json.Nodes;
using Xunit;

namespace PriceFloor.Api.Tests.Plans;

/// <summary>Whether the year is on its way: the worked example of the model, over HTTP.</summary>
public sealed class PlanProgressTests
{
    private static readonly string[] s_figures =
        ["planned", "brought", "ahead", "pace", "forecast", "restPlanned", "factor", "weeksLeft", "perWeekLeft", "perBenchHourLeft"];

    [Fact]
    public async Task Eight_months_at_92_percent_leave_a_factor_for_the_rest()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/plans/2026", WorkedPlan.Steady.ToJsonString());
        var answer = await studio.Post("/v1/plans/2026/progress", Sold(await Months(studio), 0.92m));
        Assert.True(answer.Status == 200, answer.Text);
        string Raw(string name) => answer.Json.GetProperty(name).GetRawText();
        Assert.Equal(["30018.84", "27617.33", "-2401.51", "0.92", "55538.92", "30349.55", "1.1765", "16.5", "2164.00", "88.02"],
            s_figures.Select(Raw));
        Assert.Equal("35705.97", Raw("stillToBring")); // 35,705.96... rounded up
        Assert.Equal(405.7m, Rounding.Nearest(answer.Json.GetProperty("hoursLeft").GetDecimal(), 1));
        var months = answer.Json.GetProperty("months").EnumerateArray().ToList();
        Assert.Equal([9, 10, 11, 12], months.Select(month => month.GetProperty("month").GetInt32()));
        Assert.InRange(months.Sum(month => month.GetProperty("toBring").GetDecimal()), 35705.94m, 35705.98m);
        var ways = answer.Json.GetProperty("ways");
        Assert.Equal(("5356.42", "1.1765"), (ways.GetProperty("missing").GetRawText(), ways.GetProperty("sellMore").GetRawText()));
        Assert.Equal("5356.42", ways.GetProperty("spendLess").GetRawText()); // 35,705.96 - 30,349.55, up
    }

    [Fact]
    public async Task Raising_the_prices_of_the_rest_by_what_it_says_brings_it_and_a_thousandth_less_does_not()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        // 1,200 pieces at 58.00 with 2.4 % and 0.25 of fees leave 56.358 each, 67,629.60 a year; the year must bring 60,000. By the end of June, at
        // even months, 33,814.80 were planned; 20,000 have come, so 40,000 must come of 600 pieces: 66.6667 each, a price of 68.5621: 18.2 % more.
        await studio.Has("/v1/plans/p", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":1200}]}""");
        var answer = (await studio.Post("/v1/plans/p/progress",
            """{"through":"2027-06-30","sold":[{"sku":"RB-014","channel":"web","units":400,"net":50}]}""")).Json;
        Assert.Equal(("33814.80", "20000.00", "40000.00"), (answer.GetProperty("planned").GetRawText(), answer.GetProperty("brought").GetRawText(),
            answer.GetProperty("stillToBring").GetRawText()));
        Assert.Equal("0.183", answer.GetProperty("ways").GetProperty("raise").GetRawText()); // 58 * 1.182 = 68.556 is not enough, 58 * 1.183 is
        Assert.Equal("1.183", answer.GetProperty("factor").GetRawText()[..5]); // 40,000 / 33,814.80
    }

    [Fact]
    public async Task A_season_is_not_hopeless_in_August()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/plans/p", Sample.Plan);
        var answer = (await studio.Post("/v1/plans/p/progress",
            """{"through":"2027-08-31","sold":[{"sku":"RB-014","channel":"web","units":270}]}""")).Json;
        // 45 % of the season has passed, and 270 of 600 are sold: just on its way.
        Assert.Equal(("0.00", "1"), (answer.GetProperty("ahead").GetRawText(), answer.GetProperty("pace").GetRawText()));
    }

    [Fact]
    public async Task Half_a_month_counts_by_its_days_and_nothing_planned_has_no_pace()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/plans/p", """
            {"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":100,"season":"s"}],"seasons":{"s":[0,1,0,0,0,0,0,0,0,0,0,0]}}
            """);
        var early = (await studio.Post("/v1/plans/p/progress", """{"through":"2027-01-31"}""")).Json;
        Assert.Equal(("null", "null"), (early.GetProperty("pace").GetRawText(), early.GetProperty("forecast").GetRawText()));
        var half = (await studio.Post("/v1/plans/p/progress", """{"through":"2027-02-14"}""")).Json;
        Assert.Equal("2817.90", half.GetProperty("planned").GetRawText()); // half of 100 * 56.358
        var over = (await studio.Post("/v1/plans/p/progress", """{"through":"2027-12-31"}""")).Json;
        foreach (var name in new[] { "factor", "perBenchHourLeft", "perWeekLeft" })
            Assert.Equal((name, "null"), (name, over.GetProperty(name).GetRawText()));
        Assert.Equal("[]", over.GetProperty("months").GetRawText());
    }

    [Theory]
    [InlineData("[1,1,1,1,1,1,1,1,1,1,1,0]", "2027-11-30")]
    [InlineData("[7,3,11,13,17,19,23,29,31,37,41,43]", "2027-12-31")]
    public async Task When_all_of_the_plan_has_passed_nothing_is_left_to_multiply(string season, string through)
    {
        // Shares of a season such as 7/274 are not exact, so their sum may be a hair beside one; a hair is no rest of a plan.
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/plans/p",
            $$"""{"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":613,"season":"s"}],"seasons":{"s":{{season}} } }""");
        var over = (await studio.Post("/v1/plans/p/progress", $$"""{"through":"{{through}}"}""")).Json;
        foreach (var name in new[] { "factor", "ways/sellMore" })
            Assert.Equal((name, "null"), (name, name.Split('/').Aggregate(over, (at, part) => at.GetProperty(part)).GetRawText()));
        Assert.Equal("0.00", over.GetProperty("restPlanned").GetRawText());
    }

    [Fact]
    public async Task What_is_not_in_the_plan_counts_at_its_listed_price_or_at_what_was_got()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/designs/ST-1", """{"profile":"main","making":{"piecesPerDay":8},"materials":[{"amount":2}],"aliases":["stud"]}""");
        await studio.Has("/v1/plans/p", Sample.Plan);
        var got = (await studio.Post("/v1/plans/p/progress",
            """{"through":"2027-03-31","sold":[{"sku":"stud","channel":"web","units":10,"net":21.5}]}""")).Json;
        Assert.Equal("195.00", got.GetProperty("brought").GetRawText()); // 10 * (21.50 - 2.00)
        Assert.Equal(["#/sold/0/price"], (await studio.Post("/v1/plans/p/progress",
            """{"through":"2027-03-31","sold":[{"sku":"stud","channel":"web","units":10}]}""")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["#/sold/0/sku"], (await studio.Post("/v1/plans/p/progress",
            """{"through":"2027-03-31","sold":[{"sku":"nope","channel":"web","units":10}]}""")).IsProblem(422, "unknown-reference").Pointers);
    }

    [Theory]
    [InlineData("2026-12-31")]
    [InlineData("2028-01-01")]
    public async Task A_day_of_another_year_is_out_of_range(string through)
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/plans/p", Sample.Plan);
        var answer = (await studio.Post("/v1/plans/p/progress", $$"""{"through":"{{through}}"}""")).IsProblem(422, "invalid-input");
        Assert.Equal(("#/through", "out-of-range"), (Assert.Single(answer.Pointers), answer.Codes[0]));
        (await studio.Post("/v1/plans/none/progress", """{"through":"2027-01-31"}""")).IsProblem(404, "not-found");
    }

    private static async Task<IReadOnlyList<decimal>> Months(Studio studio)
    {
        var months = (await studio.Get("/v1/plans/2026/months?lines=true")).Json.GetProperty("months").EnumerateArray().Take(8).ToList();
        return [.. Enumerable.Range(0, 20).Select(line => months.Sum(month => month.GetProperty("lines")[line].GetDecimal()))];
    }

    /// <summary>What the plan sells through August, times a share.</summary>
    private static string Sold(IReadOnlyList<decimal> pieces, decimal share) => new JsonObject
    {
        ["through"] = "2026-08-31",
        ["sold"] = new JsonArray([.. WorkedPlan.Steady["lines"]!.AsArray().Zip(pieces, (line, sold) => new JsonObject
        {
            ["sku"] = line!["sku"]!.GetValue<string>(),
            ["channel"] = line["channel"]!.GetValue<string>(),
            ["units"] = decimal.Round(sold * share, 6),
        })]),
    }.ToJsonString();
}
