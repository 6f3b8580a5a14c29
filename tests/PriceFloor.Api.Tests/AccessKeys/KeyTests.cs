using Xunit;

namespace PriceFloor.Api.Tests.AccessKeys;

public sealed class KeyTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    [Fact]
    public async Task Each_scope_learns_exactly_these_properties_of_a_price()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        string[] verdict = ["verdict", "carriesItsShare", "basis", "warnings"];
        string[] check = [.. verdict, "floorPrice", "targetPrice", "price", "currency"];
        string[] read = [.. check, "netProceeds", "aboveFloor", "earnedPerBenchHour", "perBenchHour", "takeHomePerHourAtThisPrice", "assumed"];
        foreach (var (scopes, properties) in new (string[], string[])[] { (["verdict"], verdict), (["check"], check), (["read"], read),
            (["verdict", "check"], check), (["verdict", "read"], read), (["check", "write", "prices"], check), (["verdict", "admin"], verdict) })
        {
            using var client = await studio.ClientFor(scopes);
            foreach (var answer in new[]
            {
                await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58", client),
                await studio.Post("/v1/price-checks", """{"sku":"RB-014","channel":"web","price":58}""", client),
            })
                Assert.Equal(properties.Order(), answer.Json.EnumerateObject().Select(property => property.Name).Order());
        }

        Assert.Contains("workings", (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58&workings=true",
            await studio.ClientFor("read"))).Json.EnumerateObject().Select(property => property.Name));
    }

    [Fact]
    public async Task An_expired_admin_key_does_not_count_as_one_that_is_left()
    {
        await using var studio = new Studio();
        await studio.Post("/v1/keys", """{"name":"guest","scopes":["admin"],"expires":"2027-01-03T00:00:00Z"}""");
        studio.Clock.Advance(TimeSpan.FromDays(2));
        (await studio.Delete("/v1/keys/first-admin-key")).IsProblem(409, "in-use");
        Assert.Equal(200, (await studio.Get("/v1/keys")).Status);
    }

    [Fact]
    public async Task A_second_admin_key_lets_the_first_go()
    {
        await using var studio = new Studio();
        var made = await studio.Post("/v1/keys", """{"name":"second","scopes":["admin","admin","read"]}""");
        Assert.Equal("""["read","admin"]""", made.Json.GetProperty("scopes").GetRawText());
        using var second = studio.ClientWith(made.Json.GetProperty("key").GetString());
        Assert.Equal(204, (await studio.Delete("/v1/keys/first-admin-key", second)).Status);
        (await studio.Get("/v1/keys")).IsProblem(401, "no-key");
        (await studio.Delete("/v1/keys/second", second)).IsProblem(409, "in-use");
    }

    [Fact]
    public async Task A_key_ends_at_the_very_moment_that_it_says()
    {
        await using var studio = new Studio();
        using var guest = studio.ClientWith((await studio.Post("/v1/keys",
            """{"name":"guest","scopes":["read"],"expires":"2027-01-02T11:00:00+01:00"}""")).Json.GetProperty("key").GetString());
        Assert.Equal("2027-01-02T10:00:00.000000Z",
            (await studio.Get("/v1/keys?after=first-admin-key")).Json.GetProperty("items")[0].GetProperty("expires").GetString());
        studio.Clock.Advance(TimeSpan.FromHours(1) - TimeSpan.FromMilliseconds(1));
        Assert.Equal(200, (await studio.Get("/v1/profiles", guest)).Status);
        studio.Clock.Advance(TimeSpan.FromMilliseconds(1));
        (await studio.Get("/v1/profiles", guest)).IsProblem(401, "no-key");
    }

    [Theory]
    [InlineData("""{"scopes":["read"]}""", "#/name", "required")]
    [InlineData("""{"name":"","scopes":["read"]}""", "#/name", "required")]
    [InlineData("""{"name":"a b","scopes":["read"]}""", "#/name", "bad-key")]
    [InlineData("""{"name":"a/b","scopes":["read"]}""", "#/name", "bad-key")]
    [InlineData("""{"name":"a"}""", "#/scopes", "required")]
    [InlineData("""{"name":"a","scopes":[]}""", "#/scopes", "required")]
    [InlineData("""{"name":"a","scopes":["Read"]}""", "#/scopes/0", "not-one-of")]
    [InlineData("""{"name":"a","scopes":["read"],"expires":"2027-01-02T09:00:00Z"}""", "#/expires", "out-of-range")]
    [InlineData("""{"name":"a","scopes":["read"],"expires":"2028-01-01"}""", "#/expires", "not-a-time")]
    public async Task A_key_needs_a_name_a_scope_and_a_time_ahead(string body, string pointer, string code)
    {
        var studio = shared.Of("Production");
        var answer = (await studio.Post("/v1/keys", body)).IsProblem(422, "invalid-input");
        Assert.Equal((pointer, code), (Assert.Single(answer.Pointers), Assert.Single(answer.Codes)));
        Assert.Single((await studio.Get("/v1/keys")).Json.GetProperty("items").EnumerateArray());
    }

    [Fact]
    public async Task A_key_in_the_query_does_not_count()
    {
        await using var studio = new Studio();
        (await studio.Get($"/v1/profiles?key={Studio.AdminKey}", studio.ClientWith(null))).IsProblem(401, "no-key");
        Assert.Equal(200, (await studio.Get("/v1/profiles", studio.ClientWith(null), ("Authorization", "bearer  " + Studio.AdminKey))).Status);
    }
}
