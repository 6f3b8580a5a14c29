using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace PriceFloor.Api.Tests.YearPlans;

/// <summary>A year plan is the body of a plan, and so are the lines of the best one: asked, stored, and asked for its months.</summary>
public sealed class SavedPlanTests
{
    private const string Eggs = """
        "seasons":{"easter":[0,0,1,0,0,0,0,0,0,0,0,0],"christmas":[0,0,0,0,0,0,0,0,0,0,1,3]},"work":[4,4,4,4,4,4,3,2.5,4,4.5,4.5,3.5]
        """;

    private static readonly string[] s_ofALine = ["sku", "channel", "price", "units", "season"];

    [Fact]
    public async Task A_year_plan_is_stored_as_a_plan_as_it_was_asked()
    {
        await using var studio = await AStudio();
        const string Body = """
            {"profile":"main","hoursKeptBack":100,"lines":[{"sku":"egg","channel":"order","price":50,"units":300},
             {"sku":"stud","channel":"order","price":30,"units":900}]}
            """;
        var year = (await studio.Post("/v1/year-plans", Body)).Json;
        Assert.Equal(201, (await studio.Has("/v1/plans/2027", Body)).Status);
        var months = (await studio.Get("/v1/plans/2027/months")).Json;
        // 300 eggs of 1 h and 900 studs of 1 h in 1,900 h; 300 x 50 + 900 x 30 = 42,000, less the 24,000 of expenses.
        Assert.Equal((1200m, 1200m), (year.GetProperty("benchHours").GetDecimal(), Sum(months, "needHours")));
        Assert.Equal(1900m, year.GetProperty("limits")[0].GetProperty("available").GetDecimal());
        Assert.Equal(1900m, decimal.Round(Sum(months, "capacity"), 2)); // a twelfth each, rounded to four decimals
        Assert.Equal((42_000m, 42_000m),
            (year.GetProperty("proceeds").GetDecimal(), months.GetProperty("year").GetProperty("receipts").GetDecimal()));
        Assert.Equal(42_000m - 24_000, months.GetProperty("profit").GetDecimal());
    }

    [Fact]
    public async Task The_best_plan_of_seasons_is_stored_and_its_months_can_be_worked()
    {
        await using var studio = await AStudio();
        var best = (await studio.Post("/v1/year-plans/best?workings=true", $$"""
            {"profile":"main",{{Eggs}},"lines":[{"sku":"egg","channel":"order","price":50,"season":"easter"},
              {"sku":"stud","channel":"order","price":30,"season":"christmas"},{"sku":"bead","channel":"order","price":20,"maximum":400}]}
            """)).Json;
        // 12 of the 46 weeks are over by the end of March: 521.7391 of 2,000 h. A bead takes half an hour, an eighth of one through March: it brings
        // 20.00 for the 15.00 of half a stud and the 2.50 that an eighth of an egg brings more than a stud. So all 400 are made, 50 h through March,
        // then 471 eggs, and 1,329 studs in the 1,329 h that are left. (396 beads, 472 eggs and 1,330 studs leave 71,420.00 too; beads come first.)
        Assert.Equal(["471 \"easter\"", "1329 \"christmas\"", "400 "], best.GetProperty("lines").EnumerateArray().Select(line =>
            $"{line.GetProperty("units").GetRawText()} {(line.TryGetProperty("season", out var season) ? season.GetRawText() : "")}"));
        Assert.Equal("""{"goal":"maximum-surplus","proven":true}""", best.GetProperty("best").GetRawText());
        Assert.Equal(["#/lines/2/season"], best.GetProperty("assumed").EnumerateArray()
            .Select(one => one.GetProperty("pointer").GetString()).Where(at => at!.Contains("season", StringComparison.Ordinal)));
        await studio.Has("/v1/plans/2027", $$"""{"profile":"main",{{Eggs}},"lines":{{Saved(best)}} }""");
        var months = (await studio.Get("/v1/plans/2027/months")).Json;
        var limits = best.GetProperty("limits").EnumerateArray()
            .Where(limit => limit.GetProperty("kind").GetString() == "hours-through-month").ToList();
        Assert.Equal(Enumerable.Range(1, 11).Select(month => $"hours-through-month-{month}"),
            limits.Select(limit => limit.GetProperty("name").GetString()));
        var need = months.GetProperty("months").EnumerateArray().Select(month => month.GetProperty("needHours").GetDecimal()).ToList();
        foreach (var (i, limit) in limits.Index())
            Assert.True(decimal.Abs(need.Take(i + 1).Sum() - limit.GetProperty("used").GetDecimal()) < 0.001m, limit.GetRawText());
        Assert.True(limits[2].GetProperty("binds").GetBoolean());
        var codes = months.GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("code").GetString()).ToList();
        Assert.DoesNotContain("stock-needed-at-start", codes);
        Assert.DoesNotContain("over-capacity", codes);
        // One egg more, and some of its work should lie ready when the year begins.
        await studio.Has("/v1/plans/2027", $$"""{"profile":"main",{{Eggs}},"lines":{{Saved(best, oneMore: true)}} }""");
        Assert.Contains("stock-needed-at-start", (await studio.Get("/v1/plans/2027/months")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_season_that_is_none_or_not_there_is_named()
    {
        await using var studio = await AStudio();
        var answer = await studio.Post("/v1/year-plans/best", """
            {"profile":"main","seasons":{"a/b":[1,2,3]},"work":[0,0,0,0,0,0,0,0,0,0,0,0],
             "lines":[{"sku":"egg","channel":"order","price":50,"season":"x"}]}
            """);
        answer.IsProblem(422, "invalid-input");
        Assert.Equal(["#/lines/0/season", "#/seasons/a~1b", "#/work"], answer.Pointers);
        Assert.Equal(["unknown-season", "not-a-season", "not-a-season"], answer.Codes);
    }

    private static string Saved(JsonElement best, bool oneMore = false) => new JsonArray([.. best.GetProperty("lines").EnumerateArray().Select(line =>
    {
        var saved = new JsonObject();
        foreach (var name in s_ofALine)
            if (line.TryGetProperty(name, out var value))
                saved[name] = JsonNode.Parse(value.GetRawText());
        if (oneMore && saved["sku"]!.GetValue<string>() == "egg")
            saved["units"] = saved["units"]!.GetValue<decimal>() + 1;
        return saved;
    })]).ToJsonString();

    private static decimal Sum(JsonElement months, string figure) =>
        months.GetProperty("months").EnumerateArray().Sum(month => month.GetProperty(figure).GetDecimal());

    /// <summary>60,000 to carry in 2,000 hours; eggs and studs of 1 h, beads of half an hour, sold where nothing is taken.</summary>
    private static async Task<Studio> AStudio()
    {
        var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        await studio.Has("/v1/designs/egg", """{"profile":"main","making":{"minutesPerPiece":60}}""");
        await studio.Has("/v1/designs/stud", """{"profile":"main","making":{"minutesPerPiece":60}}""");
        await studio.Has("/v1/designs/bead", """{"profile":"main","making":{"minutesPerPiece":30}}""");
        await studio.Has("/v1/channels/order", """{"sells":"wholesale","currency":"USD"}""");
        return studio;
    }
}
