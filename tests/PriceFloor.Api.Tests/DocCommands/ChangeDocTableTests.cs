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
        DocTableTests.Holds(Sure, ["number", "low", "likely", "high", "floor at low", "floor at high", "share", "if it were known"],
            answer.GetProperty("numbers").EnumerateArray().Select(one => new[]
            {
                $"`{one.GetProperty("name").GetString()!.Split('#')[1]}`", Raw(one, "low"), Raw(one, "likely"), Raw(one, "high"),
                Raw(one.GetProperty("floor").GetProperty("swing"), 0), Raw(one.GetProperty("floor").GetProperty("swing"), 1),
                Raw(one.GetProperty("floor"), "share"), one.TryGetProperty("pinned", out var known) ? known.GetRawText() : "",
            }));
    }

    /// <summary>The answer to the first request of a page to an address.</summary>
    private static async Task<Answer> Asked(Studio studio, string address, string page)
    {
        var request = Text(page)[Text(page).IndexOf(address + " ", StringComparison.Ordinal)..];
        request = request[(request.IndexOf("-d '", StringComparison.Ordinal) + 4)..];
        var answer = await studio.Post(address, request[..request.IndexOf('\'', StringComparison.Ordinal)]);
        Assert.True(answer.Status == 200, answer.Text);
        return answer;
    }

    private static string Text(string page) => File.ReadAllText(Repository.File(page));

    private static string[] YearRow(string name, JsonElement year, string fallen) =>
        [name, Raw(year, "benchMustEarn"), Raw(year, "benchHours"), Raw(year, "perBenchHour"), fallen];

    private static string Raw(JsonElement of, string name) => of.GetProperty(name).GetRawText();

    private static string Raw(JsonElement of, int index) => of[index].GetRawText();
}
