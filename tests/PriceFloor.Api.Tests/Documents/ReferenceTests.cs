using Xunit;

namespace PriceFloor.Api.Tests.Documents;

public sealed class ReferenceTests
{
    [Fact]
    public async Task A_design_names_a_profile_and_materials_that_exist()
    {
        await using var studio = new Studio();
        Assert.Equal(["#/profile"], (await studio.Put("/v1/designs/A", Sample.Pendant)).IsProblem(422, "unknown-reference").Pointers);
        await studio.Has("/v1/profiles/main", Sample.Rich);
        var unknown = await studio.Put("/v1/designs/A",
            """{"profile":"main","making":{"piecesPerDay":4},"materials":[{"material":"clear-rod","quantity":1},{"material":"Clear-rod","quantity":1}]}""");
        Assert.Equal(["#/materials/1/material"], unknown.IsProblem(422, "unknown-reference").Pointers);
        (await studio.Get("/v1/designs/A")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task What_others_use_can_be_neither_deleted_nor_narrowed()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.Rich);
        await studio.Has("/v1/designs/RB-014", Sample.RichDesign);
        await studio.Has("/v1/channels/web", Sample.RichChannel);
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":58}""");

        var used = await studio.Delete("/v1/profiles/main");
        Assert.Equal("""[{"kind":"design","key":"RB-014"}]""", used.IsProblem(409, "in-use").Json.GetProperty("usedBy").GetRawText());
        Assert.Equal("""[{"kind":"price","key":"RB-014/web"}]""",
            (await studio.Delete("/v1/channels/web")).IsProblem(409, "in-use").Json.GetProperty("usedBy").GetRawText());
        (await studio.Put("/v1/profiles/main", Sample.Rich.Replace("{ \"material\": \"kiln-kwh\", \"unit\": \"kWh\", \"price\": 0.21 }",
            "{ \"material\": \"frit\", \"price\": 1 }", StringComparison.Ordinal))).IsProblem(409, "in-use");
        (await studio.Put("/v1/profiles/main", Sample.Rich.Replace("USD", "EUR", StringComparison.Ordinal))).IsProblem(409, "in-use");
        (await studio.Put("/v1/channels/web", Sample.RichChannel.Replace("USD", "EUR", StringComparison.Ordinal))).IsProblem(409, "in-use");

        // A price of a material may change, and an unused one may be removed.
        Assert.Equal("\"2\"", (await studio.Put("/v1/profiles/main", Sample.Rich.Replace("38.00", "39.00", StringComparison.Ordinal)))["ETag"]);
        await studio.Has("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":4}}""");
        Assert.Equal("\"3\"",
            (await studio.Put("/v1/profiles/main", Sample.Rich.Replace("{ \"material\": \"kiln-kwh\", \"unit\": \"kWh\", \"price\": 0.21 }",
                "{ \"material\": \"frit\", \"price\": 1 }", StringComparison.Ordinal)))["ETag"]);
    }

    [Fact]
    public async Task A_deleted_design_takes_its_listed_prices_along()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        Assert.Equal(204, (await studio.Delete("/v1/designs/RB-014")).Status);
        (await studio.Get("/v1/designs/RB-014/prices/web")).IsProblem(404, "not-found");
        (await studio.Get("/v1/designs/RB-014/prices")).IsProblem(404, "not-found");
        Assert.Equal(2, (await studio.Get("/v1/designs/RB-014/prices/web/revisions")).Json.GetProperty("items").GetArrayLength());
        Assert.Equal(204, (await studio.Delete("/v1/channels/web")).Status);
        Assert.Equal(204, (await studio.Delete("/v1/profiles/main")).Status);
    }

    [Fact]
    public async Task A_listed_price_needs_its_design_its_channel_and_the_channels_currency()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/channels/tokyo", """{"sells":"retail","currency":"JPY"}""");
        (await studio.Put("/v1/designs/NOPE/prices/web", """{"price":1}""")).IsProblem(404, "not-found");
        (await studio.Put("/v1/designs/RB-014/prices/nope", """{"price":1}""")).IsProblem(404, "not-found");
        Assert.Equal(["too-many-decimals"],
            (await studio.Put("/v1/designs/RB-014/prices/tokyo", """{"price":6000.5}""")).IsProblem(422, "invalid-input").Codes);
        (await studio.Put("/v1/designs/RB-014/prices/web", """{"price":58,"currency":"EUR"}""")).IsProblem(422, "currency-mismatch");
        Assert.EndsWith("\"price\":6000,\"currency\":\"JPY\"}", (await studio.Put("/v1/designs/RB-014/prices/tokyo", """{"price":6000.0}""")).Text,
            StringComparison.Ordinal);
        Assert.Equal(2, (await studio.Get("/v1/designs/RB-014/prices")).Json.GetProperty("items").GetArrayLength());
    }
}
