using System.Text.Json;
using Xunit;

namespace PriceFloor.Api.Tests.DocCommands;

/// <summary>The tables of docs/what-the-bench-book-knows.md are what the demo studio is answered.</summary>
public sealed class BenchBookPageTests
{
    private const string Page = "docs/what-the-bench-book-knows.md";

    [Fact]
    public async Task What_the_log_says_of_the_pendant_is_what_the_service_answers()
    {
        await using var studio = DocTableTests.DemoFilled();
        var answer = (await studio.Get("/v1/designs/RB-014/evidence?to=2025-12-31")).Json;
        DocTableTests.Holds(Page, ["field", "stored", "found", "nine times in ten", "of", "floor with it alone"],
            answer.GetProperty("findings").EnumerateArray().Select(finding => new[]
            {
                $"`{Text(finding, "pointer")[2..]}`", Text(finding, "stored"), Text(finding, "value"),
                $"{Text(finding, "low")} to {Text(finding, "high")}", $"{Text(finding, "observations")} {Text(finding, "of")}",
                Text(finding, "floorWith"),
            }));
        // What the page says in words.
        var demand = (await studio.Get("/v1/designs/RB-014/demand?channel=web&to=2025-12-31")).Json;
        Assert.Equal(("35", "52.00", "58.00"), (Text(demand.GetProperty("rate"), "orders"), Text(demand.GetProperty("changePaid"), "before"),
            Text(demand.GetProperty("changePaid"), "after")));
        Assert.True(demand.GetProperty("changePaid").GetProperty("lost").GetDecimal() < 0); // more were sold, not fewer
        var (few, likely, many) = (Orders("few"), Orders("likely"), Orders("many"));
        Assert.InRange(few / likely, 0.4m, 0.65m);
        Assert.InRange(many / likely, 1.35m, 1.6m);

        decimal Orders(string name) => demand.GetProperty("expected").GetProperty(name).GetDecimal();
    }

    [Fact]
    public async Task All_designs_and_the_goblets_are_what_the_service_answers()
    {
        await using var studio = DocTableTests.DemoFilled();
        var shelf = (await studio.Get("/v1/shelf?profile=main&to=2025-12-31")).Json;
        var items = shelf.GetProperty("items").EnumerateArray().ToList();
        DocTableTests.Holds(Page, ["design", "sold", "earned an hour", "from", "to", "word"], items.Select(item => new[]
        {
            $"{Text(item, "name")} ({Text(item, "sku")})", Text(item, "sold"), Text(item, "earned"), Text(item, "earnedLow"),
            Text(item, "earnedHigh"), $"`{Text(item, "decision")}`",
        }));
        var pendant = items.Single(item => Text(item, "sku") == "RB-014");
        Assert.True(pendant.GetProperty("shareOfHours").GetDecimal() > pendant.GetProperty("shareOfContribution").GetDecimal());
        var goblets = (await studio.Get("/v1/stock?olderThan=365&to=2026-03-31")).Json.GetProperty("items").EnumerateArray()
            .Single(item => Text(item, "sku") == "GB-001");
        DocTableTests.Holds(Page, ["way", "brings", "price", "chance to sell"], goblets.GetProperty("ways").EnumerateArray().Select(way => new[]
        {
            $"`{Text(way, "way")}`", Text(way, "worth"), Text(way, "price"), Text(way, "chance"),
        }));
    }

    private static string Text(JsonElement json, string name) => !json.TryGetProperty(name, out var value) ? ""
        : value.ValueKind switch
        {
            JsonValueKind.Null => "",
            JsonValueKind.String => value.GetString()!,
            _ => value.GetRawText(),
        };
}
