using System.Text.Json;
using PriceFloor.Api.Tests.Conventions;
using Xunit;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>The pages about changes ask the invented studio, and their tables are what it answers to the very requests on the page.</summary>
public sealed class ChangeDocTableTests
{
    private const string Review = "docs/the-january-price-review.md", Sure = "docs/how-sure-is-my-price.md";
    private static readonly string[] s_shares = ["tenth", "middle", "nineTenths"];

    [Fact]
    public async Task The_January_price_review_is_what_the_service_answers()
    {
        await using var studio = DocTableTests.DemoFilled();
        var answer = (await Asked(studio, "/v1/what-ifs", Review)).Json;
        var scenarios = answer.GetProperty("scenarios").EnumerateArray().ToList();
        DocTableTests.Holds(Review, ["year", "the hours must bring in", "bench hours", "for each hour", "verdicts that fall"],
            [
                YearRow("now", answer.GetProperty("now"), ""),
                .. scenarios.Select(one => YearRow(one.GetProperty("name").GetString()!, one, Raw(one, "verdictsFallen"))),
                YearRow("all three", answer.GetProperty("combined"), Raw(answer.GetProperty("combined"), "verdictsFallen")),
            ]);
        DocTableTests.Holds(Review, ["price", "listed", "now", "then", "suggested"], answer.GetProperty("list").EnumerateArray()
            .Where(line => line.GetProperty("combined").GetProperty("suggestedPrice").ValueKind == JsonValueKind.Number).Select(line => new[]
            {
                $"{line.GetProperty("sku").GetString()} on {line.GetProperty("channel").GetString()}", Raw(line, "listedPrice"),
                line.GetProperty("now").GetProperty("verdict").GetString()!, line.GetProperty("combined").GetProperty("verdict").GetString()!,
                Raw(line.GetProperty("combined"), "suggestedPrice"),
            }));
        var suggested = answer.GetProperty("list").EnumerateArray()
            .Single(line => line.GetProperty("sku").GetString() == "GB-001" && line.GetProperty("channel").GetString() == "wholesale")
            .GetProperty("combined");
        Assert.Contains($"\"price\": {Raw(suggested, "suggestedPrice")} }}'", Text(Review), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_becomes_of_the_plan_is_what_the_service_answers()
    {
        await using var studio = DocTableTests.DemoFilled();
        var answer = (await Asked(studio, "/v1/what-ifs", Review, "this-year")).Json;
        var scenarios = answer.GetProperty("scenarios").EnumerateArray().ToList();
        var all = answer.GetProperty("combined");
        List<(string Name, JsonElement One)> columns =
            [.. scenarios.Select(one => (one.GetProperty("name").GetString()!, one)), ("all three", all)];
        DocTableTests.Holds(Review, ["plan", "closes", "its pieces leave", "it is short by", "lowest cash"],
            columns.Prepend((Name: "now", One: answer.GetProperty("now"))).Select(column => PlanRow(column.Name, column.One.GetProperty("plan"))));
        DocTableTests.Holds(Review, ["way", "how much"], all.GetProperty("remedies").EnumerateArray().Select(one => new[]
        {
            $"`{one.GetProperty("way").GetString()}`",
            one.GetProperty("value").ValueKind == JsonValueKind.Null ? one.GetProperty("reason").GetString()! : Raw(one, "value"),
        }));
        DocTableTests.Holds(Review, ["holding prices costs", "a year", "from 1 April", "shops, their notice of 8 weeks", "in two steps"],
            columns.Select(column => (column.Name, Held: column.One.GetProperty("held"))).Select(column => new[]
            {
                column.Name, Raw(column.Held, "year"), Raw(column.Held, "fromOn"), Raw(column.Held.GetProperty("byNotice")[0], "cost"),
                Raw(column.Held, "phased"),
            }));
        var (first, last) = (all.GetProperty("phased")[0].GetProperty("prices"), all.GetProperty("phased")[1].GetProperty("prices"));
        DocTableTests.Holds(Review, ["price", "from 1 April", "from 1 October"], first.EnumerateArray().Zip(last.EnumerateArray()).Select(price =>
            new[]
            {
                $"{price.First.GetProperty("sku").GetString()} on {price.First.GetProperty("channel").GetString()}", Raw(price.First, "price"),
                Raw(price.Second, "price"),
            }));
    }

    [Fact]
    public async Task How_sure_a_year_is_is_what_the_service_answers()
    {
        await using var studio = DocTableTests.DemoFilled();
        var answer = (await Asked(studio, "/v1/sureness", Sure, "this-year")).Json;
        var plan = answer.GetProperty("plan");
        string Spread(string name) => string.Join(", ", s_shares.Select(share => Raw(plan.GetProperty(name), share)));
        DocTableTests.Holds(Sure, ["asked of these ranges", "the plan"],
            [
                ["`closes`", Raw(plan, "closes")], ["`withinHours`", Raw(plan, "withinHours")],
                ["`surplusBeforeTax`: tenth, middle, nine tenths", Spread("surplusBeforeTax")],
                ["`lowestCash`: tenth, middle, nine tenths", Spread("lowestCash")], ["`riseToClose`, eight times in ten", Raw(plan, "riseToClose")],
            ]);
        DocTableTests.Holds(Sure, ["number", "surplus at low", "surplus at high", "share"],
            answer.GetProperty("numbers").EnumerateArray().Select(one => (Name: one.GetProperty("name").GetString()!, Plan: one.GetProperty("plan")))
                .Select(one => new[]
                {
                    $"`{one.Name.Split('#')[1]}`", Raw(one.Plan.GetProperty("swing"), 0), Raw(one.Plan.GetProperty("swing"), 1),
                    Raw(one.Plan, "share"),
                }));
    }

    [Fact]
    public async Task How_sure_a_price_is_is_what_the_service_answers()
    {
        await using var studio = DocTableTests.DemoFilled();
        var answer = (await Asked(studio, "/v1/sureness", Sure)).Json;
        var (floor, hour) = (answer.GetProperty("floor"), answer.GetProperty("perBenchHour"));
        DocTableTests.Holds(Sure, ["asked of these ranges", "the floor", "for each hour"],
            [
                .. s_shares.Select(share => new[] { $"`{share}`", Raw(floor, share), Raw(hour, share) }),
                ["`floorPriceSure`, nine times in ten", Raw(answer, "floorPriceSure"), ""],
                ["`holds`, of the listed 58.00", Raw(answer, "holds"), ""],
            ]);
        Assert.Contains($"\"price\": {Raw(answer, "floorPriceSure")} }}'", Text(Sure), StringComparison.Ordinal);
        DocTableTests.Holds(Sure, ["number", "low", "likely", "high", "floor at low", "floor at high", "share", "if it were known"],
            answer.GetProperty("numbers").EnumerateArray().Select(one => new[]
            {
                $"`{one.GetProperty("name").GetString()!.Split('#')[1]}`", Raw(one, "low"), Raw(one, "likely"), Raw(one, "high"),
                Raw(one.GetProperty("floor").GetProperty("swing"), 0), Raw(one.GetProperty("floor").GetProperty("swing"), 1),
                Raw(one.GetProperty("floor"), "share"), one.TryGetProperty("pinned", out var known) ? known.GetRawText() : "",
            }));
    }

    /// <summary>The answer to the first request of a page to an address that names something, with the year of the studio.</summary>
    internal static async Task<Answer> Asked(Studio studio, string address, string page, string naming = "")
    {
        var year = $"{studio.Clock.GetUtcNow().Year}";
        var request = Text(page).Split(address + " ").Skip(1)
            .Select(part => part[..part.IndexOf('\n', StringComparison.Ordinal)].EndsWith("<<END", StringComparison.Ordinal)
                ? Between(part, "<<END\n", "\nEND") : Between(part, "-d '", "'"))
            .First(part => part.Contains(naming, StringComparison.Ordinal)).Replace("$(date -u +%Y)", year, StringComparison.Ordinal);
        var answer = await studio.Post(address, request);
        Assert.True(answer.Status == 200, answer.Text);
        return answer;
    }

    private static string Between(string text, string before, string after)
    {
        var rest = text[(text.IndexOf(before, StringComparison.Ordinal) + before.Length)..];
        return rest[..rest.IndexOf(after, StringComparison.Ordinal)];
    }

    private static string[] PlanRow(string name, JsonElement plan) =>
        [name, plan.GetProperty("closes").GetBoolean() ? "yes" : "no", Raw(plan, "contribution"), Raw(plan, "shortfall"),
            Raw(plan.GetProperty("lowestCash"), "amount")];

    private static string Text(string page) => File.ReadAllText(Repository.File(page));

    private static string[] YearRow(string name, JsonElement year, string fallen) =>
        [name, Raw(year, "benchMustEarn"), Raw(year, "benchHours"), Raw(year, "perBenchHour"), fallen];

    private static string Raw(JsonElement of, string name) => of.GetProperty(name).GetRawText();

    private static string Raw(JsonElement of, int index) => of[index].GetRawText();
}
