using Xunit;

namespace PriceFloor.Api.Tests.Markups;

public sealed class MarkupTests
{
    [Theory]
    [InlineData("""{"cost":50,"price":100}""")]
    [InlineData("""{"cost":50,"markup":1}""")]
    [InlineData("""{"cost":50,"margin":0.5}""")]
    [InlineData("""{"cost":50,"profit":50}""")]
    [InlineData("""{"price":100,"markup":1}""")]
    [InlineData("""{"price":100,"margin":0.5}""")]
    [InlineData("""{"price":100,"profit":50}""")]
    [InlineData("""{"profit":50,"markup":1}""")]
    [InlineData("""{"profit":50,"margin":0.5}""")]
    [InlineData("""{"cost":50,"price":100,"markup":1,"margin":0.5,"profit":50}""")]
    public async Task Any_two_give_the_rest(string body)
    {
        await using var studio = new Studio();
        Assert.Equal("""{"cost":50.00,"price":100.00,"markup":1,"margin":0.5,"profit":50.00}""", (await studio.Post("/v1/markups", body)).Text);
    }

    [Theory]
    [InlineData("""{"markup":1,"margin":0.5}""", "undetermined")]
    [InlineData("""{"cost":8,"price":10,"margin":0.25}""", "contradictory")]
    [InlineData("""{"cost":0,"price":10,"markup":1}""", "contradictory")]
    [InlineData("""{"cost":1000000000000,"chain":[{"markup":1000000},{"markup":1000000},{"markup":1000000}]}""", "too-large")]
    [InlineData("""{"discounts":{"net":1,"rates":[0.9999,0.9999,0.9999,0.9999]}}""", "too-large")]
    public async Task What_has_no_answer_says_why(string body, string reason)
    {
        await using var studio = new Studio();
        Assert.Equal(reason, (await studio.Post("/v1/markups", body)).IsProblem(422, "cannot-compute").Json.GetProperty("reason").GetString());
    }

    [Fact]
    public async Task A_chain_leads_forward_and_back()
    {
        await using var studio = new Studio();
        var back = await studio.Post("/v1/markups", """{"price":120,"chain":[{"name":"dealer","multiple":1.25},{"name":"shop","margin":0.5}]}""");
        Assert.Equal(
            """{"cost":48.00,"price":120.00,"markup":1.5,"margin":0.6,"profit":72.00,"chain":[{"name":"dealer","cost":48.00,"price":60.00,"markup":0.25,"margin":0.2,"profit":12.00},{"name":"shop","cost":60.00,"price":120.00,"markup":1,"margin":0.5,"profit":60.00}]}""",
            back.Text);
        Assert.Equal(back.Text,
            (await studio.Post("/v1/markups", """{"cost":48,"chain":[{"name":"dealer","markup":0.25},{"name":"shop","multiple":2}]}""")).Text);
    }

    [Fact]
    public async Task A_share_of_nothing_is_null()
    {
        await using var studio = new Studio();
        Assert.Equal("""{"cost":0.00,"price":10.00,"markup":null,"margin":1,"profit":10.00}""",
            (await studio.Post("/v1/markups", """{"cost":0,"price":10}""")).Text);
    }

    [Fact]
    public async Task Tax_is_never_part_of_a_margin()
    {
        await using var studio = new Studio();
        Assert.Equal("""{"cost":50.00,"price":100.00,"markup":1,"margin":0.5,"profit":50.00,"priceWithTax":120.00}""",
            (await studio.Post("/v1/markups", """{"cost":50,"price":120,"salesTax":{"rate":0.2,"included":true}}""")).Text);
        Assert.Equal("""{"cost":50.00,"price":100.00,"markup":1,"margin":0.5,"profit":50.00,"priceWithTax":120.00}""",
            (await studio.Post("/v1/markups", """{"cost":50,"price":100,"salesTax":{"rate":0.2}}""")).Text);
    }

