using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.Years;

/// <summary>The year on one page: as figures, as a picture, and to print.</summary>
public sealed class YearTests
{
    [Fact]
    public async Task It_says_what_the_year_is_made_of_and_what_is_still_open()
    {
        await using var studio = await AStudio();
        var year = (await studio.Get("/v1/profiles/main/year?planned=41000&received=9000.5")).Json;
        // 24,000 of rent, 36,000 for the household, taxed at a fifth: 36,000/0.8 = 45,000 of profit, so 9,000 of tax; 69,000 in all.
        Assert.Equal("expenses rent 24000.00, household 36000.00, tax 9000.00", string.Join(", ", year.GetProperty("parts").EnumerateArray()
            .Select(part => string.Join(' ', part.EnumerateObject().Select(one => one.Value.ToString())))));
        Assert.Equal((69000m, 28000m, 59999.5m), (Of(year, "requiredRevenue"), Of(year, "notPlanned"), Of(year, "stillToCome")));
        Assert.False((await studio.Get("/v1/profiles/main/year")).Json.TryGetProperty("planned", out _));
        Assert.Equal((0m, 0m), (Of((await studio.Get("/v1/profiles/main/year?planned=69000")).Json, "notPlanned"),
            Of((await studio.Get("/v1/profiles/main/year?received=70000")).Json, "stillToCome")));
    }

    [Fact]
    public async Task The_designs_that_carry_most_are_those_that_bring_most_an_hour_each_on_its_best_channel()
    {
        await using var studio = await AStudio();
        // 2,000 hours: web takes 2.4 % + 0.25. BD at 30 minutes for 40.00: 38.79, 77.58 an hour; at the fair (5 %) for 60.00: 57.00, 114.00 an hour.
        // PN at 60 minutes for 58.00: 56.358, 56.36 an hour. ST is not listed, OD belongs to another year.
        var carry = (await studio.Get("/v1/profiles/main/year")).Json.GetProperty("carryMost").EnumerateArray()
            .Select(one => $"{one.GetProperty("sku")} {one.GetProperty("channel")} {one.GetProperty("earnedPerBenchHour")}");
        Assert.Equal(["BD fair 114.00", "PN web 56.36"], carry);
    }

    [Fact]
    public async Task As_a_page_it_has_the_picture_the_parts_and_what_nothing_covers_and_loads_nothing()
    {
        await using var studio = await AStudio();
        var page = (await studio.Get("/v1/profiles/main/year.html?planned=41000", null, ("Accept", "*/*"))).Text;
        foreach (var words in new[] { "<svg", "69,000.00", "28,000.00 not planned yet", "car and travel", "Pendant &lt;b&gt;", "earns an hour",
                     "2027-01-01 to 2027-12-31" })
            Assert.Contains(words, page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch("<script|<link|<img|prefers-color-scheme|@[0-9]", page);
    }

    [Fact]
    public async Task With_more_kinds_of_cost_than_letters_the_smallest_are_together()
    {
        await using var studio = new Studio();
        var kinds = Enum.GetValues<CostKind>().Where(kind => kind != CostKind.Depreciation).Select(kind =>
            $$"""{"name":"{{kind}}","amount":{{1000 + (int)kind}},"per":"year","costKind":"{{Word(kind)}}"}""");
        await studio.Has("/v1/profiles/main", $$"""
            {"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{{string.Join(',', kinds)}}]}
            """);
        var picture = (await studio.Get("/v1/profiles/main/year.svg")).Text;
        // 24 kinds of 1,000 to 1,024: nine are shown, 15 are together: the smallest, 0 to 15 without depreciation (4): 15,000 + 120 - 4 = 15,116.
        Assert.Contains("all other costs 15,116.00", picture, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_asked_is_refused()
    {
        await using var studio = await AStudio();
        (await studio.Get("/v1/profiles/none/year")).IsProblem(404, "not-found");
        Assert.Equal(["planned"], (await studio.Get("/v1/profiles/main/year?planned=-1")).IsProblem(422, "invalid-input").Pointers);
    }

    private static string Word(CostKind kind) => JsonNamingPolicy.KebabCaseLower.ConvertName(kind.ToString());

    private static decimal Of(JsonElement year, string name) => year.GetProperty(name).GetDecimal();

    private static async Task<Studio> AStudio()
    {
        var studio = new Studio();
        await studio.Has("/v1/profiles/main", """
            {"name":"Main","currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},
            "expenses":[{"name":"Rent","amount":24000,"per":"year","costKind":"rent"}],"household":[{"name":"Home","amount":3000,"per":"month"}],
            "tax":{"kind":"flat","rate":0.2}}
            """);
        await studio.Has("/v1/profiles/other", """{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8}}""");
        await studio.Has("/v1/channels/web", Sample.Shop);
        await studio.Has("/v1/channels/fair", """{"sells":"retail","currency":"USD","fees":[{"name":"reader","rate":0.05,"of":"paid"}]}""");
        await studio.Has("/v1/designs/BD", """{"profile":"main","making":{"minutesPerPiece":30}}""");
        await studio.Has("/v1/designs/PN", """{"name":"Pendant <b>","profile":"main","making":{"minutesPerPiece":60}}""");
        await studio.Has("/v1/designs/ST", """{"profile":"main","making":{"minutesPerPiece":1}}""");
        await studio.Has("/v1/designs/OD", """{"profile":"other","making":{"minutesPerPiece":1}}""");
        foreach (var (path, price) in new[] { ("BD/prices/web", "40"), ("BD/prices/fair", "60"), ("PN/prices/web", "58"), ("OD/prices/web", "99") })
            await studio.Has("/v1/designs/" + path, $$"""{"price":{{price}}}""");
        return studio;
    }
}
