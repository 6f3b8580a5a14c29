using System.Text.Json;
using PriceFloor.Api.Tests.Scenarios;
using Xunit;

namespace PriceFloor.Api.Tests.WhatIfs;

/// <summary>The worked example: rent, a class and a shorter year, alone and together. Figures computed twice, outside this program.</summary>
public sealed class WhatIfTests(WhatIfTests.Worked worked) : IClassFixture<WhatIfTests.Worked>
{
    private const string Rent = """{"name":"rent +10 %","changes":[{"of":"main","at":"/expenses/Bench rent/amount","by":1.10}]}""";
    private static readonly string[] s_figures = ["benchMustEarn", "benchHours", "perBenchHour"];
    private const string Class = """
        {"name":"one class a month","changes":[{"of":"main","at":"/otherIncome/-",
         "to":{"name":"Class","amount":320,"per":"month","kind":"taxable","daysPerYear":12}}]}
        """;
    private const string Weeks = """{"name":"45 weeks","changes":[{"of":"main","at":"/calendar/weeksPerYear","to":45}]}""";
    private const string Glass = """
        {"name":"glass +12 %","changes":[
         {"of":"main","at":"/materials/clear-rod/price","by":1.12},{"of":"main","at":"/materials/colour-rod/price","by":1.12},
         {"of":"main","at":"/materials/frit/price","by":1.12},{"of":"main","at":"/materials/soft-rod/price","by":1.12},
         {"of":"main","at":"/materials/clear-tube/price","by":1.12}]}
        """;

    private Studio Studio => worked.Studio;

    [Fact]
    public async Task Rent_a_class_and_a_shorter_year_stand_side_by_side()
    {
        var answer = await Ask($$"""{"profile":"main","scenarios":[{{Rent}},{{Class}},{{Weeks}}],"combined":true}""");
        Assert.Equal("""{"requiredRevenue":82919.30,"benchMustEarn":63323.30,"benchHours":1131,"perBenchHour":55.99,"takeHomePerHour":20.96}""",
            answer.GetProperty("now").GetRawText());
        Assert.Equal(["63971.30 1131 56.57", "59483.30 1077 55.24", "63323.30 1108.5 57.13"],
            answer.GetProperty("scenarios").EnumerateArray().Select(Figures));
        Assert.Equal("60131.30 1054.5 57.03", Figures(answer.GetProperty("combined")));
        Assert.Equal(["61.00 113.00, 62.00 114.00, 61.00 112.00, 62.00 115.00, 62.00 115.00"], answer.GetProperty("list").EnumerateArray()
            .Where(line => line.GetProperty("sku").GetString() == "RB-014" && line.GetProperty("channel").GetString() == "web").Select(Prices));
    }

    [Fact]
    public async Task Differences_are_of_the_figures_that_are_shown()
    {
        var answer = await Ask($$"""{"profile":"main","scenarios":[{{Rent}}],"list":"none"}""");
        // 540 x 0.10 x 12 = 648; 56.57 - 55.99 = 0.58
        Assert.Equal("""{"requiredRevenue":648.00,"benchMustEarn":648.00,"benchHours":0,"perBenchHour":0.58,"takeHomePerHour":0.00}""",
            answer.GetProperty("scenarios")[0].GetProperty("differences").GetRawText());
        Assert.Equal(0, answer.GetProperty("list").GetArrayLength());
    }

    [Fact]
    public async Task What_the_scenarios_do_alone_need_not_add_up_to_what_they_do_together()
    {
        var together = await Ask($$"""{"profile":"main","scenarios":[{{Rent}},{{Class}},{{Weeks}}],"combined":true,"list":"none"}""");
        Assert.Contains("not-additive", Codes(together)); // 0.58 - 0.75 + 1.14 = 0.97, all three 1.04
        Assert.DoesNotContain("not-additive", Codes(await Ask($$"""{"profile":"main","scenarios":[{{Rent}}],"combined":true,"list":"none"}""")));
    }

