using System.Text.Json;
using PriceFloor.Api.Tests.Scenarios;
using PriceFloor.Api.Tests.WhatIfs;
using Xunit;

namespace PriceFloor.Api.Tests.Sureness;

/// <summary>The worked example: eight guesses about the studio, 4,096 draws. Figures computed by another program, with fractions.</summary>
public sealed class SurenessTests(WhatIfTests.Worked worked) : IClassFixture<WhatIfTests.Worked>
{
    internal const string Ranges = """
        [{"of":"design:RB-014","at":"/making/steps/torch/handsOnMinutes","to":{"low":30,"likely":34,"high":42}},
         {"of":"profile:main","at":"/calendar/benchShare","to":{"low":0.52,"high":0.64}},
         {"of":"profile:main","at":"/calendar/weeksPerYear","to":{"low":42,"high":47}},
         {"of":"design:RB-014","at":"/making/steps/torch/goodShare","to":{"low":0.90,"high":0.97}},
         {"of":"profile:main","at":"/materials/*/price","by":{"low":0.95,"high":1.12}},
         {"of":"profile:main","at":"/household/Food/amount","to":{"low":104,"high":128}},
         {"of":"profile:main","at":"/expenses/Bench rent/amount","to":{"low":540,"high":594}}]
        """;

    [Fact]
    public async Task Guesses_go_wrong_upwards()
    {
        var answer = await Ask($$"""{"profile":"main","sku":"RB-014","ranges":{{Ranges}}}""");
        Assert.Equal("""{"tenth":52.64,"middle":60.15,"nineTenths":70.40}""", answer.GetProperty("floor").GetRawText()); // likely 56.41
        Assert.Equal("these-ranges", answer.GetProperty("of").GetString());
        Assert.Equal(0, answer.GetProperty("notPossible").GetInt32());
        Assert.False(answer.TryGetProperty("floorPriceSure", out _));
        Assert.False(answer.TryGetProperty("holds", out _));
    }

    [Theory]
    [InlineData("0.5", "65.00")]
    [InlineData("0.8", "72.00")]
    [InlineData("0.9", "76.00")]
    [InlineData("0.95", "79.00")]
    public async Task The_surer_the_dearer(string sure, string price)
    {
        var answer = await Ask($$"""{"profile":"main","sku":"RB-014","channel":"web","sure":{{sure}},"ranges":{{Ranges}}}""");
        Assert.Equal(price, answer.GetProperty("floorPriceSure").GetRawText()); // the exact floor price is 61
    }

    [Fact]
    public async Task The_listed_price_holds_in_15_draws_of_100()
    {
        var answer = await Ask($$"""{"profile":"main","sku":"RB-014","channel":"web","price":58,"ranges":{{Ranges}}}""");
        Assert.Equal("0.15", answer.GetProperty("holds").GetRawText());
        Assert.InRange(answer.GetProperty("standardError").GetProperty("holds").GetDecimal(), 0.001m, 0.01m);
    }

