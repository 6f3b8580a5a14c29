using System.Text.Json;
using System.Text.Json.Nodes;
using PriceFloor.Api.Tests.Plans;
using Xunit;

namespace PriceFloor.Api.Tests.WhatIfs;

/// <summary>A what-if of a planned year: whether it closes now and in each scenario, and where its cash is lowest.</summary>
public sealed class PlanWhatIfTests(PlannedStudio planned) : IClassFixture<PlannedStudio>
{
    private const string Rent = """{"of":"main","at":"/expenses/Bench rent/amount","by":1.10}""";

    private static readonly string[] s_ofTheMonths = ["contribution", "surplusBeforeTax", "surplusAfterTax", "shortfall"];

    private static readonly (string Change, Action<JsonObject> Stored)[] s_changes =
    [
        ("""{"of":"plan:2026","at":"/lines/*/units","by":1.5}""",
            plan => Lines(plan, line => line["units"] = line["units"]!.GetValue<decimal>() * 1.5m)),
        ("""{"of":"2026","at":"/lines/0/price","plus":5}""", plan => plan["lines"]![0]!["price"] = 215),
        ("""{"of":"2026","at":"/lines/0/price","remove":true}""", plan => plan["lines"]![0]!.AsObject().Remove("price")),
        ("""{"of":"plan:*","at":"/reserve","to":500}""", plan => plan["reserve"] = 500),
        ("""{"of":"2026","at":"/seasons/web/11","to":40}""", plan => plan["seasons"]!["web"]![11] = 40),
        ("""{"of":"2026","at":"/seasons/web","to":[1,1,1,1,1,1,1,1,1,1,1,1]}""",
            plan => plan["seasons"]!["web"] = JsonNode.Parse("[1,1,1,1,1,1,1,1,1,1,1,1]")),
        ("""{"of":"2026","at":"/terms/gallery/paidAfterMonths","plus":2}""", plan => plan["terms"]![1]!["paidAfterMonths"] = 3),
        ("""{"of":"2026","at":"/lines/-","to":{"sku":"FG-003","channel":"web","price":58,"units":30}}""", plan => plan["lines"]!.AsArray()
            .Add(JsonNode.Parse("""{"sku":"FG-003","channel":"web","price":58,"units":30}"""))),
        ("""{"of":"2026","at":"/work","remove":true}""", plan => plan.Remove("work")),
        ("""{"of":"2026","merge":{"opening":{"cash":9000}}}""", plan => plan["opening"]!["cash"] = 9000),
    ];

    [Fact]
    public async Task The_plan_falls_2954_91_short_and_a_tenth_more_sold_closes_it()
    {
        var answer = await Ask("""
            {"profile":"main","plan":"2026","list":"none","scenarios":[{"changes":[{"of":"plan:2026","at":"/lines/*/units","by":1.1}]}]}
            """);
        Assert.Equal("""
            {"closes":false,"contribution":60368.39,"surplusBeforeTax":0.00,"surplusAfterTax":0.00,"shortfall":2954.91,
            "lowestCash":{"month":9,"amount":-12838.95}}
            """.ReplaceLineEndings(""), answer.GetProperty("now").GetProperty("plan").GetRawText());
        var plan = answer.GetProperty("scenarios")[0].GetProperty("plan");
        Assert.True(plan.GetProperty("closes").GetBoolean());
        Assert.Equal(66405.23m, plan.GetProperty("contribution").GetDecimal()); // 60,368.39 x 1.1 = 66,405.229
        var differences = answer.GetProperty("scenarios")[0].GetProperty("differences").GetProperty("plan");
        Assert.Equal((6036.84m, -2954.91m), (differences.GetProperty("contribution").GetDecimal(),
            differences.GetProperty("shortfall").GetDecimal()));
        Assert.False(differences.TryGetProperty("closes", out _));
        Assert.Equal("2026@1", answer.GetProperty("basis").GetProperty("plan").GetString());
        Assert.Equal("""["plan:2026@1"]""", answer.GetProperty("basis").GetProperty("changed").GetRawText());
    }

