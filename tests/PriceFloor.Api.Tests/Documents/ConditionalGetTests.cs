using Xunit;

namespace PriceFloor.Api.Tests.Documents;

/// <summary>If-Match on GET and HEAD: only the revision, or the answer, that the caller names is sent.</summary>
public sealed class ConditionalGetTests
{
    [Fact]
    public async Task A_document_of_another_revision_is_not_sent()
    {
        await using var studio = new Studio();
        var first = (await studio.Put("/v1/profiles/main", Sample.SmallProfile))["ETag"]!;
        var second = (await studio.Put("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "24001", StringComparison.Ordinal)))["ETag"]!;
        Assert.NotEqual(first, second);
        foreach (var (tag, status) in new[]
        {
            (first, 412),
            (second, 200),
            ("*", 200),
            ($"{first}, {second}", 200),
            ($"W/{second}", 412),
            ("\"nonsense\"", 412),
        })
        {
            Assert.Equal((tag, status), (tag, (await studio.Get("/v1/profiles/main", headers: ("If-Match", tag))).Status));
            Assert.Equal((tag, status), (tag, (await studio.Send("HEAD", "/v1/profiles/main", null, headers: ("If-Match", tag))).Status));
        }

        var stale = (await studio.Get("/v1/profiles/main", headers: ("If-Match", first))).IsProblem(412, "stale-revision");
        Assert.Equal(2, stale.Json.GetProperty("currentRevision").GetInt64());
        Assert.Null(stale["ETag"]);
        // If-Match comes first
        (await studio.Get("/v1/profiles/main", null, ("If-Match", first), ("If-None-Match", second))).IsProblem(412, "stale-revision");
        Assert.Equal(304, (await studio.Get("/v1/profiles/main", null, ("If-Match", second), ("If-None-Match", second))).Status);
        (await studio.Get("/v1/profiles/main", headers: ("If-Match", "7"))).IsProblem(400, "unreadable-request");
        (await studio.Get("/v1/profiles/none", headers: ("If-Match", "*"))).IsProblem(404, "not-found");
        Assert.Equal(200, (await studio.Get("/v1/profiles/main/revisions/1", headers: ("If-Match", first))).Status);
        (await studio.Get("/v1/profiles/main/revisions/1", headers: ("If-Match", second))).IsProblem(412, "stale-revision");
    }

    [Theory]
    [InlineData("/v1/price-list?channel=web")]
    [InlineData("/v1/price-list.html?channel=web")]
    [InlineData("/v1/price-list.svg?channel=web")]
    [InlineData("/v1/line-sheet?channel=web")]
    [InlineData("/v1/line-sheet.html?channel=web")]
    [InlineData("/v1/quotes/Q-1/page")]
    [InlineData("/v1/designs/RB-014/price-parts.svg?channel=web")]
    [InlineData("/v1/designs/RB-014/break-even.svg?channel=web&price=58")]
    public async Task An_answer_with_a_tag_of_its_own_is_sent_for_that_tag_alone(string path)
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        await studio.Has("/v1/quotes/Q-1", """{"profile":"main","channel":"web","extra":[{"hours":2}]}""");
        var tag = (await studio.Get(path))["ETag"]!;
        Assert.Equal(200, (await studio.Get(path, headers: ("If-Match", tag))).Status);
        Assert.Equal(200, (await studio.Get(path, headers: ("If-Match", "*"))).Status);
        var stale = (await studio.Get(path, headers: ("If-Match", "\"0c4b8f6a2d1e9370\""))).IsProblem(412, "stale-revision");
        Assert.Contains(tag.Trim('"'), stale.Text, StringComparison.Ordinal);
    }
}
