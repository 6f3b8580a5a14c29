using System.Text.Json;
using System.Text.Json.Nodes;
using PriceFloor.Api.Tests.Plans;
using Xunit;

namespace PriceFloor.Api.Tests.Sureness;

/// <summary>The worked example with its plan: nine guesses, 4,096 draws. Figures computed by another program, with fractions.</summary>
public sealed class SurePlanTests(PlannedStudio planned) : IClassFixture<PlannedStudio>
{
    private const string OfTheYear = """
        {"of":"profile:main","at":"/calendar/benchShare","to":{"low":0.52,"high":0.64}},
        {"of":"profile:main","at":"/calendar/weeksPerYear","to":{"low":42,"high":47}},
        {"of":"profile:main","at":"/materials/*/price","by":{"low":0.95,"high":1.12}},
        {"of":"profile:main","at":"/household/Food/amount","to":{"low":104,"high":128}},
        {"of":"profile:main","at":"/expenses/Bench rent/amount","to":{"low":540,"high":594}},
        {"of":"profile:main","at":"/soldShare","to":{"low":0.86,"high":0.98}},
        {"of":"plan:2027","at":"/lines/*/units","by":{"low":0.80,"high":1.10}}
        """;

    private const string OfThePendant = """
        {"of":"design:RB-014","at":"/making/steps/torch/handsOnMinutes","to":{"low":30,"likely":34,"high":42}},
        {"of":"design:RB-014","at":"/making/steps/torch/goodShare","to":{"low":0.90,"high":0.97}}
        """;

    [Fact]
    public async Task The_plan_closes_in_a_quarter_of_the_draws()
    {
        var answer = await Ask($$"""{"profile":"main","plan":"2027","sku":"RB-014","ranges":[{{OfThePendant}},{{OfTheYear}}]}""");
        Assert.Equal("""{"tenth":52.64,"middle":60.15,"nineTenths":70.40}""", answer.GetProperty("floor").GetRawText());
        var plan = answer.GetProperty("plan");
        Assert.Equal("0.25", plan.GetProperty("closes").GetRawText());
        Assert.Equal("""{"tenth":-15624.39,"middle":-3974.79,"nineTenths":2322.67}""", plan.GetProperty("surplusBeforeTax").GetRawText());
        Assert.Equal("0.009", answer.GetProperty("standardError").GetProperty("closes").GetRawText());
        Assert.Equal("1.00", plan.GetProperty("withinHours").GetRawText()); // 781.7 of 1,131 hours
        Assert.Equal("2027@1", answer.GetProperty("basis").GetProperty("plan").GetString());
    }

    [Fact]
    public async Task How_much_is_sold_decides_the_year_and_nothing_of_the_floor()
    {
        var answer = await Ask($$"""{"profile":"main","plan":"2027","sku":"RB-014","ranges":[{{OfThePendant}},{{OfTheYear}}]}""");
        var effects = answer.GetProperty("numbers").EnumerateArray().ToDictionary(one => one.GetProperty("name").GetString()!.Split('#')[1], one => (
            Floor: one.GetProperty("floor").GetProperty("share").GetDecimal(), Year: one.GetProperty("plan").GetProperty("share").GetDecimal(),
            Swing: one.GetProperty("plan").GetProperty("swing").EnumerateArray().Select(end => decimal.Round(end.GetDecimal())).ToList()));
        Assert.Equal("/making/steps/torch/handsOnMinutes", effects.Keys.First()); // most of the floor first
        Assert.Equal((0, 0.98m), (effects["/lines/*/units"].Floor, effects["/lines/*/units"].Year));
        Assert.Equal([-12074m, 6037m], effects["/lines/*/units"].Swing); // 60,368.39 x -0.2 and x 0.1
        Assert.Equal([387m, -929m], effects["/materials/*/price"].Swing);
        Assert.Equal([557m, -1114m], effects["/household/Food/amount"].Swing);
        Assert.Equal([0m, -648m], effects["/expenses/Bench rent/amount"].Swing); // 54 x 12
        Assert.Equal([-735m, 215m], effects["/soldShare"].Swing);
        Assert.Equal([-1m, 1m], effects["/making/steps/torch/goodShare"].Swing);
        Assert.All(["/calendar/benchShare", "/calendar/weeksPerYear", "/making/steps/torch/handsOnMinutes"], name =>
            Assert.Equal((0m, "0,0"), (effects[name].Year, string.Join(',', effects[name].Swing))));
    }

