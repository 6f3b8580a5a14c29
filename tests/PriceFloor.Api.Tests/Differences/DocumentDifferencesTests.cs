using System.Text.Json;
using System.Text.Json.Nodes;
using PriceFloor.Api.Differences;
using PriceFloor.Api.Http;
using Xunit;

namespace PriceFloor.Api.Tests.Differences;

/// <summary>What changed between two revisions, as the maker would say it.</summary>
public sealed class DocumentDifferencesTests
{
    [Theory]
    [InlineData("\"amount\": 540", "\"amount\": 594", "expense Bench rent: 540.00 to 594.00 a month")]
    [InlineData("\"amount\": 540, \"per\": \"month\"", "\"amount\": 6480, \"per\": \"year\"",
        "expense Bench rent: 540.00 a month to 6,480.00 a year")]
    [InlineData("\"weeksPerYear\": 48", "\"weeksPerYear\": 45.5", "profile: weeks a year 48 to 45.5")]
    [InlineData("\"benchShare\": 0.65", "\"benchShare\": 0.6", "profile: share of the day at the bench 65 % to 60 %")]
    [InlineData("\"deductible\": false", "\"deductible\": true", "expense Van loan principal: deductible no to yes")]
    [InlineData("\"businessShare\": 0.12", "\"businessShare\": 0.125", "household Home rent: business share 12 % to 12.5 %")]
    [InlineData("\"lifeYears\": 8", "\"lifeYears\": 10", "equipment Kiln: years of life 8 to 10")]
    [InlineData("\"kind\": \"taxable\"", "\"kind\": \"net\"", "other income Evening classes: kind taxable to net")]
    [InlineData("\"price\": 38.00", "\"price\": 42.56", "material clear-rod: price 38.00 to 42.56")]
    [InlineData("\"price\": 0.21", "\"price\": 0.2105", "material kiln-kwh: price 0.21 to 0.2105")] // no decimal is lost
    [InlineData("\"loadsPerYear\": 240", "\"loadsPerYear\": 1200", "limit kiln: loads a year 240 to 1,200")]
    [InlineData("\"pay\": { \"amount\": 14, \"per\": \"hour\" }", "\"pay\": { \"amount\": 15, \"per\": \"hour\" }",
        "profile: wanted pay 14.00 to 15.00 an hour")]
    [InlineData("\"pay\": { \"amount\": 14, \"per\": \"hour\" }", "\"pay\": null", "profile: wanted pay gone (was 14.00 an hour)")]
    [InlineData("\"upTo\": 48475, \"rate\": 0.12", "\"upTo\": 48475, \"rate\": 0.13",
        "profile: tax levy income tax band up to 48,475.00 rate 12 % to 13 %")]
    [InlineData("\"retailMultiple\": 2 ", "\"retailMultiple\": 2.2 ", "profile: retail multiple 2 to 2.2")]
    public void A_profile_says_its_figures_by_their_names(string before, string after, string said) =>
        Assert.Equal([said], Between<CostProfile>("profile", Sample.Rich, Replaced(Sample.Rich, before, after)));

    [Theory]
    [InlineData("\"handsOnMinutes\": 34", "\"handsOnMinutes\": 38", "design: torch minutes 34 to 38")]
    [InlineData("\"batchSize\": 24, \"goodShare\": 0.98", "\"batchSize\": 12, \"goodShare\": 0.98", "design: anneal pieces together 24 to 12")]
    [InlineData("\"quantity\": 0.062", "\"quantity\": 0.07", "design: material clear-rod quantity 0.062 to 0.07")]
    [InlineData("\"amount\": 1.55", "\"amount\": 1.70", "design: material gift box 1.55 to 1.70")]
    [InlineData("\"seconds\": { \"share\": 0.4, \"price\": 11 }", "\"seconds\": null", "design: seconds gone (was share 40 %, price 11.00)")]
    [InlineData(", \"soldShare\": 0.9 }", "}", "design: share that sells 90 % to not set")]
    [InlineData(", { \"name\": \"polish\", \"handsOnMinutes\": 9 }", "", "design: polish gone (was minutes 9)", 1)]
    public void A_design_says_its_steps_and_materials(string before, string after, string said, int spaces = 0) =>
        Assert.Equal([said], Between<Design>("design", Sample.RichDesign, Replaced(Spaced(Sample.RichDesign, spaces), before, after)));

    [Theory]
    [InlineData("\"rate\": 0.024", "\"rate\": 0.029", "channel web: fee card 2.4 % to 2.9 %")]
    [InlineData("\"fixed\": 0.25", "\"fixed\": 0.3", "channel web: fee card fixed 0.25 to 0.30")]
    [InlineData("\"of\": \"paid\"", "\"of\": \"price-and-shipping\"", "channel web: fee card of paid to price and shipping")]
    [InlineData("\"included\": false", "\"included\": true", "channel web: sales tax in the price no to yes")]
    [InlineData("\"share\": 0.03", "\"share\": 0.05", "channel web: returns 3 % to 5 %")]
    [InlineData("\"costPerPiece\": 0.80", "\"costPerPiece\": 1", "channel web: cost of each piece 0.80 to 1.00")]
    public void A_channel_says_its_fees_and_costs(string before, string after, string said) =>
        Assert.Equal([said], Between<Channel>("channel web", Sample.RichChannel, Replaced(Sample.RichChannel, before, after)));

