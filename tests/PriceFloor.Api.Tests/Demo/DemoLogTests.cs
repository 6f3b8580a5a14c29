using System.Text.Json;
using PriceFloor.Api.Tests.DocCommands;
using Xunit;

namespace PriceFloor.Api.Tests.Demo;

/// <summary>The invented studio's year of sales and its bench book: every question to the log has something worth reading.</summary>
public sealed class DemoLogTests
{
    private const string To = "to=2025-12-31";

    [Fact]
    public async Task Every_question_to_the_log_is_answered()
    {
        await using var studio = DocTableTests.DemoFilled();
        var design = (await studio.Get($"/v1/designs/RB-014/evidence?{To}")).Json;
        Assert.Equal("stored-too-low", Found(design, "#/making/steps/0/handsOnMinutes"));
        Assert.True(design.GetProperty("floor").GetProperty("asFound").GetDecimal() > design.GetProperty("floor").GetProperty("stored").GetDecimal());
        var whale = (await studio.Get($"/v1/designs/FG-003/evidence?{To}")).Json;
        Assert.InRange(whale.GetProperty("learning").GetProperty("rate").GetDecimal(), 0.85m, 0.95m);
        Assert.Equal("agrees", Found((await studio.Get($"/v1/channels/web/evidence?{To}")).Json, "#/fees"));
        Assert.Equal("agrees", Found((await studio.Get($"/v1/channels/fair/evidence?{To}")).Json, "#/stall/pieces"));
        Assert.Equal("agrees", Found((await studio.Get($"/v1/profiles/main/evidence?{To}")).Json, "#/calendar/benchShare"));
        var shelf = (await studio.Get($"/v1/shelf?profile=main&{To}")).Json;
        Assert.Equal(15, shelf.GetProperty("items").GetArrayLength());
        Assert.Superset(new HashSet<string?> { "keep", "raise", "wait" }, shelf.GetProperty("items").EnumerateArray()
            .Select(item => item.GetProperty("decision").GetString()).ToHashSet());
        Assert.Equal("shelf", (await studio.Get($"/v1/designs/RB-014/demand?channel=web&{To}")).Json.GetProperty("sensitivity").GetProperty("from")
            .GetString());
        var stock = (await studio.Get("/v1/stock?to=2026-03-31")).Json;
        Assert.Contains("undercuts-gallery", stock.GetProperty("warnings").EnumerateArray().Select(one => one.GetProperty("code").GetString()));
        Assert.Contains(stock.GetProperty("items").EnumerateArray(), item => item.GetProperty("ways")[0].GetProperty("way").GetString() == "second");
    }

    private static string? Found(JsonElement answer, string pointer) => answer.GetProperty("findings").EnumerateArray()
        .Single(finding => finding.GetProperty("pointer").GetString() == pointer).GetProperty("says").GetString();
}
