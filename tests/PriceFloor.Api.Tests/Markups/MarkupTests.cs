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
        Assert.Equal("""{"cost":48.00,"price":120.00,"markup":1.5,"margin":0.6,"profit":72.00,"chain":[{"name":"dealer","cost":48.00,"price":60.00,"markup":0.25,"margin":0.2,"profit":12.00},{"name":"shop","cost":60.00,"price":120.00,"markup":1,"margin":0.5,"profit":60.00}]}""", back.Text);
        Assert.Equal(back.Text, (await studio.Post("/v1/markups", """{"cost":48,"chain":[{"name":"dealer","markup":0.25},{"name":"shop","multiple":2}]}""")).Text);
    }

    [Fact]
    public async Task Tax_is_never_part_of_a_margin()
    {
        await using var studio = new Studio();
        Assert.Equal("""{"cost":50.00,"price":100.00,"markup":1,"margin":0.5,"profit":50.00,"priceWithTax":120.00}""", (await studio.Post("/v1/markups", """{"cost":50,"price":120,"salesTax":{"rate":0.2,"included":true}}""")).Text);
        Assert.Equal("""{"cost":50.00,"price":100.00,"markup":1,"margin":0.5,"profit":50.00,"priceWithTax":120.00}""", (await studio.Post("/v1/markups", """{"cost":50,"price":100,"salesTax":{"rate":0.2}}""")).Text);
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
