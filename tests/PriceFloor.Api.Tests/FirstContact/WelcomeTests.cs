using Microsoft.AspNetCore.Hosting;
using Xunit;

namespace PriceFloor.Api.Tests.FirstContact;

public sealed class WelcomeTests
{
    private const string Browser = "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8";

    [Fact]
    public async Task A_program_that_finds_the_address_learns_what_this_is_and_where_to_read_on()
    {
        await using var studio = new Studio();
        var answer = await studio.Get("/", studio.ClientWith(null));
        Assert.Equal((200, "application/json", "Accept"), (answer.Status, answer.ContentType, answer["Vary"]));
        Assert.Equal("PriceFloor", answer.Json.GetProperty("name").GetString());
        Assert.Matches("^[0-9]+\\.[0-9]+\\.[0-9]+", answer.Json.GetProperty("version").GetString()!);
        Assert.Equal(
            """{"docs":"/docs","openapi":"/openapi/v1.json","problems":"/problems","health":"/health/ready","priceChecks":"/v1/price-checks","apiCatalog":"/.well-known/api-catalog"}""",
            answer.Json.GetProperty("links").GetRawText());
        Assert.Equal(
            """</openapi/v1.json>; rel="service-desc"; type="application/json", </docs>; rel="service-doc"; type="text/html", </.well-known/api-catalog>; rel="api-catalog" """.TrimEnd(),
            answer["Link"]);
    }

    [Theory]
    [InlineData("*/*", "application/json")]
    [InlineData("application/json", "application/json")]
    [InlineData(Browser, "text/html")]
    [InlineData("text/html;q=0.1, application/json", "application/json")]
    [InlineData("image/png", "application/json")]
    public async Task A_browser_gets_a_page_and_everybody_else_JSON(string accept, string type)
    {
        await using var studio = new Studio();
        Assert.Equal((200, type), await TypeOf(studio, accept));
    }

    [Fact]
    public async Task Every_link_of_the_page_and_of_the_JSON_leads_somewhere_without_a_key_but_price_checks()
    {
        await using var studio = new Studio();
        var nobody = studio.ClientWith(null);
        var page = (await studio.Get("/", nobody, ("Accept", Browser))).Text;
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.DoesNotContain("://", page, StringComparison.Ordinal);
        foreach (var link in (await studio.Get("/", nobody)).Json.GetProperty("links").EnumerateObject())
        {
            var path = link.Value.GetString()!;
            Assert.Contains(path, page, StringComparison.Ordinal);
            var answer = await studio.Get(path, nobody);
            Assert.Equal((path, link.Name == "priceChecks" ? 401 : 200), (path, answer.Status));
        }
    }

    [Fact]
    public async Task Behind_a_proxy_with_a_path_of_its_own_the_links_have_that_path()
    {
        await using var studio = new Studio(configure: host => host.UseSetting("PRICEFLOOR_PATH_BASE", "/pricefloor"));
        Assert.Equal("/pricefloor/v1/price-checks",
            (await studio.Get("/pricefloor/", studio.ClientWith(null))).Json.GetProperty("links").GetProperty("priceChecks").GetString());
        Assert.Contains("href=\"/pricefloor/problems\"", (await studio.Get("/pricefloor/", null, ("Accept", Browser))).Text,
            StringComparison.Ordinal);
        Assert.Contains("\"http://localhost/pricefloor/v1\"", (await studio.Get("/pricefloor/.well-known/api-catalog")).Text,
            StringComparison.Ordinal);
    }

    private static async Task<(int, string?)> TypeOf(Studio studio, string accept)
    {
        var answer = await studio.Get("/", studio.ClientWith(null), ("Accept", accept));
        return (answer.Status, answer.ContentType);
    }
}