    /// <summary>The swings are exact and need no draws: at 42 minutes and all else likely the floor is 8.91 higher.</summary>
    [Fact]
    public async Task The_time_at_the_torch_matters_most()
    {
        var answer = await Ask($$"""{"profile":"main","sku":"RB-014","ranges":{{Ranges}}}""");
        Assert.Equal(
            [
                "design:RB-014#/making/steps/torch/handsOnMinutes 30 34 42 [-4.45,8.91] 0.58",
                "profile:main#/calendar/benchShare 0.52 0.6 0.64 [6.47,-2.70] 0.3",
                "profile:main#/calendar/weeksPerYear 42 46 47 [4.28,-0.96] 0.09",
                "design:RB-014#/making/steps/torch/goodShare 0.9 0.95 0.97 [2.19,-0.81] 0.04",
            ],
            Numbers(answer).Take(4));
        Assert.Equal(
            [
                "profile:main#/expenses/Bench rent/amount 540 540 594 [0.00,0.51] 0",
                "profile:main#/household/Food/amount 104 112 128 [-0.43,0.87] 0", // 0.0047 of these draws; between 0.004 and 0.012 of others
                "profile:main#/materials/*/price 0.95 1 1.12 [-0.28,0.67] 0",
            ],
            Numbers(answer).Skip(4).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Timing_the_torch_for_a_week_is_worth_five_on_the_price()
    {
        var answer = await Ask($$"""{"profile":"main","sku":"RB-014","pinned":true,"ranges":{{Ranges}}}""");
        Assert.Equal(["65.36", "67.60", "68.92", ""], answer.GetProperty("numbers").EnumerateArray().Take(4)
            .Select(one => one.TryGetProperty("pinned", out var pinned) ? pinned.GetRawText() : "")); // 70.40 less about 5
    }

    [Fact]
    public async Task Without_a_design_it_is_about_the_year()
    {
        var answer = await Ask($$"""{"profile":"main","ranges":{{Ranges}}}""");
        Assert.False(answer.TryGetProperty("floor", out _));
        var weeks = answer.GetProperty("numbers").EnumerateArray()
            .Single(one => one.GetProperty("name").GetString() == "profile:main#/calendar/weeksPerYear");
        // 63,323.2920 over 1,023 hours at 42 weeks (198 days x 7.5 x 0.6 + 150 = 1,041), and over 1,153.5 at 47 (223 days), less over 1,131
        Assert.Equal("[4.84,-1.09]", weeks.GetProperty("perBenchHour").GetProperty("swing").GetRawText());
    }

    [Fact]
    public async Task Another_guess_does_not_move_the_draws_of_the_others()
    {
        var alone = await Ask(
            """{"profile":"main","sku":"RB-014","ranges":[{"of":"main","at":"/calendar/weeksPerYear","to":{"low":42,"high":47}}]}""");
        var idle = await Ask("""
            {"profile":"main","sku":"RB-014","ranges":[{"of":"design:BV-004","at":"/making/steps/0/handsOnMinutes","by":{"low":0.5,"high":2}},
             {"of":"main","at":"/calendar/weeksPerYear","to":{"low":42,"high":47}}]}
            """);
        Assert.Equal(alone.GetProperty("floor").GetRawText(), idle.GetProperty("floor").GetRawText());
        Assert.Equal("[0.00,0.00]", idle.GetProperty("numbers")[1].GetProperty("floor").GetProperty("swing").GetRawText());
        Assert.Equal("0", idle.GetProperty("numbers")[1].GetProperty("floor").GetProperty("share").GetRawText());
    }

    [Fact]
    public async Task What_nothing_varies_has_no_share()
    {
        var answer = await Ask("""
            {"profile":"main","sku":"RB-014","ranges":[{"of":"design:BV-004","at":"/making/steps/0/handsOnMinutes","by":{"low":0.5,"high":2}}]}
            """);
        Assert.Equal("""{"tenth":56.41,"middle":56.41,"nineTenths":56.41}""", answer.GetProperty("floor").GetRawText());
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("numbers")[0].GetProperty("floor").GetProperty("share").ValueKind);
    }

    [Fact]
    public async Task Ranges_of_one_name_move_together_and_are_one_number()
    {
        var answer = await Ask("""
            {"profile":"main","sku":"RB-014","ranges":[{"of":"main","at":"/materials/clear-rod/price","by":{"low":0.9,"high":1.2},"together":"glass"},
             {"of":"main","at":"/materials/colour-rod/price","by":{"low":0.9,"high":1.2},"together":"glass"}]}
            """);
        Assert.Equal("glass 0.9 1 1.2", string.Join(' ', Numbers(answer).Single().Split(' ').Take(4)));
    }

    [Fact]
    public async Task Ends_that_are_never_passed_are_never_passed()
    {
        const string Weeks = """{"of":"main","at":"/calendar/weeksPerYear","to":{"low":42,"high":47},"ends":"never"}""";
        var answer = await Ask($$"""{"profile":"main","draws":1024,"ranges":[{{Weeks}}]}""");
        // a triangle 42, 46, 47: nine draws in ten are above 42 + root of 0.1 x 5 x 4 = 43.414 weeks: 63,323.2920 / (43.414 x 22.5 + 96) = 59.02..
        Assert.InRange(answer.GetProperty("perBenchHour").GetProperty("nineTenths").GetDecimal(), 58.90m, 59.15m);
    }

    [Fact]
    public async Task A_price_on_a_channel_whose_fee_is_guessed_is_found_in_every_draw()
    {
        var answer = await Ask("""
            {"profile":"main","sku":"RB-014","channel":"web","price":61,"ranges":[{"of":"web","at":"/fees/card/rate","to":{"low":0.02,"high":0.06}}]}
            """);
        // the price rises with the fee, so in nine draws of ten it is at most what it is at the high fee
        var high = (await worked.Studio.Post("/v1/what-ifs", """
            {"profile":"main","list":"all","scenarios":[{"changes":[{"of":"web","at":"/fees/card/rate","to":0.06}]}]}
            """)).Json.GetProperty("list").EnumerateArray()
            .Single(line => line.GetProperty("sku").GetString() == "RB-014" && line.GetProperty("channel").GetString() == "web");
        Assert.Equal(high.GetProperty("scenarios")[0].GetProperty("floorPrice").GetRawText(), answer.GetProperty("floorPriceSure").GetRawText());
        Assert.InRange(answer.GetProperty("holds").GetDecimal(), 0.3m, 0.7m);
    }

    private Task<JsonElement> Ask(string request) => worked.Studio.Ask("/v1/sureness", request);

    private static IEnumerable<string> Numbers(JsonElement answer) => answer.GetProperty("numbers").EnumerateArray().Select(one => string.Join(' ',
        one.GetProperty("name").GetString(), one.GetProperty("low").GetRawText(), one.GetProperty("likely").GetRawText(),
        one.GetProperty("high").GetRawText(), one.GetProperty("floor").GetProperty("swing").GetRawText(),
        one.GetProperty("floor").GetProperty("share").GetRawText()));
}
