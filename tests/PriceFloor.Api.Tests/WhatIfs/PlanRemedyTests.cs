using System.Globalization;
using System.Text.Json;
using PriceFloor.Api.Tests.Plans;
using Xunit;

namespace PriceFloor.Api.Tests.WhatIfs;

/// <summary>What alone closes a plan, as changes that are ready to be sent: they close it, and one unit less does not.</summary>
public sealed class PlanRemedyTests(PlannedStudio planned) : IClassFixture<PlannedStudio>
{
    [Fact]
    public async Task The_worked_plan_closes_with_prices_4_1_percent_higher_or_with_a_factor_of_1_049()
    {
        var remedies = (await Ask("\"scenarios\":[{\"changes\":[]}]")).GetProperty("now").GetProperty("remedies").EnumerateArray().ToList();
        Assert.Equal(["raise-the-prices 0.041 ", "sell-more 1.0490 ", "spend-less 2954.91 ", "earn-taxable-elsewhere 2954.91 "],
            remedies.Take(4).Select(Text));
        Assert.Equal("work-faster null hours-not-short", Text(remedies[5])); // 781.7 of 1,131 hours
        Assert.Equal("""[{"of":"plan:2026","at":"/lines/*/price","by":1.041}]""", remedies[0].GetProperty("changes").GetRawText());
        Assert.Equal("""[{"of":"plan:2026","at":"/lines/*/units","by":1.049}]""", remedies[1].GetProperty("changes").GetRawText());
        Assert.Equal(JsonValueKind.Null, remedies[5].GetProperty("changes").ValueKind);
        // 2,954.91 less to earn is less to tax, so less of income that is taxed already is enough
        Assert.True(remedies[4].GetProperty("value").GetDecimal() < 2954.91m);
    }

    [Fact]
    public async Task Whatever_the_studio_is_each_way_closes_the_plan_and_one_unit_less_does_not()
    {
        var random = new Random(20270104);
        var (closed, open) = (0, 0);
        for (var studio = 0; studio < 30; studio++)
        {
            var changes = RandomChanges(random);
            var scenario = (await Ask($$"""
                "scenarios":[{"changes":[{{changes}}]}]
                """)).GetProperty("scenarios")[0];
            var remedies = scenario.GetProperty("remedies").EnumerateArray().ToList();
            Assert.Equal(scenario.GetProperty("plan").GetProperty("closes").GetBoolean(), remedies.Count == 0);
            closed += remedies.Count == 0 ? 1 : 0;
            foreach (var remedy in remedies.Where(one => one.GetProperty("possible").GetBoolean()))
            {
                Assert.Equal(JsonValueKind.Null, remedy.GetProperty("reason").ValueKind);
                if (remedy.GetProperty("changes").ValueKind == JsonValueKind.Null || remedy.GetProperty("value").GetDecimal() > 6480)
                    continue; // more than the rent of a year, which the saving one cent smaller is taken from
                open++;
                var ready = remedy.GetProperty("changes").GetRawText()[1..^1];
                var both = await Ask($$"""
                    "scenarios":[{"changes":[{{changes}},{{ready}}]},{"changes":[{{changes}},{{OneLess(remedy)}}]}]
                    """);
                Assert.Equal([true, false], both.GetProperty("scenarios").EnumerateArray()
                    .Select(one => one.GetProperty("plan").GetProperty("closes").GetBoolean()));
            }
        }

        Assert.True(closed >= 3 && open >= 40, $"{closed} studios close, {open} ways were tried");
    }

