using System.Globalization;
using System.Text.Json;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>
/// The year of docs/the-year-month-by-month.md, on the demo studio: its tables are what the service answers to the page's own requests.
/// </summary>
public sealed class YearPageTests
{
    private const string Page = "docs/the-year-month-by-month.md";

    private static readonly string[] s_progress = ["planned", "brought", "ahead", "pace", "forecast", "stillToBring", "restPlanned", "factor",
        "weeksLeft", "perWeekLeft", "hoursLeft", "perBenchHourLeft"];

    private static readonly string[] s_ways = ["missing", "sellMore", "raise", "spendLess"];

    [Fact]
    public async Task What_each_way_through_September_is_worth_is_what_the_service_answers()
    {
        await using var studio = DocTableTests.DemoFilled();
        var answer = (await ChangeDocTableTests.Asked(studio, "/v1/what-ifs", Page)).Json;
        var scenarios = answer.GetProperty("scenarios").EnumerateArray().ToList();
        DocTableTests.Holds(Page, ["way", "lowest cash", "in month", "better by"],
            [Row("now", answer.GetProperty("now"), ""), .. scenarios.Select(one => Row(one.GetProperty("name").GetString()!, one,
                Lowest(one.GetProperty("differences")).GetProperty("amount").GetRawText()))]);
        Assert.All(scenarios, one => Assert.True(Lowest(one).GetProperty("amount").GetDecimal() < 0)); // none is enough alone
        var better = scenarios.Select(one => Lowest(one.GetProperty("differences")).GetProperty("amount").GetDecimal()).ToList();
        Assert.Equal(better.Min(), better[1]); // the second is worth least
        Assert.True(scenarios[2].GetProperty("differences").GetProperty("benchMustEarn").GetDecimal() < 0);

        static string[] Row(string name, JsonElement one, string by) =>
            [name, Lowest(one).GetProperty("amount").GetRawText(), Lowest(one).GetProperty("month").GetRawText(), by];

        static JsonElement Lowest(JsonElement one) => one.GetProperty("plan").GetProperty("lowestCash");
    }

    [Fact]
    public async Task When_to_begin_for_Christmas_is_what_the_service_answers()
    {
        await using var studio = DocTableTests.DemoFilled();
        var answer = (await studio.Get("/v1/plans/this-year/months")).Json;
        var months = answer.GetProperty("months").EnumerateArray().ToList();
        DocTableTests.Holds(Page, ["month", "hours that its sales take", "hours that there are", "hours made", "lie ready when it begins",
            "materials paid"], months.Skip(7).Select(month => new[]
            {
                DateOnly.Parse(month.GetProperty("from").GetString()!, CultureInfo.InvariantCulture).ToString("MMMM", CultureInfo.InvariantCulture),
                Hours(month, "needHours"), Hours(month, "capacity"), Hours(month, "madeHours"), Hours(month, "stockHours"),
                month.GetProperty("materials").GetRawText(),
            }));
        Assert.Equal(9, answer.GetProperty("buildFrom").GetInt32()); // September
        var text = (await File.ReadAllTextAsync(Repository.File(Page), Studio.Cancellation)).Replace('\n', ' ');
        Assert.Contains($"November takes {Hours(months[10], "needHours")} and has {Hours(months[10], "capacity")}. "
            + $"When November begins, {Hours(months[10], "stockHours")} hours of work lie ready", text, StringComparison.Ordinal);
        Assert.Equal(Hours(months[10], "stockHours"), Shown(answer.GetProperty("stockAtMost").GetDecimal()));
        foreach (var month in months.Skip(7).Take(2))
            Assert.True(month.GetProperty("needHours").GetDecimal() < month.GetProperty("capacity").GetDecimal()); // enough until October
    }

    [Fact]
    public async Task Whether_the_year_is_on_its_way_is_what_the_service_answers_sent_or_logged()
    {
        await using var studio = DocTableTests.DemoFilled();
        var answer = (await ChangeDocTableTests.Asked(studio, "/v1/plans/this-year/progress", Page, "through")).Json;
        DocTableTests.Holds(Page, ["at the end of August", ""],
        [
            .. s_progress.Select(name => new[] { $"`{name}`", answer.GetProperty(name).GetRawText() }),
            .. s_ways.Select(name => new[] { $"`ways/{name}`", answer.GetProperty("ways").GetProperty(name).GetRawText() }),
        ]);
        var logged = await studio.Get($"/v1/plans/this-year/progress?through={studio.Clock.GetUtcNow().Year}-08-31");
        Assert.Equal((200, "m533+b80"), (logged.Status, logged.Json.GetProperty("basis").GetProperty("log").GetString()));
        Assert.Equal(answer.GetProperty("planned").GetRawText(), logged.Json.GetProperty("planned").GetRawText());
    }

    private static string Hours(JsonElement month, string name) => Shown(month.GetProperty(name).GetDecimal());

    private static string Shown(decimal hours) => hours.ToString("0.0", CultureInfo.InvariantCulture);
}
