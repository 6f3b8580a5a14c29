using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.Sureness;

/// <summary>Before a quote is taken: what it gains, how often it loses, and what a trial may cost at most.</summary>
public sealed class SureQuoteTests
{
    private const string Hours = """
        {"profile":"main","channel":"web","validUntil":"2027-06-30","price":700,"lines":[],"extra":[{"name":"Repair","hours":10}]}
        """;

    private const string Goblets = """
        {"profile":"main","channel":"web","validUntil":"2027-06-30","price":3240,
         "lines":[{"name":"Goblet","quantity":30,"design":{"making":{"steps":[{"name":"torch","handsOnMinutes":120,"goodShare":0.87}]},
           "materials":[{"name":"Glass and gas","amount":9.50}]}}]}
        """;

    [Fact]
    public async Task Hours_that_are_guessed_cost_an_hour_each_and_what_knowing_them_is_worth_is_all_there_is_to_know()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/quotes/Q-1", Hours);
        var net = (await studio.Get("/v1/quotes/Q-1/figures")).Json.GetProperty("netProceeds").GetDecimal();
        var answer = await Ask(studio, """
            {"profile":"main","quote":"Q-1","ranges":[{"of":"quote:Q-1","at":"/extra/Repair/hours","to":{"low":8,"high":14}}]}
            """);
        var worth = answer.GetProperty("worthKnowing");
        // on average 10 + 0.3125 x (4 - 2) = 10.625 hours at 55.98876395746374
        Assert.InRange(worth.GetProperty("gain").GetDecimal() - (net - 10.625m * 55.98876395746374m), -0.02m, 0.02m);
        var one = Assert.Single(worth.GetProperty("numbers").EnumerateObject());
        Assert.Equal("quote:Q-1#/extra/Repair/hours", one.Name);
        Assert.InRange(one.Value.GetDecimal(), 0.97m * worth.GetProperty("all").GetDecimal(), worth.GetProperty("all").GetDecimal());
        Assert.Equal("Q-1@1", answer.GetProperty("basis").GetProperty("quote").GetString());
        Assert.Equal("""["quote:Q-1@1"]""", answer.GetProperty("basis").GetProperty("changed").GetRawText());
    }

    [Fact]
    public async Task A_design_of_the_quotes_own_can_be_guessed_at_and_its_minutes_matter_most()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/quotes/Q-2", Goblets);
        var answer = await Ask(studio, """
            {"profile":"main","quote":"Q-2","ranges":[
              {"of":"Q-2","at":"/lines/0/design/making/steps/torch/handsOnMinutes","to":{"low":95,"high":170}},
              {"of":"Q-2","at":"/lines/0/design/making/steps/torch/goodShare","to":{"low":0.75,"high":0.93}}]}
            """);
        var worth = answer.GetProperty("worthKnowing");
        var minutes = worth.GetProperty("numbers").GetProperty("quote:Q-2#/lines/0/design/making/steps/torch/handsOnMinutes").GetDecimal();
        Assert.InRange(minutes, 0, worth.GetProperty("all").GetDecimal());
        Assert.True(minutes >= worth.GetProperty("numbers").GetProperty("quote:Q-2#/lines/0/design/making/steps/torch/goodShare").GetDecimal());
    }

    [Fact]
    public async Task A_quote_that_asks_no_price_is_no_decision_and_a_stored_design_is_changed_where_it_is_stored()
    {
        await using var studio = await WorkedStudio.Create();
        await studio.Has("/v1/quotes/Q-3", """{"profile":"main","channel":"web","lines":[{"quantity":2,"design":"RB-014"}]}""");
        const string Weeks = """{"of":"main","at":"/calendar/weeksPerYear","to":{"low":42,"high":47}}""";
        var without = await studio.Post("/v1/sureness", $$"""{"profile":"main","quote":"Q-3","draws":1024,"ranges":[{{Weeks}}]}""");
        without.IsProblem(422, "cannot-compute");
        Assert.Equal("no-price", without.Json.GetProperty("reason").GetString());
        var inside = await studio.Post("/v1/sureness",
            """{"profile":"main","quote":"Q-3","ranges":[{"of":"Q-3","at":"/lines/0/design/soldShare","to":{"low":0.8,"high":0.9}}]}""");
        Assert.Equal("leads-nowhere", inside.Json.GetProperty("errors")[0].GetProperty("code").GetString());
    }

    private static async Task<JsonElement> Ask(Studio studio, string request)
    {
        var answer = await studio.Post("/v1/sureness", request);
        Assert.True(answer.Status == 200, answer.Text);
        return answer.Json;
    }
}
