using Xunit;

namespace PriceFloor.Api.Tests.Designs;

public sealed class AliasTests
{
    private const string Named = """{"profile":"main","making":{"piecesPerDay":4},"aliases":["RB-014-BLUE","River drop / blue, 3 cm"]}""";

    [Fact]
    public async Task A_shops_own_name_leads_to_the_design_in_bodies_and_nowhere_else()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        Assert.Equal(200, (await studio.Put("/v1/designs/RB-014", Named)).Status);
        var checkedPrice = (await studio.Post("/v1/price-checks", """{"sku":"River drop / blue, 3 cm","channel":"web","price":58}""")).Json;
        Assert.Equal("RB-014@2", checkedPrice.GetProperty("basis").GetProperty("design").GetString());
        Assert.Equal(200,
            (await studio.Post("/v1/year-plans", """{"profile":"main","lines":[{"sku":"RB-014-BLUE","channel":"web","units":3}]}""")).Status);
        (await studio.Get("/v1/price-checks?sku=RB-014-BLUE&channel=web&price=58")).IsProblem(422, "unknown-reference");
        (await studio.Get("/v1/designs/RB-014-BLUE")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task No_name_leads_to_two_designs()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Put("/v1/designs/RB-014", Named);
        async Task Clashes(string sku, string aliases)
        {
            var answer = (await studio.Put($"/v1/designs/{sku}", $$"""{"profile":"main","making":{"piecesPerDay":4},"aliases":[{{aliases}}]}"""))
                .IsProblem(409, "in-use");
            Assert.Equal("""[{"kind":"design","key":"RB-014"}]""", answer.Json.GetProperty("usedBy").GetRawText());
            Assert.Contains("\"RB-014\"", answer.Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
        }

        await Clashes("OTHER", "\"RB-014-BLUE\"");
        await Clashes("OTHER", "\"RB-014\"");
        await Clashes("RB-014-BLUE", "");
        Assert.Equal(200, (await studio.Put("/v1/designs/RB-014", Named.Replace("3 cm", "4 cm", StringComparison.Ordinal))).Status);
        Assert.Equal(201, (await studio.Put("/v1/designs/OTHER", Named.Replace("RB-014-BLUE", "River drop / blue, 3 cm", StringComparison.Ordinal)
            .Replace(",\"River drop / blue, 3 cm\"]", "]", StringComparison.Ordinal))).Status);
        await studio.Delete("/v1/designs/RB-014");
        Assert.Equal(201, (await studio.Put("/v1/designs/RB-014-BLUE", Sample.Pendant)).Status);
        // A hidden design comes back only if its names are still free.
        (await studio.Put("/v1/designs/RB-014", Named)).IsProblem(409, "in-use");
    }

    [Fact]
    public async Task An_alias_has_1_to_128_printable_characters()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        async Task<Answer> Put(string alias) =>
            await studio.Put("/v1/designs/RB-014", $$"""{"profile":"main","making":{"piecesPerDay":4},"aliases":["{{alias}}"]}""");
        Assert.Equal(200, (await Put(new string('x', 128))).Status);
        Assert.Equal(["#/aliases/0"], (await Put(new string('x', 129))).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["#/aliases/0"], (await Put("")).IsProblem(422, "invalid-input").Pointers);
        Assert.Equal(["control-character"], (await Put("a\\u0007b")).IsProblem(422, "invalid-input").Codes);
        Assert.Equal(["duplicate"], (await Put("same\",\"same")).IsProblem(422, "invalid-input").Codes);
        Assert.Equal(200, (await studio.Post("/v1/price-checks", $$"""{"sku":"{{new string('x', 128)}}","channel":"web","price":58}""")).Status);
        Assert.Equal(["#/sku"], (await studio.Post("/v1/price-checks", $$"""{"sku":"{{new string('x', 129)}}","channel":"web","price":58}"""))
            .IsProblem(422, "invalid-input").Pointers);
    }

    [Fact]
    public async Task A_reader_learns_of_a_key_that_differs_only_by_case()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        const string Body = """{"sku":"rb-014","channel":"web","price":58}""";
        Assert.Contains("there is \\\"RB-014\\\"", (await studio.Post("/v1/price-checks", Body)).Text, StringComparison.Ordinal);
        using var shop = await studio.ClientFor("check");
        var told = await studio.Post("/v1/price-checks", Body, shop);
        told.IsProblem(422, "unknown-reference");
        Assert.DoesNotContain("RB-014", told.Text, StringComparison.Ordinal);
    }
}
