using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.YearPlans;

public sealed class BestPlanTests
{
    [Fact]
    public async Task Hours_go_where_they_bring_most_between_the_minimum_and_what_the_market_takes()
    {
        // An hour of studs brings 30.00, of pendants 25.00 (50.00 in 2 h). 2,000 h less 400 kept back: 100 pendants must be made (200 h),
        // the market takes 1,000 studs (1,000 h), the 400 h left make 200 pendants more: 1,000 x 30 + 300 x 50 = 45,000: 15,000 short of 60,000.
        await using var studio = await AStudio();
        var best = (await studio.Post("/v1/year-plans/best?workings=true", """
            {"profile":"main","hoursKeptBack":400,"lines":[
              {"sku":"pendant","channel":"order","price":50,"minimum":100},{"sku":"stud","channel":"order","price":30,"maximum":1000}]}
            """)).Json;
        Assert.Equal(["300 null", "1000 \"maximum\""], best.GetProperty("lines").EnumerateArray()
            .Select(line => $"{Raw(line, "units")} {(line.TryGetProperty("heldBy", out var held) ? held.GetRawText() : "null")}"));
        Assert.Equal(("false", "15000.00", "45000.00", "1600"),
            (Raw(best, "closes"), Raw(best, "shortfall"), Raw(best, "contribution"), Raw(best, "benchHours")));
        Assert.Equal("""{"goal":"maximum-surplus","proven":true}""", Raw(best, "best"));
        // One hour more makes no pendant beside the others, but one stud less makes room for it: 50 - 30 = 20.00.
        Assert.Equal("""[{"name":"hours","kind":"bench-hours","used":1600,"available":1600,"within":true,"binds":true,"worthOfOneMore":20.00}]""",
            Raw(best, "limits"));
        Assert.Equal("20", Raw(best.GetProperty("workings").EnumerateArray().Single(line => Raw(line, "symbol") == "\"worthOfOneMore1\""), "value"));
    }

    [Fact]
    public async Task A_kiln_may_be_scarcer_than_hours_and_one_more_load_has_its_worth()
    {
        // Bowls leave 90.00 in 1 h and fill a load of 4; studs leave 30.00 in 1 h and need no kiln. 10 loads: 40 bowls, the rest of 2,000 h studs.
        // One load more: 4 bowls in place of 4 studs, 4 x (90 - 30) = 240.00. One hour more: one stud, 30.00.
        await using var studio = await AStudio("""[{"name":"kiln","loadsPerYear":10}]""");
        await studio.Has("/v1/designs/bowl",
            """{"profile":"main","making":{"steps":[{"name":"torch","handsOnMinutes":60},{"name":"anneal","handsOnMinutes":0,"batchSize":4,"uses":"kiln","mayBeHurried":false}]}}""");
        var best = (await studio.Post("/v1/year-plans/best",
            """{"profile":"main","lines":[{"sku":"bowl","channel":"order","price":90},{"sku":"stud","channel":"order","price":30}]}""")).Json;
        Assert.Equal(["40", "1960"], best.GetProperty("lines").EnumerateArray().Select(line => Raw(line, "units")));
        Assert.Equal(
            """[{"name":"hours","kind":"bench-hours","used":2000,"available":2000,"within":true,"binds":true,"worthOfOneMore":30.00},{"name":"kiln","kind":"loads","used":10,"available":10,"within":true,"binds":true,"worthOfOneMore":240.00}]""",
            Raw(best, "limits"));
        Assert.Equal("true 2400.00", $"{Raw(best, "closes")} {Raw(best, "surplusBeforeTax")}"); // 3,600 + 58,800 less 60,000
    }

    [Fact]
    public async Task The_fewest_hours_that_close_the_year()
    {
        // Bowls and studs as above without a limit: 666 bowls leave 59,940, one stud 30 more: 60,000 needs 667 h either way; 667 bowls leave 30 over.
        await using var studio = await AStudio();
        await studio.Has("/v1/designs/bowl", """{"profile":"main","making":{"minutesPerPiece":60}}""");
        var best = (await studio.Post("/v1/year-plans/best",
            """{"profile":"main","goal":"fewest-hours","lines":[{"sku":"bowl","channel":"order","price":90},{"sku":"stud","channel":"order","price":30}]}""")).Json;
        Assert.Equal(("true", "667", "30.00"), (Raw(best, "closes"), Raw(best, "benchHours"), Raw(best, "surplusBeforeTax")));
        Assert.Equal("""{"goal":"fewest-hours","proven":true}""", Raw(best, "best"));
    }

