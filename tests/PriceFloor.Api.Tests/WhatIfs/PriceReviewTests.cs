using System.Text.Json;
using PriceFloor.Api.Tests.Plans;
using Xunit;

namespace PriceFloor.Api.Tests.WhatIfs;

/// <summary>Glass gets 12 % dearer: what it costs to hold prices, with which notice they rise, and in which steps. Figures of the model.</summary>
public sealed class PriceReviewTests(PlannedStudio planned) : IClassFixture<PlannedStudio>
{
    private const string Glass = """
        {"name":"glass +12 %","changes":[
         {"of":"main","at":"/materials/clear-rod/price","by":1.12},{"of":"main","at":"/materials/colour-rod/price","by":1.12},
         {"of":"main","at":"/materials/frit/price","by":1.12},{"of":"main","at":"/materials/soft-rod/price","by":1.12},
         {"of":"main","at":"/materials/clear-tube/price","by":1.12}]}
        """;

    private const string Halves = """[{"on":"2026-04-01","share":0.5},{"on":"2026-10-01","share":1}]""";

    [Fact]
    public async Task Holding_prices_costs_442_57_a_year_376_87_from_April_and_7_35_for_the_notice_of_the_shops()
    {
        var held = (await Ask($$"""
            {"profile":"main","plan":"2026","from":"2026-04-01","notice":{"wholesale":8},"list":"none","scenarios":[{{Glass}}]}
            """)).GetProperty("scenarios")[0].GetProperty("held");
        Assert.Equal(("442.57", "376.87"), (held.GetProperty("year").GetRawText(), held.GetProperty("fromOn").GetRawText()));
        // 1 April less 56 days is 4 February
        Assert.Equal("""[{"channel":"wholesale","weeks":8,"cost":7.35,"announceBy":"2026-02-04"}]""", held.GetProperty("byNotice").GetRawText());
        Assert.False(held.TryGetProperty("phased", out _));
    }

    [Fact]
    public async Task Costs_rise_on_the_first_day_of_the_year_if_nothing_else_is_said()
    {
        var held = (await Ask($$"""{"profile":"main","plan":"2026","notice":{},"list":"none","scenarios":[{{Glass}}]}"""))
            .GetProperty("scenarios")[0].GetProperty("held");
        Assert.Equal(held.GetProperty("year").GetRawText(), held.GetProperty("fromOn").GetRawText());
        Assert.Equal(0, held.GetProperty("byNotice").GetArrayLength());
    }

    [Fact]
    public async Task Dearer_rent_is_held_by_the_work_of_the_months_and_falls_on_a_channel_by_its_hours()
    {
        var held = (await Ask("""
            {"profile":"main","plan":"2026","from":"2026-07-01","notice":{"web":52,"wholesale":52,"gallery":52,"market":52,"fair":52},"list":"none",
             "scenarios":[{"changes":[{"of":"main","at":"/expenses/Bench rent/amount","by":1.10}]}]}
            """)).GetProperty("scenarios")[0].GetProperty("held");
        // 648 more a year; July to December have 3 + 2.5 + 4 + 4.5 + 4.5 + 3.5 = 22 of 46 weeks of work: 648 x 22/46 = 309.913...
        Assert.Equal(("648.00", "309.92"), (held.GetProperty("year").GetRawText(), held.GetProperty("fromOn").GetRawText()));
        Assert.InRange(held.GetProperty("byNotice").EnumerateArray().Sum(one => one.GetProperty("cost").GetDecimal()), 309.92m, 309.97m);
    }

    [Fact]
    public async Task Prices_rise_in_steps_of_the_channel_up_to_the_suggested_one_and_the_costs_of_the_phases_add_up()
    {
        var scenario = (await Ask($$"""
            {"profile":"main","plan":"2026","from":"2026-02-01","phases":{{Halves}},"list":"none","scenarios":[{{Glass}}]}
            """)).GetProperty("scenarios")[0];
        // 142.50 + half of 0.50 is 142.75, and shops are charged in steps of 0.50: up to 143.00
        Assert.Equal(["""[{"sku":"GB-001","channel":"wholesale","price":143.00}]""", """[{"sku":"GB-001","channel":"wholesale","price":143.00}]"""],
            scenario.GetProperty("phased").EnumerateArray().Select(phase => phase.GetProperty("prices").GetRawText()));
        Assert.Equal(["2026-04-01 0.5", "2026-10-01 1"], scenario.GetProperty("phased").EnumerateArray()
            .Select(phase => $"{phase.GetProperty("on").GetString()} {phase.GetProperty("share").GetRawText()}"));
        // GB-001 is not in the plan on wholesale, so its new price brings the plan nothing: what is held stays as it is
        var held = scenario.GetProperty("held");
        Assert.Equal(held.GetProperty("fromOn").GetRawText(), held.GetProperty("phased").GetRawText());
    }