    [Fact]
    public async Task The_workings_are_there_if_requested()
    {
        // 140 less 20 % leaves 112, less 15 % 95.20.
        await using var studio = new Studio();
        var answer = await studio.Post("/v1/markups?workings=true&asOf=2027-01-01T00:00:00Z", """{"discounts":{"list":140,"rates":[0.2,0.15]}}""");
        Assert.StartsWith("""{"discounts":{"list":140.00,"net":95.20,"discount":44.80,"factor":0.68,"single":0.32},"workings":[""", answer.Text,
            StringComparison.Ordinal);
        Assert.EndsWith(
            """ "workings":[{"symbol":"factor","label":"what the discounts leave of 1","formula":"(1 - 0.2) * (1 - 0.15)","value":0.68},{"symbol":"single","label":"the one discount that comes to the same","formula":"1 - factor","value":0.32},{"symbol":"list","label":"the list price","formula":"140","value":140},{"symbol":"net","label":"what is paid","formula":"list * factor","value":95.2},{"symbol":"discount","label":"list less net","formula":"list - net","value":44.8}]}""".TrimStart(),
            answer.Text, StringComparison.Ordinal);
        var both = await studio.Post("/v1/markups?workings=true",
            """{"cost":48,"salesTax":{"rate":0.2},"chain":[{"name":"dealer","markup":0.25}],"discounts":{"net":68,"rates":[0.2,0.15]}}""");
        Assert.Equal(["cost", "price1", "profit1", "markup1", "margin1", "price", "profit", "markup", "margin", "priceWithTax", "factor", "single",
            "net", "list", "discount"], both.Json.GetProperty("workings").EnumerateArray().Select(line => line.GetProperty("symbol").GetString()));
        Assert.DoesNotContain("workings", (await studio.Post("/v1/markups", """{"cost":50,"price":100}""")).Text, StringComparison.Ordinal);
        Assert.Equal(["workings"],
            (await studio.Post("/v1/markups?workings=yes", """{"cost":50,"price":100}""")).IsProblem(422, "invalid-input").Pointers);
    }

    [Theory]
    [InlineData(
        """{"price":1000000000000,"chain":[{"margin":0.9999},{"margin":0.9999},{"margin":0.9999},{"margin":0.9999},{"margin":0.9999},{"margin":0.9999},{"margin":0.9999},{"margin":0.9999},{"margin":0.9999}]}""")]
    [InlineData("""{"cost":1000000000000,"salesTax":{"rate":1},"chain":[{"markup":1000000},{"markup":1000000},{"markup":49999}]}""")]
    public async Task A_figure_past_exactness_is_a_refusal_and_no_fault_of_ours(string body)
    {
        await using var studio = new Studio();
        Assert.Equal("too-large",
            (await studio.Post("/v1/markups?workings=true", body)).IsProblem(422, "cannot-compute").Json.GetProperty("reason").GetString());
    }

    [Theory]
    [InlineData("""{"cost":1}""", "#", "required")]
    [InlineData("""{}""", "#", "required")]
    [InlineData("""{"cost":1,"price":2,"chain":[{"markup":1}]}""", "#/chain", "exactly-one")]
    [InlineData("""{"cost":1,"chain":[{"markup":1,"margin":0.5}]}""", "#/chain/0", "exactly-one")]
    [InlineData("""{"cost":1,"profit":1,"chain":[{"markup":1}]}""", "#/profit", "unexpected")]
    [InlineData("""{"discounts":{"rates":[0.1]}}""", "#/discounts", "exactly-one")]
    [InlineData("""{"price":1,"margin":1.1}""", "#/margin", "out-of-range")]
    [InlineData("""{"price":1,"cost":1,"currency":"ABC"}""", "#/currency", "unknown-currency")]
    public async Task Too_little_or_too_much_is_refused(string body, string pointer, string code)
    {
        await using var studio = new Studio();
        var answer = (await studio.Post("/v1/markups", body)).IsProblem(422, "invalid-input");
        Assert.Contains((pointer, code), answer.Pointers.Zip(answer.Codes));
    }
}
