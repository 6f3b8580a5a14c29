using System.Text.Json;
using System.Text.Json.Nodes;
using PriceFloor.Api.Tests.Scenarios;
using Xunit;

namespace PriceFloor.Api.Tests.WhatIfs;

/// <summary>A scenario is what would be answered if its changes were stored in a copy of the studio; and the studio itself stays as it is.</summary>
public sealed class WhatIfIsACopyTests
{
    private static readonly (string Change, Action<JsonNode> Stored)[] s_changes =
    [
        ("""{"of":"main","at":"/expenses/Bench rent/amount","by":1.10}""", all => Year(all)["expenses"]![0]!["amount"] = 594m),
        ("""{"of":"main","at":"/calendar/weeksPerYear","plus":-1}""", all => Year(all)["calendar"]!["weeksPerYear"] = 45m),
        ("""{"of":"profile:main","at":"/expenses/0","remove":true}""", all => Year(all)["expenses"]!.AsArray().RemoveAt(0)),
        ("""{"of":"main","at":"/soldShare","to":0.95}""", all => Year(all)["soldShare"] = 0.95m),
        ("""{"of":"main","merge":{"calendar":{"benchShare":null}}}""", all => Year(all)["calendar"]!.AsObject().Remove("benchShare")),
        ("""{"of":"main","at":"/calendar/benchShare","remove":true}""", all => Year(all)["calendar"]!.AsObject().Remove("benchShare")),
        ("""{"of":"main","at":"/otherIncome/-","to":{"name":"Hire","amount":90,"per":"month","kind":"net"}}""",
            all => Year(all)["otherIncome"]!.AsArray().Add(JsonNode.Parse("""{"name":"Hire","amount":90,"per":"month","kind":"net"}"""))),
        ("""{"of":"main","at":"/materials/*/price","by":1.12}""", all =>
        {
            foreach (var line in Year(all)["materials"]!.AsArray())
                line!["price"] = line["price"]!.GetValue<decimal>() * 1.12m;
        }),
        ("""{"of":"RB-014","at":"/making/steps/torch/handsOnMinutes","to":42}""",
            all => all["designs"]!["RB-014"]!["making"]!["steps"]![0]!["handsOnMinutes"] = 42m),
        ("""{"of":"web","at":"/fees/card/fixed","plus":0.10}""", all => all["channels"]!["web"]!["fees"]![0]!["fixed"] = 0.40m),
        ("""{"of":"price:RB-014/web","at":"/price","to":61}""", all => all["prices"]!["RB-014/web"]!["price"] = 61m),
        ("""{"of":"price:RB-014/gallery","at":"","to":{"price":111}}""",
            all => all["prices"]!["RB-014/gallery"] = JsonNode.Parse("""{"price":111}""")),
        ("""{"of":"price:GB-001/*","at":"/price","by":1.10}""", all =>
        {
            foreach (var (key, price) in all["prices"]!.AsObject())
                if (key.StartsWith("GB-001/", StringComparison.Ordinal))
                    price!["price"] = price["price"]!.GetValue<decimal>() * 1.10m;
        }),
    ];

    [Fact]
    public async Task A_scenario_is_what_storing_the_changed_documents_in_a_copy_gives()
    {
        await using var studio = await WorkedStudio.Create();
        var before = (await studio.Get("/v1/audit?limit=1000")).Text;
        foreach (var (change, store) in s_changes)
            Same(await Changed([store]), await Asked(studio, change), change);
        Same(await Changed(s_changes[..2].Select(one => one.Stored)), await Asked(studio, $"{s_changes[0].Change},{s_changes[1].Change}"), "two");
        Assert.Equal(before, (await studio.Get("/v1/audit?limit=1000")).Text);
    }

    [Fact]
    public async Task No_changes_give_the_stored_figures_and_prices_to_the_letter()
    {
        await using var studio = await WorkedStudio.Create();
        var answer = await Ask(studio, """{"profile":"main","list":"all","scenarios":[{"changes":[]}]}""");
        var stored = (await studio.Get("/v1/profiles/main/requirement")).Text;
        var now = answer.GetProperty("now").GetRawText();
        foreach (var figure in answer.GetProperty("now").EnumerateObject())
            Assert.Contains($"\"{figure.Name}\":{figure.Value.GetRawText()},", stored, StringComparison.Ordinal);
        Assert.StartsWith("{\"name\":null," + now[1..^1] + ",\"differences\":{", answer.GetProperty("scenarios")[0].GetRawText(),
            StringComparison.Ordinal);
        foreach (var line in answer.GetProperty("list").EnumerateArray())
            Assert.Equal(Shown(line, line.GetProperty("now")), Shown(line.GetProperty("scenarios")[0], line.GetProperty("scenarios")[0]));
        Same((await studio.Get("/v1/profiles/main/requirement")).Json, (await studio.Get("/v1/price-list")).Json, answer, "nothing");
        Assert.Equal(0, (await Ask(studio, """{"profile":"main","scenarios":[{"changes":[]}]}""")).GetProperty("list").GetArrayLength());
    }