    [Fact]
    public async Task A_scenario_of_a_plan_is_what_storing_the_changed_plan_gives()
    {
        foreach (var (change, store) in s_changes)
        {
            var shown = (await Ask($$"""{"profile":"main","plan":"2026","list":"none","scenarios":[{"changes":[{{change}}]}]}"""))
                .GetProperty("scenarios")[0].GetProperty("plan");
            var changed = WorkedPlan.Steady;
            store(changed);
            var months = await planned.Studio.Post("/v1/plan-months", $$"""{"plan":{{Whole(changed)}}}""");
            Assert.True(months.Status == 200, change + months.Text);
            Assert.True(months.Json.GetProperty("lowestCash").GetRawText() == shown.GetProperty("lowestCash").GetRawText(), change);
        }
    }

    [Fact]
    public async Task No_changes_give_the_year_plan_to_the_letter()
    {
        var answer = await Ask("""{"profile":"main","plan":"2026","remedies":"plan","list":"none","scenarios":[{"changes":[]}]}""");
        var now = answer.GetProperty("now").GetRawText();
        Assert.StartsWith("{\"name\":null," + now[1..^1] + ",\"differences\":{", answer.GetProperty("scenarios")[0].GetRawText(),
            StringComparison.Ordinal);
        var lines = WorkedPlan.Steady["lines"]!.AsArray().Select(line => $$"""
            {"sku":"{{line!["sku"]}}","channel":"{{line["channel"]}}","price":{{line["price"]}},"units":{{line["units"]}}}
            """);
        var year = (await planned.Studio.Post("/v1/year-plans", $$"""{"profile":"main","lines":[{{string.Join(',', lines)}}]}""")).Json;
        foreach (var figure in s_ofTheMonths.Append("closes"))
            Assert.Equal(year.GetProperty(figure).GetRawText(), answer.GetProperty("now").GetProperty("plan").GetProperty(figure).GetRawText());
    }

    [Fact]
    public async Task Together_a_plan_need_not_do_what_the_changes_do_alone()
    {
        // 10 % more pieces at 10 % higher prices bring more than both alone: the rise counts for the further pieces too
        const string Units = """{"changes":[{"of":"2026","at":"/lines/*/units","by":1.1}]}""";
        const string Prices = """{"changes":[{"of":"2026","at":"/lines/*/price","by":1.1}]}""";
        var answer = await Ask($$"""{"profile":"main","plan":"2026","list":"none","combined":true,"scenarios":[{{Units}},{{Prices}}]}""");
        Assert.Contains(answer.GetProperty("warnings").EnumerateArray(), one => one.GetProperty("code").GetString() == "not-additive");
        decimal More(JsonElement one) => one.GetProperty("differences").GetProperty("plan").GetProperty("contribution").GetDecimal();
        var scenarios = answer.GetProperty("scenarios");
        Assert.True(More(answer.GetProperty("combined")) > More(scenarios[0]) + More(scenarios[1]));
    }

    [Theory]
    [InlineData("""{"of":"plan:2027","at":"/reserve","to":1}""", "unknown-reference", "/of")]
    [InlineData("""{"of":"2026","at":"/profile","to":"other"}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"2026","at":"/key","to":"other"}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"2026","at":"/lines/99/units","by":2}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"2026","at":"/seasons/spring/0","by":2}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"2026","at":"/seasons/spring","by":2}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"2026","at":"/seasons/spring","remove":true}""", "leads-nowhere", "/at")]
    [InlineData("""{"of":"2026","at":"/seasons/web","remove":true}""", "unknown-season", "")]
    [InlineData("""{"of":"2026","at":"/seasons/spring","to":[1,2,3]}""", "not-a-season", "")]
    [InlineData("""{"of":"2026","at":"/lines/0/season","to":"spring"}""", "unknown-season", "")]
    [InlineData("""{"of":"2026","at":"/lines/0/sku","to":"XX-1"}""", "unknown-design", "")]
    [InlineData("""{"of":"2026","at":"/lines/0/channel","to":"nowhere"}""", "unknown-channel", "")]
    [InlineData("""{"of":"2026","at":"/paidIn/0/at","to":"/expenses/Nothing"}""", "leads-nowhere", "")]
    [InlineData("""{"of":"2026","at":"/lines/*","remove":true}""", "required", "")]
    [InlineData("""{"of":"2026","at":"/lines/0/units","by":100000}""", "out-of-range", "")]
    public async Task A_change_of_a_plan_that_cannot_be_made_says_why(string change, string code, string at)
    {
        var answer = await planned.Studio.Post("/v1/what-ifs",
            $$"""{"profile":"main","plan":"2026","scenarios":[{"changes":[]},{"changes":[{{change}}]}]}""");
        answer.IsProblem(422, "invalid-input");
        var error = answer.Json.GetProperty("errors")[0];
        Assert.Equal((code, "#/scenarios/1/changes/0" + at), (error.GetProperty("code").GetString(), error.GetProperty("pointer").GetString()));
    }

