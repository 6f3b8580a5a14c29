using Xunit;

namespace PriceFloor.Api.Tests.Documents;

/// <summary>Every list comes a page at a time, with the link to the next page in the body and in Link.</summary>
public sealed class PagingTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    private static readonly string[] s_inOrder = ["A", "a", "B", "~"];

    [Theory]
    [InlineData("/v1/profiles", "key", 2, "A Ax Bx ax ~x")]
    [InlineData("/v1/profiles", "key", 3, "A Ax Bx ax ~x")]
    [InlineData("/v1/designs", "key", 2, "A Ax Bx ax ~x")]
    [InlineData("/v1/channels", "key", 2, "A B a ~")]
    [InlineData("/v1/designs/A/prices", "channel", 2, "A B a ~")]
    [InlineData("/v1/profiles/A/revisions", "revision", 2, "1 2 3 4")]
    [InlineData("/v1/keys", "name", 2, "A b first-admin-key ~")]
    public async Task Following_the_links_gives_everything_once_and_in_order(string list, string name, int limit, string all)
    {
        await using var studio = await WithSomethingOfEach();
        var whole = await studio.Get(list);
        Assert.Null(whole["Link"]);
        Assert.Equal(all.Split(' '), Items(whole, name));

        var found = new List<string>();
        for (var next = $"{list}?limit={limit}"; next is not null;)
        {
            var page = await studio.Get(next);
            found.AddRange(Items(page, name));
            var after = page.Json.GetProperty("next").GetString();
            Assert.Equal(after is null ? null : $"<{list}?limit={limit}&after={Uri.EscapeDataString(after)}>; rel=\"next\"", page["Link"]);
            next = page["Link"] is { } link ? link[1..link.IndexOf('>', StringComparison.Ordinal)] : null;
        }

        Assert.Equal(all.Split(' '), found);
    }

    [Fact]
    public async Task A_link_keeps_the_moment_that_was_asked_for()
    {
        await using var studio = new Studio();
        foreach (var key in new[] { "a", "b", "c" })
            await studio.Has($"/v1/profiles/{key}", Sample.SmallProfile);
        studio.Clock.Advance(TimeSpan.FromHours(1));
        await studio.Delete("/v1/profiles/b");
        var first = await studio.Get("/v1/profiles?asOf=2027-01-02T10:30:00%2B01:00&limit=1");
        var second = await studio.Get(first["Link"]![1..first["Link"]!.IndexOf('>', StringComparison.Ordinal)]);
        Assert.Equal(["b"], Items(second, "key"));
    }

    [Theory]
    [InlineData("limit=0", 422)]
    [InlineData("limit=1001", 422)]
    [InlineData("limit=1.0", 422)]
    [InlineData("limit=%2B1", 422)]
    [InlineData("limit=ten", 422)]
    [InlineData("limit=", 422)]
    [InlineData("limit=1&limit=1", 400)]
    [InlineData("page=2", 400)]
    [InlineData("Limit=2", 400)]
    [InlineData("limit=1000", 200)]
    public async Task A_limit_is_a_whole_number_up_to_a_thousand(string query, int status)
    {
        var studio = shared.Of("Production");
        await studio.Has("/v1/profiles/A", Sample.SmallProfile);
        foreach (var list in new[] { "/v1/profiles", "/v1/profiles/A/revisions", "/v1/keys" })
            Assert.Equal((list, status), (list, (await studio.Get($"{list}?{query}")).Status));
    }

    [Fact]
    public async Task After_the_last_item_there_is_an_empty_page_and_an_unknown_after_is_only_a_place_in_the_order()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/b", Sample.SmallProfile);
        Assert.Equal("""{"items":[],"next":null}""", (await studio.Get("/v1/profiles?after=zz")).Text);
        Assert.Equal(["b"], Items(await studio.Get("/v1/profiles?after=a"), "key"));
        Assert.Equal("""{"items":[],"next":null}""", (await studio.Get("/v1/profiles/b/revisions?after=1")).Text);
        (await studio.Get("/v1/profiles/b/revisions?after=x")).IsProblem(422, "invalid-input");
    }

    [Fact]
    public async Task What_never_was_has_no_history_on_any_page()
    {
        await using var studio = new Studio();
        (await studio.Get("/v1/profiles/c/revisions")).IsProblem(404, "not-found");
        (await studio.Get("/v1/profiles/c/revisions?after=1")).IsProblem(404, "not-found");
    }

    private static async Task<Studio> WithSomethingOfEach()
    {
        var studio = new Studio();
        foreach (var (price, key) in s_inOrder.Index())
        {
            await studio.Has("/v1/profiles/A", Sample.SmallProfile.Replace("24000", $"{price}", StringComparison.Ordinal));
            await studio.Has($"/v1/profiles/{key}x", Sample.SmallProfile);
            await studio.Has("/v1/designs/A", Sample.Pendant.Replace("main", "A", StringComparison.Ordinal));
            await studio.Has($"/v1/designs/{key}x", Sample.Pendant.Replace("main", "A", StringComparison.Ordinal));
            await studio.Has($"/v1/channels/{key}", Sample.Shop);
            await studio.Has($"/v1/designs/A/prices/{key}", """{"price":58}""");
        }

        foreach (var name in new[] { "b", "~", "A" })
            Assert.Equal(201, (await studio.Post("/v1/keys", $$"""{"name":"{{name}}","scopes":["read"]}""")).Status);
        return studio;
    }

    private static List<string> Items(Answer page, string name) =>
        [.. page.Json.GetProperty("items").EnumerateArray().Select(item => item.GetProperty(name).ToString())];
}
