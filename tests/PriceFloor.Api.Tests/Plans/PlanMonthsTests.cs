using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace PriceFloor.Api.Tests.Plans;

/// <summary>The worked example of the model, over HTTP.</summary>
public sealed class PlanMonthsTests
{
    private static readonly string[] s_ofTheYear = ["profit", "tax", "owedAtEnd", "openingNeeded", "buildFrom"];

    [Fact]
    public async Task A_year_that_nearly_closes_is_out_of_cash_in_September()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/plans/2026", WorkedPlan.Steady.ToJsonString());
        var answer = await studio.Get("/v1/plans/2026/months");
        Assert.True(answer.Status == 200, answer.Text);
        var months = answer.Json.GetProperty("months").EnumerateArray().ToList();
        Assert.Equal(["-981.33", "-5067.01", "-6572.80", "-9264.20", "-8208.24", "-10244.91", "-10568.09", "-10871.45", "-12838.95", "-11893.21",
            "-5213.45", "192.39"], Raw(months, "cash"));
        Assert.Equal(["-1546.07", "-6069.39", "-8050.58", "-9405.03", "-8748.16", "-10385.74", "-10896.71", "-11247.01", "-13120.62", "-12034.05",
            "-6116.25", "-2075.31"], Raw(months, "free"));
        Assert.Equal(["2026-01-01", "2026-12-01"], new[] { months[0], months[11] }.Select(month => month.GetProperty("from").GetString()));
        Assert.Equal(("317.53", "0.00"), (months[3].GetProperty("taxPaidAhead").GetRawText(), months[3].GetProperty("taxSetAside").GetRawText()));
        // 2,000 reserve + 3,000 + 12,838.954...: what must be there is rounded up.
        Assert.Equal(["42644.68", "8601.33", "764.93", "17838.96", "9"],
            s_ofTheYear.Select(name => answer.Json.GetProperty(name).GetRawText()));
        Assert.Equal("""{"month":9,"amount":-12838.95}""", answer.Json.GetProperty("lowestCash").GetRawText());
        Assert.Equal("""{"month":9,"amount":-13120.62}""", answer.Json.GetProperty("lowestFree").GetRawText());
        Assert.Equal("117.36", months[11].GetProperty("depositsHeld").GetRawText());
    }

    [Fact]
    public async Task The_months_of_a_flow_add_up_and_the_bridge_has_no_gap()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/plans/2026", WorkedPlan.Steady.ToJsonString());
        var answer = (await studio.Get("/v1/plans/2026/months")).Json;
        foreach (var flow in answer.GetProperty("year").EnumerateObject())
            Assert.Equal((flow.Name, flow.Value.GetDecimal()),
                (flow.Name, answer.GetProperty("months").EnumerateArray().Sum(month => month.GetProperty(flow.Name).GetDecimal())));
        var bridge = answer.GetProperty("reconciled");
        Assert.Equal(("-2807.61", "0.00"), (bridge.GetProperty("change").GetRawText(), bridge.GetProperty("difference").GetRawText()));
        Assert.Equal(-2807.61m, bridge.GetProperty("parts").EnumerateArray().Sum(part => part.GetProperty("amount").GetDecimal()));
        Assert.Equal("""{"name":"profit","amount":42644.68}""", bridge.GetProperty("parts")[0].GetRawText());
    }

    [Fact]
    public async Task A_first_year_has_what_it_opens_with()
    {
        await using var studio = await WorkedStudio.Create();
        var plan = WorkedPlan.Steady;
        plan["steady"] = false;
        plan["opening"]!["owedToUs"] = JsonNode.Parse("""[{"month":1,"amount":764.93}]""");
        plan["opening"]!["stock"] = JsonNode.Parse("""[{"sku":"OR-002","pieces":40}]""");
        var answer = (await studio.Post("/v1/plan-months", $$"""{"plan":{{plan.ToJsonString()}} }""")).Json;
        Assert.Equal("""{"month":9,"amount":-12689.91}""", answer.GetProperty("lowestCash").GetRawText());
        Assert.Equal("""{"month":9,"amount":-12971.58}""", answer.GetProperty("lowestFree").GetRawText());
        Assert.Equal("-2775.93", answer.GetProperty("reconciled").GetProperty("change").GetRawText());
        Assert.Equal("10493.24", answer.GetProperty("months")[11].GetProperty("receipts").GetRawText());
        Assert.Equal("inline", answer.GetProperty("basis").GetProperty("plan").GetString());
    }

    [Fact]
    public async Task It_warns_of_what_makes_the_year_hard_and_lists_what_it_assumes()
    {
        await using var studio = await WorkedStudio.Create();
        var plan = WorkedPlan.Steady;
        plan.Remove("paidIn");
        plan.Remove("terms");
        await studio.Has("/v1/plans/2031", plan.ToJsonString());
        var answer = (await studio.Get("/v1/plans/2031/months")).Json;
        var codes = answer.GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("code").GetString()!).ToHashSet();
        Assert.Superset(new HashSet<string>
        {
            "cash-below-zero", "below-reserve", "season-unlike-work", "tax-not-covered", "terms-unknown", "bills-month-assumed",
            "plan-of-another-year",
        }, codes);
        Assert.DoesNotContain("over-capacity", codes);
        var assumed = answer.GetProperty("assumed").EnumerateArray().Select(one => one.GetRawText()).ToList();
        // Insurance is the profile's third expense and is paid once a year; torch and kiln servicing, the seventh, by quarters.
        Assert.Contains("""{"pointer":"#/profile/expenses/2","value":1}""", assumed);
        Assert.Contains("""{"pointer":"#/profile/expenses/6","value":"3, 6, 9, 12"}""", assumed);
    }

    [Fact]
    public async Task The_lines_of_each_month_are_shown_when_asked_for()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/plans/gifts", Sample.Plan);
        Assert.False((await studio.Get("/v1/plans/gifts/months")).Json.GetProperty("months")[0].TryGetProperty("lines", out _));
        var months = (await studio.Get("/v1/plans/gifts/months?lines=true")).Json.GetProperty("months").EnumerateArray().ToList();
        Assert.Equal(["[24]", "[30]", "[36]"], months.Take(3).Select(month => month.GetProperty("lines").GetRawText())); // 4, 5 and 6 % of 600
        Assert.Equal(600m, months.Sum(month => month.GetProperty("lines")[0].GetDecimal()));
    }

    [Fact]
    public async Task It_is_drawn_and_printed()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/plans/2026", WorkedPlan.Steady.ToJsonString());
        var drawn = await studio.Get("/v1/plans/2026/months.svg");
        Assert.Equal((200, "image/svg+xml"), (drawn.Status, drawn.ContentType));
        Assert.Contains("least free: -13,120.62 in September 2026", drawn.Text, StringComparison.Ordinal);
        var printed = await studio.Get("/v1/plans/2026/months", null, ("Accept", "text/html"));
        Assert.Equal((200, "text/html"), (printed.Status, printed.ContentType));
        Assert.Equal(printed.Text, (await studio.Get("/v1/plans/2026/months.html")).Text);
        Assert.Contains("Make ahead from September 2026 on", printed.Text, StringComparison.Ordinal);
        Assert.Contains("-12,838.95", printed.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plan_never_moves_a_floor()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var paths = new[] { "/v1/designs/RB-014/floor-price?workings=true", "/v1/price-list", "/v1/profiles/main/requirement" };
        var before = new List<string>();
        foreach (var path in paths)
            before.Add((await studio.Get(path)).Text);
        var next = (await studio.Get("/v1/floor-changes")).Json.GetProperty("next").GetString();
        await studio.Has("/v1/plans/main", Sample.Plan);
        await studio.Get("/v1/plans/main/months");
        foreach (var (path, text) in paths.Zip(before))
            Assert.Equal(text, (await studio.Get(path)).Text);
        var changes = (await studio.Get($"/v1/floor-changes?since={next}")).Json;
        Assert.Equal(("[]", next), (changes.GetProperty("items").GetRawText(), changes.GetProperty("next").GetString()));
        Assert.Equal(next, (await studio.Get("/v1/floor-changes")).Json.GetProperty("next").GetString());
    }

    private static IEnumerable<string> Raw(IEnumerable<JsonElement> months, string name) =>
        months.Select(month => month.GetProperty(name).GetRawText());
}