    [Fact]
    public async Task A_season_of_a_new_name_can_be_added_and_used()
    {
        var answer = await Ask("""
            {"profile":"main","plan":"2026","list":"none","scenarios":[{"changes":[
              {"of":"2026","at":"/seasons/late","to":[0,0,0,0,0,0,0,0,0,0,0,1]},{"of":"2026","at":"/lines/*/season","to":"late"}]}]}
            """);
        // everything is sold in December and the bills go on: cash is lowest when November ends, or later
        Assert.True(answer.GetProperty("scenarios")[0].GetProperty("plan").GetProperty("lowestCash").GetProperty("amount").GetDecimal() < -12838.95m);
    }

    [Fact]
    public async Task Without_a_plan_nothing_of_a_plan_can_be_asked_or_changed()
    {
        foreach (var field in new[] { "\"from\":\"2026-04-01\"", "\"notice\":{\"web\":2}", "\"remedies\":\"plan\"",
            "\"phases\":[{\"on\":\"2026-04-01\",\"share\":1}]" })
        {
            var answer = await planned.Studio.Post("/v1/what-ifs", $$"""{"profile":"main",{{field}},"scenarios":[{"changes":[]}]}""");
            answer.IsProblem(422, "invalid-input");
            Assert.Equal("#/plan", answer.Json.GetProperty("errors")[0].GetProperty("pointer").GetString());
        }

        var change = await planned.Studio.Post("/v1/what-ifs",
            """{"profile":"main","scenarios":[{"changes":[{"of":"plan:2026","at":"/reserve","to":1}]}]}""");
        Assert.Equal("unknown-reference", change.Json.GetProperty("errors")[0].GetProperty("code").GetString());
        (await planned.Studio.Post("/v1/what-ifs", """{"profile":"main","plan":"none","scenarios":[{"changes":[]}]}"""))
            .IsProblem(422, "unknown-reference");
    }

    [Fact]
    public async Task A_change_of_a_plan_moves_no_floor()
    {
        var answer = await Ask("""
            {"profile":"main","plan":"2026","scenarios":[{"changes":[{"of":"2026","at":"/lines/*/units","by":0.5}]},{"changes":[{{Rent}}]}]}
            """.Replace("{{Rent}}", Rent, StringComparison.Ordinal));
        Assert.All(answer.GetProperty("list").EnumerateArray(), line => Assert.Equal(line.GetProperty("now").GetProperty("floorPrice").GetRawText(),
            line.GetProperty("scenarios")[0].GetProperty("floorPrice").GetRawText()));
        // 540 x 0.10 x 12 = 648 more to recover: the plan falls short by that much more
        Assert.Equal(648.00m,
            answer.GetProperty("scenarios")[1].GetProperty("differences").GetProperty("plan").GetProperty("shortfall").GetDecimal());
    }

    private static void Lines(JsonObject plan, Action<JsonObject> change)
    {
        foreach (var line in plan["lines"]!.AsArray())
            change(line!.AsObject());
    }

    private static string Whole(JsonObject plan) => plan.ToJsonString();

    private Task<JsonElement> Ask(string request) => planned.Studio.Ask("/v1/what-ifs", request);
}