    [Fact]
    public async Task Scenarios_do_not_see_each_other()
    {
        await using var studio = await WorkedStudio.Create();
        var alone = await Asked(studio, s_changes[0].Change);
        var beside = await Ask(studio, $$"""
            {"profile":"main","list":"all","scenarios":[{"changes":[{{s_changes[7].Change}}]},{"changes":[{{s_changes[0].Change}}]},
             {"changes":[{{s_changes[9].Change}}]}]}
            """);
        Assert.Equal(alone.GetProperty("scenarios")[0].GetRawText(), beside.GetProperty("scenarios")[1].GetRawText());
        foreach (var (one, other) in alone.GetProperty("list").EnumerateArray().Zip(beside.GetProperty("list").EnumerateArray()))
            Assert.Equal(one.GetProperty("scenarios")[0].GetRawText(), other.GetProperty("scenarios")[1].GetRawText());
    }

    [Fact]
    public async Task An_amount_added_and_taken_off_again_leaves_everything_as_it_was()
    {
        await using var studio = await WorkedStudio.Create();
        var answer = await Ask(studio, """
            {"profile":"main","scenarios":[{"changes":[{"of":"main","at":"/household/*/amount","plus":17.35},
             {"of":"main","at":"/household/*/amount","plus":-17.35}]}]}
            """);
        Assert.Equal(0, answer.GetProperty("list").GetArrayLength());
        Assert.Equal(0, answer.GetProperty("scenarios")[0].GetProperty("differences").GetProperty("requiredRevenue").GetDecimal());
    }

    private static JsonNode Year(JsonNode all) => all["profiles"]!["main"]!;

    private static Task<JsonElement> Asked(Studio studio, string changes) =>
        Ask(studio, $$"""{"profile":"main","list":"all","scenarios":[{"changes":[{{changes}}]}]}""");

    private static async Task<JsonElement> Ask(Studio studio, string request)
    {
        var answer = await studio.Post("/v1/what-ifs", request);
        Assert.True(answer.Status == 200, $"{request}: {answer.Text}");
        return answer.Json;
    }

    private static async Task<(JsonElement Year, JsonElement Prices)> Changed(IEnumerable<Action<JsonNode>> changes)
    {
        var documents = await WorkedStudio.Documents();
        foreach (var change in changes)
            change(documents);
        await using var copy = new Studio();
        await WorkedStudio.Store(copy, documents);
        return ((await copy.Get("/v1/profiles/main/requirement")).Json, (await copy.Get("/v1/price-list")).Json);
    }

    private static void Same((JsonElement Year, JsonElement Prices) stored, JsonElement answer, string change) =>
        Same(stored.Year, stored.Prices, answer, change);

    private static void Same(JsonElement year, JsonElement prices, JsonElement answer, string change)
    {
        var scenario = answer.GetProperty("scenarios")[0];
        foreach (var figure in answer.GetProperty("now").EnumerateObject())
            Assert.True(year.GetProperty(figure.Name).GetRawText() == scenario.GetProperty(figure.Name).GetRawText(), $"{change}: {figure.Name}");
        var lines = answer.GetProperty("list").EnumerateArray()
            .Select(line => Shown(line, line.GetProperty("scenarios")[0])).ToList();
        Assert.Equal(prices.GetProperty("items").EnumerateArray().Select(item => Shown(item, item)), lines);
    }

    private static string Shown(JsonElement line, JsonElement prices) => string.Join(' ', prices.GetProperty("floorPrice").GetRawText(),
        prices.GetProperty("targetPrice").GetRawText(), prices.GetProperty("verdict").GetRawText(),
        prices.TryGetProperty("listedPrice", out var listed) ? listed.GetRawText() : line.GetProperty("listedPrice").GetRawText());
}
