using Xunit;

namespace PriceFloor.Api.Tests.Http;

/// <summary>What a mistyped name probably means.</summary>
public sealed class NearestNameTests
{
    private static readonly string[] s_known = ["fair", "gallery", "market", "web", "wholesale"];

    [Theory]
    [InlineData("WEB", "web")] // case alone
    [InlineData("wed", "web")] // one letter of three
    [InlineData("galery", "gallery")] // one missing
    [InlineData("markett", "market")] // one extra
    [InlineData("afir", "fair")] // two swapped
    [InlineData("whole-sale", "wholesale")]
    [InlineData("ab", null)] // nothing is near
    [InlineData("kiosk", null)]
    [InlineData("", null)]
    public void The_nearest_name_is_found_or_none(string name, string? nearest) => Assert.Equal(nearest, NearestName.Of(name, s_known));

    [Fact]
    public void A_hint_names_the_nearest_or_else_the_few_that_there_are()
    {
        Assert.Equal(", but there is \"web\"", NearestName.Hint("wep", s_known));
        Assert.Equal("; there are fair, gallery, market, web, wholesale", NearestName.Hint("shop", s_known));
        Assert.Equal("; there is fair", NearestName.Hint("shop", ["fair"]));
        Assert.Equal("", NearestName.Hint("shop", []));
        Assert.Equal("", NearestName.Hint("nothing like it", [.. Enumerable.Range(100, 13).Select(i => $"{i}")]));
    }

    [Fact]
    public async Task A_share_is_explained_only_where_that_helps_and_a_list_is_named_with_its_index()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        var answer = (await studio.Post("/v1/quote-figures",
            """{"profile":"main","channel":"web","lines":[{"name":"Bowl","quantity":1,"design":"RB","learning":{"rate":0.3}}]}""")).Text;
        Assert.Contains("\"lines.0.learning.rate must be at least 0.5 and at most 1; it is 0.3.\"", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Messages_say_what_to_write_instead()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        async Task Says(string body, string told) =>
            Assert.Contains(told, (await studio.Put("/v1/channels/web", body)).Text, StringComparison.Ordinal);
        await Says("""{"sells":"retail","currency":"USD","shopShare":45}""", "45 % is written 0.45.");
        await Says("""{"sells":"retail","currency":"USD","shopShare":"2.9 %"}""", "2.9 % is written 0.029.");
        await Says("""{"sells":"retail","currency":"USD","costPerPiece":"2 %"}""", "thousands marks.\""); // money is no share
        await Says("""{"sells":"consignment","currency":"USD"}""", "A gallery on consignment sells \\\"retail\\\" and keeps a shopShare.");
        await Says("""{"sells":"retial","currency":"USD"}""", "Probably \\\"retail\\\" is meant.");
        await Says("""{"sells":"retail","currency":"USD","shopshare":0.4}""", "(\\\"shopShare\\\" is)");
        await Says("""{"sells":"retail","currency":"USD","fee":[]}""", "(\\\"fees\\\" is)");
        await Says("""{"sells":"retail","currency":"USD","colour":"blue"}""", "(it takes name, sells, currency, shopShare, ");
    }

    [Fact]
    public async Task Only_who_may_read_is_told_what_names_there_are()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        const string Asked = "/v1/price-checks?sku=RB-14&channel=wep&price=58";
        var told = (await studio.Get(Asked)).Text;
        Assert.Contains("There is no channel \\\"wep\\\", but there is \\\"web\\\"; case counts.", told, StringComparison.Ordinal);
        Assert.Contains("There is no design \\\"RB-14\\\", but there is \\\"RB-014\\\"; case counts.", told, StringComparison.Ordinal);
        using var check = await studio.ClientFor("check");
        Assert.DoesNotContain("but there is", (await studio.Get(Asked, check)).Text, StringComparison.Ordinal);
        Assert.DoesNotContain("there are", (await studio.Get("/v1/price-list?channel=none", check)).Text, StringComparison.Ordinal);
        Assert.Contains("; there is web; case counts.", (await studio.Get("/v1/price-list?channel=none")).Text, StringComparison.Ordinal);
    }
}