    [Fact]
    public async Task Lines_that_take_the_listed_price_are_raised_where_it_is_listed()
    {
        const string Listed = """{"of":"2026","at":"/lines/*/price","remove":true},{"of":"2026","at":"/lines/0/price","to":210}""";
        var raise = (await Ask($$"""
            "scenarios":[{"changes":[{{Listed}}]}]
            """)).GetProperty("scenarios")[0].GetProperty("remedies")[0];
        var changes = raise.GetProperty("changes").EnumerateArray().Select(one => one.GetProperty("of").GetString()).ToList();
        Assert.Equal("plan:2026", changes[0]);
        Assert.Contains("price:RB-014/web", changes);
        Assert.DoesNotContain("price:PN-007/web", changes); // the one line with a price of its own
        var closes = await Ask($$"""
            "scenarios":[{"changes":[{{Listed}},{{raise.GetProperty("changes").GetRawText()[1..^1]}}]}]
            """);
        Assert.True(closes.GetProperty("scenarios")[0].GetProperty("plan").GetProperty("closes").GetBoolean());
    }

    [Fact]
    public async Task More_pieces_than_the_hours_allow_are_no_way_to_close_a_plan()
    {
        var remedies = (await Ask("""
            "scenarios":[{"changes":[{"of":"2026","at":"/hoursKeptBack","to":340}]},{"changes":[{"of":"2026","at":"/lines/*/price","by":0.05}]}]
            """)).GetProperty("scenarios").EnumerateArray().Select(one => one.GetProperty("remedies").EnumerateArray().ToList()).ToList();
        // 1,131 - 340 = 791 hours; 781.7 x 1.049 = 820
        Assert.Equal("sell-more null beyond-limits", Text(remedies[0][1]));
        Assert.Equal("work-faster null hours-not-short", Text(remedies[0][5]));
        Assert.Equal("sell-more null price-below-materials", Text(remedies[1][1]));
    }

    /// <summary>The same change with one unit less of its value.</summary>
    private static string OneLess(JsonElement remedy)
    {
        var value = remedy.GetProperty("value").GetDecimal();
        return remedy.GetProperty("way").GetString() switch
        {
            "raise-the-prices" => By("/lines/*/price", 1 + value - 0.001m),
            "sell-more" => By("/lines/*/units", value - 0.0001m),
            "spend-less" => Text($$"""{"of":"main","at":"/expenses/Bench rent/amount","plus":{{decimal.Round((0.01m - value) / 12, 10)}} }"""),
            "earn-taxable-elsewhere" => Income(value - 0.01m, "taxable"),
            _ => Income(value - 0.01m, "net"),
        };
    }

    private static string By(string at, decimal factor) => Text($$"""{"of":"plan:2026","at":"{{at}}","by":{{factor}}}""");

    private static string Income(decimal amount, string kind) =>
        Text($$"""{"of":"main","at":"/otherIncome/-","to":{"amount":{{decimal.Max(0, amount)}},"per":"year","kind":"{{kind}}"} }""");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static string RandomChanges(Random random) => string.Join(',', new[]
    {
        By("/lines/*/units", random.Next(85, 106) / 100m),
        By("/lines/*/price", random.Next(97, 103) / 100m),
        Text($$"""{"of":"main","at":"/household/*/amount","by":{{random.Next(90, 106) / 100m}}}"""),
        Text($$"""{"of":"main","at":"/calendar/weeksPerYear","to":{{random.Next(40, 49)}}}"""),
        Text($$"""{"of":"main","at":"/materials/*/price","by":{{random.Next(90, 120) / 100m}}}"""),
        Text($$"""{"of":"web","at":"/fees/card/fixed","plus":{{random.Next(0, 30) / 100m}}}"""),
        Income(random.Next(0, 4000), random.Next(2) == 0 ? "net" : "taxable"),
    });

    private static string Text(JsonElement remedy) => string.Join(' ', remedy.GetProperty("way").GetString(),
        remedy.GetProperty("value").GetRawText(), remedy.GetProperty("reason").GetString());

    private Task<JsonElement> Ask(string scenarios) => planned.Studio.Ask("/v1/what-ifs",
        $$"""{"profile":"main","plan":"2026","remedies":"plan","list":"none",{{scenarios}}}""");
}