    [Fact]
    public async Task Dearer_glass_moves_floors_a_little_and_takes_one_listed_price_below_its_floor()
    {
        var answer = await Ask($$"""{"profile":"main","scenarios":[{{Glass}}],"list":"all"}""");
        Assert.Equal(1, answer.GetProperty("scenarios")[0].GetProperty("verdictsFallen").GetInt32());
        var fallen = answer.GetProperty("list").EnumerateArray()
            .Single(line => line.GetProperty("scenarios")[0].GetProperty("suggestedPrice").ValueKind == JsonValueKind.Number);
        Assert.Equal("GB-001 wholesale 142.50 meets-target below-floor 143.00", string.Join(' ', fallen.GetProperty("sku").GetString(),
            fallen.GetProperty("channel").GetString(), fallen.GetProperty("listedPrice").GetRawText(),
            fallen.GetProperty("now").GetProperty("verdict").GetString(), fallen.GetProperty("scenarios")[0].GetProperty("verdict").GetString(),
            fallen.GetProperty("scenarios")[0].GetProperty("suggestedPrice").GetRawText()));
        Assert.Contains("traced-spend-not-moved", Codes(answer)); // 6,900 of rod, tube and colour is as it was
    }

    [Fact]
    public async Task With_the_traced_line_moved_too_nothing_stays_behind()
    {
        const string Spend = """{"of":"main","at":"/expenses/Rod, tube, colour, findings and gift boxes/amount","by":1.08},""";
        var both = Glass.Replace("\"changes\":[", $"\"changes\":[{Spend}", StringComparison.Ordinal);
        Assert.DoesNotContain("traced-spend-not-moved", Codes(await Ask($$"""{"profile":"main","scenarios":[{{both}}],"list":"none"}""")));
    }

    [Fact]
    public async Task Only_prices_that_move_are_listed()
    {
        var web = """{"changes":[{"of":"web","at":"/fees/card/fixed","plus":1}]}""";
        var answer = await Ask($$"""{"profile":"main","scenarios":[{{web}}]}""");
        Assert.True(answer.GetProperty("list").GetArrayLength() is > 5 and <= 17);
        Assert.All(answer.GetProperty("list").EnumerateArray(), line => Assert.Equal("web", line.GetProperty("channel").GetString()));
        Assert.All(answer.GetProperty("list").EnumerateArray(), line => Assert.True(line.GetProperty("now").GetProperty("floorPrice").GetDecimal()
            < line.GetProperty("scenarios")[0].GetProperty("floorPrice").GetDecimal()));
        Assert.Equal("""["channel:web@1"]""", answer.GetProperty("basis").GetProperty("changed").GetRawText());
    }

    [Fact]
    public async Task A_sale_of_15_percent_is_a_change_of_every_listed_price_and_is_warned_about_where_the_channel_allows_no_such_price()
    {
        var answer = await Ask("""{"profile":"main","scenarios":[{"changes":[{"of":"price:*/market","at":"/price","by":0.85}]}],"list":"all"}""");
        var earrings = answer.GetProperty("list").EnumerateArray()
            .Single(line => line.GetProperty("sku").GetString() == "ER-003" && line.GetProperty("channel").GetString() == "market");
        Assert.Equal("32.95", earrings.GetProperty("listedPrice").GetRawText());
        Assert.Equal("28.0075", earrings.GetProperty("scenarios")[0].GetProperty("listedPrice").GetRawText()); // 32.95 x 0.85
        Assert.Contains("not-an-allowed-price", Codes(answer));
    }

    [Fact]
    public async Task A_range_counts_with_its_likely_value()
    {
        var range = """{"changes":[{"of":"main","at":"/calendar/weeksPerYear","to":{"low":42,"likely":45,"high":47}}]}""";
        var answer = await Ask($$"""{"profile":"main","scenarios":[{{range}}],"list":"none"}""");
        Assert.Equal("63323.30 1108.5 57.13", Figures(answer.GetProperty("scenarios")[0]));
    }

    private Task<JsonElement> Ask(string request) => Studio.Ask("/v1/what-ifs", request);

    private static string Figures(JsonElement year) => string.Join(' ',
        s_figures.Select(name => year.GetProperty(name).GetRawText()));

    private static string Prices(JsonElement line) => string.Join(", ",
        line.GetProperty("scenarios").EnumerateArray().Prepend(line.GetProperty("now")).Append(line.GetProperty("combined"))
            .Select(one => $"{one.GetProperty("floorPrice").GetRawText()} {one.GetProperty("targetPrice").GetRawText()}"));

    private static IEnumerable<string?> Codes(JsonElement answer) =>
        answer.GetProperty("warnings").EnumerateArray().Select(one => one.GetProperty("code").GetString());

    public sealed class Worked : IAsyncLifetime
    {
        public Studio Studio { get; private set; } = null!;

        public async ValueTask InitializeAsync() => Studio = await WorkedStudio.Create();

        public ValueTask DisposeAsync() => Studio.DisposeAsync();
    }
}