    [Fact]
    public async Task A_higher_price_of_the_plan_is_held_less_from_its_phase_on()
    {
        // everything dearer: RB-014 falls below its floor nowhere new, BD-008 on wholesale does; its pieces are in the plan
        const string Dear = """{"changes":[{"of":"main","at":"/materials/*/price","by":1.9}]}""";
        var scenario = (await Ask($$"""
            {"profile":"main","plan":"2026","from":"2026-02-01","phases":{{Halves}},"list":"none","scenarios":[{{Dear}}]}
            """)).GetProperty("scenarios")[0];
        var phases = scenario.GetProperty("phased").EnumerateArray().ToList();
        Assert.NotEmpty(phases[0].GetProperty("prices").EnumerateArray());
        foreach (var (first, last) in phases[0].GetProperty("prices").EnumerateArray().Zip(phases[1].GetProperty("prices").EnumerateArray()))
            Assert.True(first.GetProperty("price").GetDecimal() <= last.GetProperty("price").GetDecimal());
        var held = scenario.GetProperty("held");
        Assert.True(held.GetProperty("phased").GetDecimal() < held.GetProperty("fromOn").GetDecimal());
    }

    [Fact]
    public async Task The_last_phase_has_the_suggested_prices()
    {
        const string Dear = """{"changes":[{"of":"main","at":"/materials/*/price","by":1.9}]}""";
        var answer = await Ask($$"""{"profile":"main","plan":"2026","phases":[{"on":"2026-03-01","share":1}],"scenarios":[{{Dear}}]}""");
        var suggested = answer.GetProperty("list").EnumerateArray()
            .Select(line => (line, price: line.GetProperty("scenarios")[0].GetProperty("suggestedPrice")))
            .Where(line => line.price.ValueKind == JsonValueKind.Number)
            .Select(line => $"{line.line.GetProperty("sku")} {line.line.GetProperty("channel")} {line.price.GetRawText()}");
        Assert.Equal(suggested, answer.GetProperty("scenarios")[0].GetProperty("phased")[0].GetProperty("prices").EnumerateArray()
            .Select(price => $"{price.GetProperty("sku")} {price.GetProperty("channel")} {price.GetProperty("price").GetRawText()}"));
    }

    [Theory]
    [InlineData("\"from\":\"2025-12-31\"", "out-of-range", "#/from")]
    [InlineData("\"from\":\"2027-01-01\"", "out-of-range", "#/from")]
    [InlineData("\"phases\":[{\"on\":\"2027-01-01\",\"share\":1}]", "out-of-range", "#/phases/0/on")]
    [InlineData("\"phases\":[{\"on\":\"2026-05-01\",\"share\":0.5}]", "not-whole", "#/phases/0/share")]
    [InlineData("\"phases\":[{\"on\":\"2026-05-01\",\"share\":0}]", "out-of-range", "#/phases/0/share")]
    [InlineData("\"phases\":[{\"on\":\"2026-05-01\",\"share\":0.5},{\"on\":\"2026-05-01\",\"share\":1}]", "out-of-order", "#/phases/1/on")]
    [InlineData("\"phases\":[{\"on\":\"2026-05-01\",\"share\":1},{\"on\":\"2026-06-01\",\"share\":1}]", "out-of-order", "#/phases/1/share")]
    [InlineData("\"notice\":{\"wholesale\":53}", "out-of-range", "#/notice/wholesale")]
    public async Task Days_outside_the_year_and_steps_that_do_not_rise_are_refused(string field, string code, string at)
    {
        var answer = await planned.Studio.Post("/v1/what-ifs", $$"""{"profile":"main","plan":"2026",{{field}},"scenarios":[{"changes":[]}]}""");
        answer.IsProblem(422, "invalid-input");
        var error = Assert.Single(answer.Json.GetProperty("errors").EnumerateArray());
        Assert.Equal((code, at), (error.GetProperty("code").GetString(), error.GetProperty("pointer").GetString()));
    }

    [Fact]
    public async Task A_channel_that_is_not_stored_can_be_given_no_notice()
    {
        var answer = await planned.Studio.Post("/v1/what-ifs",
            """{"profile":"main","plan":"2026","notice":{"nowhere":1},"scenarios":[{"changes":[]}]}""");
        answer.IsProblem(422, "unknown-reference");
        Assert.Equal("#/notice/nowhere", answer.Json.GetProperty("errors")[0].GetProperty("pointer").GetString());
    }

    [Fact]
    public async Task Notice_that_would_have_had_to_begin_before_today_is_too_late()
    {
        await using var studio = await WorkedStudio.Create(); // the day is 2 January 2027
        var documents = await WorkedStudio.Documents();
        var profile = documents["profiles"]!["main"]!;
        profile["yearStart"] = "2027-01-01";
        await studio.Has("/v1/profiles/main", profile.ToJsonString());
        await studio.Has("/v1/plans/2027", WorkedPlan.Steady.ToJsonString());
        async Task<List<JsonElement>> Late(string from) =>
        [
            .. (await studio.Post("/v1/what-ifs", $$"""
                {"profile":"main","plan":"2027","from":"{{from}}","notice":{"web":1,"wholesale":8},"list":"none","scenarios":[{{Glass}}]}
                """)).Json.GetProperty("warnings").EnumerateArray().Where(one => one.GetProperty("code").GetString() == "too-late-to-announce"),
        ];
        Assert.Empty(await Late("2027-04-01"));
        Assert.Empty(await Late("2027-02-27")); // 56 days from today
        var late = Assert.Single(await Late("2027-02-26"));
        Assert.Equal("#/notice/wholesale", late.GetProperty("pointer").GetString());
        Assert.Contains("2027-02-27 at the earliest", late.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    private Task<JsonElement> Ask(string request) => planned.Studio.Ask("/v1/what-ifs", request);
}