    [Theory]
    [InlineData("0.5", "0.054")]
    [InlineData("0.8", "0.207")]
    [InlineData("0.9", "0.274")]
    public async Task The_surer_the_year_is_to_close_the_more_its_prices_rise(string sure, string rise)
    {
        var answer = await Ask($$"""{"profile":"main","plan":"2027","draws":1024,"sure":{{sure}},"ranges":[{{OfTheYear}}]}""");
        Assert.Equal(rise, answer.GetProperty("plan").GetProperty("riseToClose").GetRawText()); // likely 0.041
    }

    [Fact]
    public async Task Without_a_design_what_decides_the_plan_comes_first()
    {
        var answer = await Ask($$"""{"profile":"main","plan":"2027","draws":1024,"ranges":[{{OfTheYear}}]}""");
        Assert.Equal("plan:2027#/lines/*/units", answer.GetProperty("numbers")[0].GetProperty("name").GetString());
        Assert.True(answer.GetProperty("numbers")[0].TryGetProperty("perBenchHour", out _));
    }

    /// <summary>The lowest cash of the likely values is that of the plan's months, and lies between the tenths.</summary>
    [Fact]
    public async Task The_lowest_cash_is_spread_around_the_one_of_the_months()
    {
        var plan = (await Ask($$"""{"profile":"main","plan":"2027","draws":1024,"ranges":[{{OfTheYear}}]}""")).GetProperty("plan");
        Assert.InRange(-12838.95m, plan.GetProperty("lowestCash").GetProperty("tenth").GetDecimal(),
            plan.GetProperty("lowestCash").GetProperty("nineTenths").GetDecimal());
        var still = (await Ask("""
            {"profile":"main","plan":"2027","draws":1024,"ranges":[{"of":"plan:2027","at":"/reserve","to":{"low":1000,"high":3000}}]}
            """)).GetProperty("plan");
        Assert.Equal("""{"tenth":-12838.95,"middle":-12838.95,"nineTenths":-12838.95}""", still.GetProperty("lowestCash").GetRawText());
        Assert.Equal("""{"tenth":-2954.91,"middle":-2954.91,"nineTenths":-2954.91}""", still.GetProperty("surplusBeforeTax").GetRawText());
        Assert.Equal("0.041", still.GetProperty("riseToClose").GetRawText());
    }

    /// <summary>The months of the same plan come to the same lowest cash; they are tested beside the plan.</summary>
    [Fact]
    public async Task Stock_that_is_named_by_an_alias_serves_the_draws_too()
    {
        await using var studio = await WorkedStudio.Create();
        var design = JsonNode.Parse((await studio.Get("/v1/designs/OR-002")).Text)!.AsObject();
        design["aliases"] = new JsonArray("disc");
        await studio.Has("/v1/designs/OR-002", design.ToJsonString());
        var plan = WorkedPlan.Steady;
        plan["steady"] = false;
        var without = await LowestCash();
        plan["opening"]!["stock"] = JsonNode.Parse("""[{"sku":"disc","pieces":40}]""");
        await studio.Has("/v1/plans/2027", plan.ToJsonString());

        var drawn = (await studio.Ask("/v1/sureness", """
            {"profile":"main","plan":"2027","draws":1024,"ranges":[{"of":"plan:2027","at":"/reserve","to":{"low":1000,"high":3000}}]}
            """)).GetProperty("plan");
        var amount = await LowestCash();
        Assert.NotEqual(without, amount);
        Assert.Equal($$"""{"tenth":{{amount}},"middle":{{amount}},"nineTenths":{{amount}}}""", drawn.GetProperty("lowestCash").GetRawText());

        async Task<string> LowestCash() => (await studio.Ask("/v1/plan-months", $$"""{"plan":{{plan.ToJsonString()}} }"""))
            .GetProperty("lowestCash").GetProperty("amount").GetRawText();
    }