    [Fact]
    public async Task What_cannot_be_names_the_limits_that_are_broken()
    {
        await using var studio = await AStudio("""[{"name":"kiln","loadsPerYear":10}]""");
        await studio.Has("/v1/designs/bowl",
            """{"profile":"main","making":{"steps":[{"handsOnMinutes":60},{"handsOnMinutes":0,"batchSize":4,"uses":"kiln"}]}}""");
        async Task<string> Refused(string rest)
        {
            var answer = (await studio.Post("/v1/year-plans/best", $$"""{"profile":"main",{{rest}}}""")).IsProblem(422, "cannot-compute");
            Assert.Equal("infeasible", answer.Json.GetProperty("reason").GetString());
            return answer.Json.GetProperty("detail").GetString()!;
        }

        var both = await Refused(""" "hoursKeptBack":1990,"lines":[{"sku":"bowl","channel":"order","price":90,"minimum":41}] """);
        Assert.Contains("kiln", both, StringComparison.Ordinal);
        Assert.Contains("hours", both, StringComparison.Ordinal);
        var kiln = await Refused(""" "lines":[{"sku":"bowl","channel":"order","price":90,"minimum":41}] """);
        Assert.Contains("kiln", kiln, StringComparison.Ordinal);
        Assert.DoesNotContain("hours", kiln, StringComparison.Ordinal);
        await Refused(""" "goal":"fewest-hours","lines":[{"sku":"bowl","channel":"order","price":90}] """); // 40 bowls leave 3,600
    }

    [Fact]
    public async Task Bad_input_is_named()
    {
        await using var studio = await AStudio();
        async Task<Answer> Ask(string lines, string rest = "") =>
            await studio.Post("/v1/year-plans/best", $$"""{"profile":"main",{{rest}}"lines":[{{lines}}]}""");
        Assert.Equal(["#/lines/1/minimum"],
            (await Ask("""{"sku":"stud","channel":"order","price":30},{"sku":"stud","channel":"order","price":30,"minimum":5,"maximum":4}"""))
                .IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["#/lines/0/maximum"],
            (await Ask("""{"sku":"stud","channel":"order","price":30,"maximum":4.5}""")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["#/goal"],
            (await Ask("""{"sku":"stud","channel":"order","price":30}""", "\"goal\":\"most\",")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["#/lines"], (await Ask("")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["#/lines/0/sku"], (await Ask("""{"sku":"x","channel":"order","price":30}""")).IsProblem(422, "unknown-reference").Pointers);
        Assert.Equal(["#/lines/0/price"], (await Ask("""{"sku":"stud","channel":"order"}""")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["too-many"], (await Ask(string.Join(',', Enumerable.Repeat("""{"sku":"stud","channel":"order","price":30}""", 501))))
            .IsProblem(422, "invalid-input").Codes);
    }

    /// <summary>60,000 to carry in 2,000 hours; pendants of 2 h and studs of 1 h, sold where nothing is taken.</summary>
    private static async Task<Studio> AStudio(string limits = "[]")
    {
        var studio = new Studio();
        await studio.Has("/v1/profiles/main",
            Sample.SmallProfile.Replace("\"expenses\"", $"\"limits\":{limits},\"expenses\"", StringComparison.Ordinal));
        await studio.Has("/v1/designs/pendant", """{"profile":"main","making":{"piecesPerDay":4}}""");
        await studio.Has("/v1/designs/stud", """{"profile":"main","making":{"piecesPerDay":8}}""");
        await studio.Has("/v1/channels/order", """{"sells":"wholesale","currency":"USD"}""");
        return studio;
    }

    private static string Raw(JsonElement json, string name) => json.GetProperty(name).GetRawText();
}
