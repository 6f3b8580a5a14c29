using Xunit;

namespace PriceFloor.Api.Tests.DesignBudgets;

public sealed class DesignBudgetTests
{
    [Fact]
    public async Task A_price_gives_minutes_for_materials_and_materials_for_minutes_on_every_channel()
    {
        // 58.00 nets 58 - 1.392 - 0.25 = 56.358. Less 6.00: 50.358 / 30.00 = 100.716 min. At 100 min, 50.00: 6.358 are left.
        // In a gallery that keeps 40 %: 34.80 net, less 6.00: 57.6 min.
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/gallery", """{"sells":"retail","currency":"USD","shopShare":0.4}""");
        await studio.Has("/v1/channels/abroad", """{"sells":"retail","currency":"EUR"}""");
        var minutes = (await studio.Post("/v1/design-budgets", """{"profile":"main","channel":"web","price":58,"materials":6}""")).Json;
        Assert.Equal(("56.36", "100.71", "6.00", "30.00"),
            (Raw(minutes, "netProceeds"), Raw(minutes, "minutes"), Raw(minutes, "materials"), Raw(minutes, "perBenchHour")));
        Assert.Equal(["currency-mismatch", "57.60", "100.71"], minutes.GetProperty("channels").EnumerateArray()
            .Select(row => row.TryGetProperty("reason", out var reason) ? reason.GetString() : Raw(row, "minutes")));
        var materials = (await studio.Post("/v1/design-budgets", """{"profile":"main","channel":"web","price":58.00,"minutes":100.0}""")).Json;
        Assert.Equal(("6.35", "100"), (Raw(materials, "materials"), Raw(materials, "minutes")));
    }

    [Fact]
    public async Task What_cannot_be_has_no_figure_but_a_reason()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answer = (await studio.Post("/v1/design-budgets", """{"profile":"main","channel":"web","price":58,"materials":60}""")).Json;
        Assert.Equal(("null", "\"price-below-materials\""), (Raw(answer, "minutes"), Raw(answer, "reason")));
    }

    [Fact]
    public async Task The_workings_lead_to_the_minutes()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answer = await studio.Post("/v1/design-budgets?workings=true", """{"profile":"main","channel":"web","price":58,"materials":6}""");
        var last = answer.Json.GetProperty("workings").EnumerateArray().TakeLast(2).Select(line => line.GetRawText());
        Assert.Equal(["""{"symbol":"room","label":"left of the net for bench time","formula":"net - 6","value":50.358}""",
            """{"symbol":"minutes","label":"bench minutes that it pays for","formula":"room / perBenchHour * 60","value":100.716}"""], last);
    }

    [Fact]
    public async Task Bad_input_is_named()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/abroad", """{"sells":"retail","currency":"EUR"}""");
        async Task<Answer> Ask(string rest) => await studio.Post("/v1/design-budgets", $$"""{"profile":"main","channel":"web",{{rest}}}""");
        Assert.Equal(["exactly-one"], (await Ask("\"price\":58")).IsProblem(422, "invalid-input").Codes);
        Assert.Equal(["exactly-one"], (await Ask("\"price\":58,\"minutes\":1,\"materials\":1")).IsProblem(422, "invalid-input").Codes);
        Assert.Equal(["#/minutes"], (await Ask("\"price\":58,\"minutes\":0")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["#/price"], (await Ask("\"price\":58.001,\"minutes\":10")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["#/channel", "#/profile"], (await studio.Post("/v1/design-budgets", """{"profile":"x","channel":"y","price":58,"minutes":1}"""))
            .IsProblem(422, "unknown-reference").Pointers);
        (await studio.Post("/v1/design-budgets", """{"profile":"main","channel":"abroad","price":58,"minutes":1}"""))
            .IsProblem(422, "currency-mismatch");
    }

    private static string Raw(System.Text.Json.JsonElement json, string name) => json.GetProperty(name).GetRawText();
}