    [Fact]
    public void Items_are_found_by_name_wherever_they_stand_in_the_list()
    {
        const string Rent = """{"name":"Rent","amount":500,"per":"month"}""", Water = """{"name":"Water","amount":8,"per":"time","times":4}""";
        var before = Profile($$"""{"name":"Gas","amount":30,"per":"week"},{{Rent}}""");
        var after = Profile($$"""{{Rent}},{{Water}},{"name":"Gas","amount":33,"per":"week"}""");
        Assert.Equal(["expense Water: new, 8.00 4 times a year", "expense Gas: 30.00 to 33.00 a week"],
            Between<CostProfile>("profile", before, after));
        Assert.Equal(["expense Gas: 33.00 to 30.00 a week", "expense Water: gone (was 8.00 4 times a year)"],
            Between<CostProfile>("profile", after, before));
    }

    [Fact]
    public void Items_without_a_name_and_of_one_name_are_told_apart()
    {
        static string Four(int second, int fourth) => Profile($$"""
            {"amount":1,"per":"year"},{"amount":{{second}},"per":"year"},
            {"name":"Rent","amount":3,"per":"year"},{"name":"Rent","amount":{{fourth}},"per":"year"}
            """);
        var (before, after) = (Four(2, 4), Four(7, 9));
        Assert.Equal(
        [
            "expense without a name (number 2 of this name): 2.00 to 7.00 a year",
            "expense Rent (number 2 of this name): 4.00 to 9.00 a year",
        ], Between<CostProfile>("profile", before, after));
    }

    [Fact]
    public void A_text_too_long_to_repeat_is_only_said_to_have_changed() => Assert.Equal(["channel web: terms changed"], Between<Channel>(
        "channel web", """{"sells":"wholesale","currency":"USD"}""",
        $$"""{"sells":"wholesale","currency":"USD","orderTerms":"{{new string('x', 500)}}"}"""));

    /// <summary>Nothing is left out: every figure, word and date that is another one is said, with both values where they can be.</summary>
    [Fact]
    public void Every_value_that_is_another_one_is_said()
    {
        SaysEveryLeaf<CostProfile>(Sample.Rich);
        SaysEveryLeaf<Design>(Sample.RichDesign);
        SaysEveryLeaf<Channel>(Sample.RichChannel);
        SaysEveryLeaf<ListedPrice>("""{"price":58.00,"currency":"USD"}""");
    }

    private static void SaysEveryLeaf<T>(string json) where T : class
    {
        Assert.Empty(Between<T>("it", json, json));
        var tried = 0;
        foreach (var path in Leaves(JsonNode.Parse(json)!, []))
        {
            var changed = JsonNode.Parse(json)!;
            if (!TryChange(changed, path))
                continue;
            tried++;
            var said = Between<T>("it", json, changed.ToJsonString());
            Assert.True(said.Count is >= 1 and <= 2, $"{string.Join('/', path)}: {string.Join(" | ", said)}");
            Assert.All(said, words => Assert.DoesNotMatch("\\[|\\{|/[0-9]", words));
        }

        Assert.True(tried >= 1);
    }

    private static IEnumerable<object[]> Leaves(JsonNode node, object[] path) => node switch
    {
        JsonObject members => members.SelectMany(member => Leaves(member.Value!, [.. path, member.Key])),
        JsonArray items => items.SelectMany((item, i) => Leaves(item!, [.. path, i])),
        _ => [path],
    };

    private static bool TryChange(JsonNode document, object[] path)
    {
        var at = path[..^1].Aggregate(document, (node, step) => step is int i ? node[i]! : node[(string)step]!);
        var leaf = path[^1] is int index ? at[index]! : at[(string)path[^1]]!;
        JsonNode? other = leaf.GetValueKind() switch
        {
            JsonValueKind.Number => JsonValue.Create(leaf.GetValue<decimal>() == 0 ? 0.5m : leaf.GetValue<decimal>() * 0.9m),
            JsonValueKind.True => JsonValue.Create(false),
            JsonValueKind.False => JsonValue.Create(true),
            _ => path[^1] switch
            {
                "name" or "material" => JsonValue.Create("Another"),
                "yearStart" or "inService" => JsonValue.Create("2020-02-01"),
                "currency" => JsonValue.Create("EUR"),
                _ => null, // one word of a few: the tables above change these
            },
        };
        if (other is null)
            return false;
        if (path[^1] is int place)
            at[place] = other;
        else
            at[(string)path[^1]] = other;
        return true;
    }

    private static IReadOnlyList<string> Between<T>(string subject, string before, string after) where T : class =>
        DocumentDifferences.Between(subject, Read<T>(before), Read<T>(after), "USD");

    private static T Read<T>(string json) => JsonSerializer.Deserialize<T>(json, WireJson.Options)!;

    private static string Profile(string expenses) =>
        $$"""{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{{expenses}}]}""";

    private static string Replaced(string text, string before, string after)
    {
        Assert.Contains(before, text, StringComparison.Ordinal);
        return text.Replace(before, after, StringComparison.Ordinal);
    }

    /// <summary>The text with single spaces, so that a piece of it can span lines.</summary>
    private static string Spaced(string text, int spaces) => spaces == 0 ? text
        : string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