    [Fact]
    public async Task Pinning_needs_no_plan_and_gives_the_same_with_one()
    {
        var answer = await Ask($$"""{"profile":"main","plan":"2027","sku":"RB-014","pinned":true,"ranges":[{{OfThePendant}},{{OfTheYear}}]}""");
        Assert.Equal(["65.36", "67.60", "68.92", ""], answer.GetProperty("numbers").EnumerateArray().Take(4)
            .Select(one => one.TryGetProperty("pinned", out var pinned) ? pinned.GetRawText() : ""));
    }

    [Fact]
    public async Task A_line_below_its_floor_in_most_draws_is_better_dropped_and_knowing_its_minutes_is_worth_something()
    {
        var answer = await Ask($$"""
            {"profile":"main","plan":"2027","line":6,"sku":"RB-014","channel":"web","price":58,"ranges":[{{OfThePendant}},{{OfTheYear}}]}
            """); // line 6 is RB-014 on web at 58.00
        var worth = answer.GetProperty("worthKnowing");
        Assert.Equal(1 - answer.GetProperty("holds").GetDecimal(), worth.GetProperty("loses").GetDecimal()); // it loses where the price does not hold
        Assert.True(worth.GetProperty("gain").GetDecimal() < 0);
        var numbers = worth.GetProperty("numbers").EnumerateObject().ToDictionary(one => one.Name, one => one.Value.GetDecimal());
        Assert.Equal(9, numbers.Count);
        Assert.All(numbers.Values, one => Assert.InRange(one, 0, worth.GetProperty("all").GetDecimal()));
        Assert.Equal("design:RB-014#/making/steps/torch/handsOnMinutes", numbers.MaxBy(one => one.Value).Key);
    }

    [Theory]
    [InlineData("\"line\":1", "required", "#/plan", 422)]
    [InlineData("\"plan\":\"2027\",\"line\":20", "out-of-range", "#/line", 422)]
    [InlineData("\"plan\":\"2027\",\"line\":0,\"quote\":\"Q-1\"", "unexpected", "#/line", 422)]
    public async Task A_decision_is_one_line_of_the_plan_or_one_quote(string asked, string code, string pointer, int status)
    {
        var answer = await planned.Studio.Post("/v1/sureness", $$"""{"profile":"main",{{asked}},"draws":1024,"ranges":[{{OfThePendant}}]}""");
        Assert.Equal(status, answer.Status);
        var error = answer.Json.GetProperty("errors")[0];
        Assert.Equal((code, pointer), (error.GetProperty("code").GetString(), error.GetProperty("pointer").GetString()));
    }

    [Theory]
    [InlineData("\"plan\":\"none\"", "unknown-plan", "#/plan")]
    [InlineData("\"quote\":\"none\"", "unknown-quote", "#/quote")]
    public async Task A_plan_or_quote_that_is_not_stored_is_an_unknown_reference(string asked, string code, string pointer)
    {
        var answer = await planned.Studio.Post("/v1/sureness", $$"""{"profile":"main",{{asked}},"draws":1024,"ranges":[{{OfThePendant}}]}""");
        answer.IsProblem(422, "unknown-reference");
        var error = answer.Json.GetProperty("errors")[0];
        Assert.Equal((code, pointer), (error.GetProperty("code").GetString(), error.GetProperty("pointer").GetString()));
    }

    private Task<JsonElement> Ask(string request) => planned.Studio.Ask("/v1/sureness", request);
}
