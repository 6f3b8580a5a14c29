using Xunit;

namespace PriceFloor.Api.Tests.Documents;

public sealed class KeyInPathTests
{
    private static readonly int[] s_unknown = [404, 422];

    [Fact]
    public async Task However_a_key_is_escaped_in_a_path_it_is_the_same_key()
    {
        await using var studio = new Studio();
        Assert.Equal(201, (await studio.Put("/v1/channels/a+b~c:d", Sample.Shop)).Status);
        foreach (var path in new[] { "/v1/channels/a%2Bb~c:d", "/v1/channels/a+b%7Ec%3Ad", "/v1/channels/%61+b~c:d" })
            Assert.Equal((path, 200, "a+b~c:d"),
                (path, (await studio.Get(path)).Status, (await studio.Get(path)).Json.GetProperty("key").GetString()));
        (await studio.Get("/v1/channels/A+b~c:d")).IsProblem(404, "not-found");
        Assert.Single((await studio.Get("/v1/channels")).Json.GetProperty("items").EnumerateArray());
    }

    [Theory]
    [InlineData("/v1/profiles/{0}", Sample.SmallProfile)]
    [InlineData("/v1/designs/{0}", Sample.Pendant)]
    [InlineData("/v1/channels/{0}", Sample.Shop)]
    public async Task A_key_that_cannot_be_is_refused_and_nothing_stored(string path, string body)
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        foreach (var key in new[] { new string('k', 65), "a%20b", "a%2Fb", "%C3%A9", "a%0Ab", "a%22b", "a%25b", "a@b", "%E2%98%83" })
        {
            var at = path.Replace("{0}", key, StringComparison.Ordinal);
            Assert.Contains((await studio.Put(at, body)).Status, s_unknown);
            Assert.Equal((key, 404), (key, (await studio.Get(at)).Status));
        }

        Assert.Single((await studio.Get("/v1/profiles")).Json.GetProperty("items").EnumerateArray());
    }

    [Fact]
    public async Task Every_wrong_part_of_an_unreadable_request_is_answered_before_anything_is_stored()
    {
        await using var studio = new Studio();
        (await studio.Put("/v1/profiles/main?dry=1", Sample.SmallProfile)).IsProblem(400, "unreadable-request");
        (await studio.Put("/v1/profiles/main", Sample.SmallProfile, headers: ("If-Match", "abc"))).IsProblem(400, "unreadable-request");
        (await studio.Put("/v1/profiles/main", Sample.SmallProfile, headers: ("If-None-Match", "\"1"))).IsProblem(400, "unreadable-request");
        (await studio.Put("/v1/profiles/main", Sample.SmallProfile, headers: ("If-Match", "\"1\""))).IsProblem(412, "stale-revision");
        (await studio.Get("/v1/profiles/main")).IsProblem(404, "not-found");
        Assert.Equal(201, (await studio.Put("/v1/profiles/main", Sample.SmallProfile, headers: ("If-None-Match", "*"))).Status);
        Assert.Equal(200, (await studio.Put("/v1/profiles/main", Sample.SmallProfile, headers: ("If-Match", "*"))).Status);
        Assert.Equal(304, (await studio.Get("/v1/profiles/main", headers: ("If-None-Match", "*"))).Status);
        Assert.Equal(304, (await studio.Get("/v1/profiles/main", headers: ("If-None-Match", "\"7\", \"1\""))).Status);
    }
}
