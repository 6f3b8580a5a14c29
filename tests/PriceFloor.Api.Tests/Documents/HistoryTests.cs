using Xunit;

namespace PriceFloor.Api.Tests.Documents;

/// <summary>Revisions are immutable, deletes hide and keep, and every read can be made as of a moment.</summary>
public sealed class HistoryTests(SharedStudio shared) : IClassFixture<SharedStudio>
{
    private static readonly string s_dearer = Sample.SmallProfile.Replace("24000", "25000", StringComparison.Ordinal);

    [Fact]
    public async Task The_history_of_a_document_that_was_deleted_and_came_back()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/channels/web", """{"sells":"retail","currency":"JPY"}""");
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal((204, ""), (await studio.Delete("/v1/channels/web")) is var deleted ? (deleted.Status, deleted.Text) : default);
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal((201, "\"3\"", "/v1/channels/web"), (await studio.Put("/v1/channels/web", """{"sells":"retail","currency":"JPY"}""")) is var back
            ? (back.Status, back["ETag"], back["Location"])
            : default);

        var history = await studio.Get("/v1/channels/web/revisions");
        Assert.Contains("{\"key\":\"web\",\"revision\":2,\"savedAt\":\"2027-01-02T09:01:00.000000Z\",\"deleted\":true}", history.Text,
            StringComparison.Ordinal);
        Assert.Equal("""{"key":"web","revision":2,"savedAt":"2027-01-02T09:01:00.000000Z","deleted":true}""",
            (await studio.Get("/v1/channels/web/revisions/2")).Text);
        Assert.Equal((await studio.Get("/v1/channels/web")).Text.Replace("\"revision\":3,\"savedAt\":\"2027-01-02T09:02",
            "\"revision\":1,\"savedAt\":\"2027-01-02T09:00", StringComparison.Ordinal), (await studio.Get("/v1/channels/web/revisions/1")).Text);

        foreach (var (moment, status) in new[]
        {
            ("08:59:59.999999", 404),
            ("09:00:00", 200),
            ("09:00:59.999999", 200),
            ("09:01:00", 404),
            ("09:01:59.9999999", 404),
            ("09:02:00", 200),
        })
            Assert.Equal((moment, status), (moment, (await studio.Get($"/v1/channels/web?asOf=2027-01-02T{moment}Z")).Status));
        Assert.Equal(2, (await studio.Get("/v1/channels/web/revisions?asOf=2027-01-02T09:01:30Z")).Json.GetProperty("items").GetArrayLength());
        Assert.Equal("""{"items":[],"next":null}""", (await studio.Get("/v1/channels?asOf=2027-01-02T09:01:30Z")).Text);
    }

    [Fact]
    public async Task A_revision_has_its_own_ETag_and_is_still_there_after_a_delete()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        await studio.Has("/v1/profiles/main", s_dearer);
        await studio.Delete("/v1/profiles/main");
        var first = await studio.Get("/v1/profiles/main/revisions/1");
        Assert.Equal((200, "\"1\"", "no-cache, private"), (first.Status, first["ETag"], first["Cache-Control"]));
        Assert.Equal(304, (await studio.Get("/v1/profiles/main/revisions/1", headers: ("If-None-Match", "\"1\""))).Status);
        foreach (var number in new[] { "0", "4", "-1", "1.0", "x", "99999999999999999999" })
            (await studio.Get($"/v1/profiles/main/revisions/{number}")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task A_design_that_comes_back_has_no_listed_prices_but_then_it_had()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        studio.Clock.Advance(TimeSpan.FromDays(1));
        await studio.Delete("/v1/designs/RB-014");
        await studio.Has("/v1/designs/RB-014", Sample.Pendant);
        Assert.Equal("""{"items":[],"next":null}""", (await studio.Get("/v1/designs/RB-014/prices")).Text);
        Assert.Equal("58.00",
            (await studio.Get("/v1/designs/RB-014/prices?asOf=2027-01-02T12:00:00Z")).Json.GetProperty("items")[0].GetProperty("price").GetRawText());
        Assert.Equal("below-floor", (await studio.Get("/v1/designs/RB-014/floor-price?asOf=2027-01-02T12:00:00Z")).Json.GetProperty("channels")[0]
            .GetProperty("verdict").GetString());
        Assert.Equal((201, "\"3\""),
            (await studio.Put("/v1/designs/RB-014/prices/web", """{"price":58}""")) is var back ? (back.Status, back["ETag"]) : default);
    }

    [Fact]
    public async Task What_if_can_be_asked_as_it_was_too()
    {
        await using var studio = new Studio();
        await studio.HasASmallShop();
        studio.Clock.Advance(TimeSpan.FromDays(30));
        await studio.Has("/v1/profiles/main", Sample.SmallProfile.Replace("24000", "44000", StringComparison.Ordinal));
        const string Then = "?asOf=2027-01-10T00:00:00Z";
        Assert.Equal("60.00", (await studio.Post("/v1/floor-prices" + Then, """{"design":"RB-014"}""")).Json.GetProperty("floor").GetRawText());
        Assert.Equal("80.00", (await studio.Post("/v1/floor-prices", """{"design":"RB-014"}""")).Json.GetProperty("floor").GetRawText());
        Assert.Equal("61.74", (await studio.Post("/v1/price-checks" + Then, """{"sku":"RB-014","channel":"web","price":58}"""))
            .Json.GetProperty("floorPrice").GetRawText());
        Assert.Equal(["#/design"], (await studio.Post("/v1/floor-prices?asOf=2026-01-01T00:00:00Z", """{"profile":"main","design":"RB-014"}"""))
            .IsProblem(422, "unknown-reference").Pointers.Where(pointer => pointer == "#/design"));
        (await studio.Get("/v1/price-checks?sku=RB-014&channel=web&price=58&asOf=2026-01-01T00:00:00Z")).IsProblem(422, "unknown-reference");
        (await studio.Get("/v1/designs/RB-014/floor-price?asOf=2026-01-01T00:00:00Z")).IsProblem(404, "not-found");
        (await studio.Get("/v1/profiles/main/requirement?asOf=2026-01-01T00:00:00Z")).IsProblem(404, "not-found");
    }

    [Theory]
    [InlineData("2027-01-10")]
    [InlineData("2027-01-10T00:00:00")]
    [InlineData("2027-02-30T00:00:00Z")]
    [InlineData("2027-01-10T24:00:00Z")]
    [InlineData("2027-01-10 00:00:00Z")]
    [InlineData("01/10/2027")]
    [InlineData("now")]
    [InlineData("")]
    public async Task A_moment_is_a_time_with_its_offset(string asOf)
    {
        var studio = shared.Of("Production");
        await studio.HasASmallShop();
        foreach (var path in new[] { "/v1/profiles", "/v1/profiles/main", "/v1/profiles/main/revisions", "/v1/profiles/main/revisions/1",
                "/v1/profiles/main/requirement", "/v1/designs/RB-014/floor-price", "/v1/designs/RB-014/prices" })
            Assert.Equal(["asOf"], (await studio.Get($"{path}?asOf={Uri.EscapeDataString(asOf)}")).IsProblem(422, "invalid-input").Pointers);
        (await studio.Put("/v1/profiles/main?asOf=2027-01-10T00:00:00Z", Sample.SmallProfile)).IsProblem(400, "unreadable-request");
        (await studio.Delete("/v1/profiles/main?asOf=2027-01-10T00:00:00Z")).IsProblem(400, "unreadable-request");
    }

    [Fact]
    public async Task Writers_with_If_Match_never_lose_each_others_changes()
    {
        await using var studio = new Studio();
        await studio.Has("/v1/profiles/main", Sample.SmallProfile);
        var answers = await Task.WhenAll(Enumerable.Range(1, 20).Select(i => studio.Put("/v1/profiles/main",
            Sample.SmallProfile.Replace("24000", $"{24000 + i}", StringComparison.Ordinal), headers: ("If-Match", "\"1\""))));
        Assert.Equal(1, answers.Count(answer => answer.Status == 200));
        Assert.Equal(19, answers.Count(answer => answer.Status == 412));
        Assert.Equal("\"2\"", (await studio.Get("/v1/profiles/main"))["ETag"]);
    }
}
