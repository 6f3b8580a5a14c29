using Xunit;
using static PriceFloor.Api.Tests.Access.TwoStudios;

namespace PriceFloor.Api.Tests.Access;

/// <summary>A key that is limited to some profiles sees the others, their designs and their listed prices as if they did not exist.</summary>
public sealed class HeldToProfilesTests
{
    private static readonly int[] s_unknown = [404, 422];

    [Fact]
    public async Task Every_address_of_another_profile_is_as_if_absent()
    {
        await using var studio = await Both();
        var own = await Held(studio, "read");
        foreach (var path in new[]
        {
            "/v1/profiles/{0}",
            "/v1/profiles/{0}/revisions",
            "/v1/profiles/{0}/revisions/1",
            "/v1/profiles/{0}/requirement",
        })
            await Alike(studio, own, path, "main", "other", "nothing");
        foreach (var path in new[]
        {
            "",
            "/revisions",
            "/revisions/1",
            "/floor-price",
            "/break-even?channel=web&price=58",
            "/remedies?channel=web&price=58",
            "/price-parts?channel=web&price=58",
            "/run-prices?channel=web",
            "/floor-history?channel=web",
            "/prices",
            "/prices/web",
            "/prices/web/revisions",
            "/prices/web/revisions/1",
        })
            await Alike(studio, own, "/v1/designs/{0}" + path, "RB-014", "GLOBE", "nothing");
        foreach (var path in new[]
        {
            "",
            "/revisions",
            "/revisions/1",
            "/figures",
            "/page",
            "/outcome",
            "/outcome/revisions",
            "/outcome/revisions/1",
            "/actual",
            "/actual/revisions",
            "/actual/revisions/1",
        })
            await Alike(studio, own, "/v1/quotes/{0}" + path, "Q-MAIN", "Q-OTHER", "nothing");
        await Alike(studio, own, "/v1/quote-load?profile={0}", "main", "other", "nothing");
        await Alike(studio, own, "/v1/price-checks?channel=web&price=58&sku={0}", "RB-014", "GLOBE", "nothing");
        await Alike(studio, own, "/v1/designs/RB-014/floor-price?profile={0}", "main", "other", "nothing");
        await Alike(studio, own, "/v1/price-list?profile={0}", "main", "other", "nothing");
    }

    [Fact]
    public async Task Bodies_that_name_another_profile_or_its_designs_name_nothing()
    {
        await using var studio = await Both();
        var own = await Held(studio, "read");
        foreach (var (path, body) in new[]
        {
            ("/v1/price-checks", """{"sku":"SKU","channel":"web","price":58}"""),
            ("/v1/order-checks", """{"channel":"web","items":[{"sku":"RB-014","pieces":1}],"gifts":[{"sku":"SKU","pieces":1}]}"""),
            ("/v1/floor-prices", """{"design":"SKU"}"""),
            ("/v1/floor-prices", """{"design":"RB-014","profile":"PROFILE"}"""),
            ("/v1/design-budgets", """{"profile":"PROFILE","channel":"web","price":58,"minutes":90}"""),
            ("/v1/quote-figures", """{"profile":"PROFILE","channel":"web","lines":[{"quantity":1,"design":"SKU"}]}"""),
            ("/v1/break-even", """{"profile":"PROFILE","lines":[{"sku":"SKU","channel":"web","ratio":1}]}"""),
            ("/v1/year-plans", """{"profile":"PROFILE","lines":[{"sku":"SKU","channel":"web","units":1}]}"""),
            ("/v1/year-plans/best", """{"profile":"PROFILE","lines":[{"sku":"SKU","channel":"web"}]}"""),
        })
        {
            string With(string sku, string profile) =>
                body.Replace("SKU", sku, StringComparison.Ordinal).Replace("PROFILE", profile, StringComparison.Ordinal);
            Assert.Equal((path, 200), (path, (await studio.Post(path, With("RB-014", "main"), own)).Status));
            var (hidden, missing) = (await studio.Post(path, With("GLOBE", "other"), own), await studio.Post(path, With("GL0BE", "0ther"), own));
            hidden.IsProblem(422, "unknown-reference");
            Assert.Equal(Plain(missing, "GL0BE", "0ther"), Plain(hidden, "GLOBE", "other"));
        }

        var batch = await studio.Post("/v1/price-checks/batch",
            """[{"sku":"RB-014","channel":"web","price":58},{"sku":"GLOBE","channel":"web","price":58},{"sku":"globe-alias","channel":"web","price":58}]""",
            own);
        Assert.Equal([true, false, false], batch.Json.GetProperty("items").EnumerateArray().Select(item => item.TryGetProperty("verdict", out _)));
    }

    [Fact]
    public async Task Lists_and_the_price_list_and_what_moved_hold_only_what_is_seen()
    {
        await using var studio = await Both();
        var own = await Held(studio, "read");
        string[] Keys(Answer answer, string name) =>
            [.. answer.Json.GetProperty("items").EnumerateArray().Select(item => item.GetProperty(name).GetString()!)];
        Assert.Equal(["main"], Keys(await studio.Get("/v1/profiles", own), "key"));
        Assert.Equal(["RB-014"], Keys(await studio.Get("/v1/designs", own), "key"));
        Assert.Equal(["web"], Keys(await studio.Get("/v1/channels", own), "key"));
        Assert.Equal(["Q-MAIN"], Keys(await studio.Get("/v1/quotes", own), "key"));
        Assert.Equal(["Q-MAIN"], Keys(await studio.Get("/v1/quotes?state=done", own), "key"));
        Assert.Equal(["RB-014"], Keys(await studio.Get("/v1/price-list", own), "sku"));
        Assert.Equal(["RB-014"], Keys(await studio.Get("/v1/floor-changes", own), "sku"));
        Assert.Equal(["RB-014"], Keys(await studio.Get("/v1/designs?asOf=2027-01-02T09:30:00Z", own), "key"));
        Assert.Equal(["main@1"], (await studio.Get("/v1/price-list", own)).Json.GetProperty("basis").GetProperty("profiles").EnumerateArray()
            .Select(one => one.GetString()!));
        foreach (var accept in new[] { "text/csv", "application/x-ndjson" })
            Assert.DoesNotContain("GLOBE", (await studio.Get("/v1/designs", own, ("Accept", accept))).Text, StringComparison.Ordinal);
        Assert.Equal(["GLOBE", "RB-014"], Keys(await studio.Get("/v1/price-list"), "sku"));
        Assert.Equal(["RB-014"], Keys(await studio.Get("/v1/price-list", own), "sku")); // also after somebody else's list was kept
    }

    [Fact]
    public async Task A_page_is_full_although_designs_of_others_are_in_between()
    {
        await using var studio = await Both();
        foreach (var i in Enumerable.Range(0, 12))
            await studio.Has($"/v1/designs/D-{i:00}", Sample.Pendant.Replace("main", i % 3 == 0 ? "main" : "other", StringComparison.Ordinal));
        var own = await Held(studio, "read");
        var first = await studio.Get("/v1/designs?limit=3", own);
        Assert.Equal("D-06", first.Json.GetProperty("next").GetString());
        var second = await studio.Get("/v1/designs?limit=3&after=D-06", own);
        Assert.Equal(["D-09", "RB-014"], second.Json.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("key").GetString()!));
        Assert.Equal("null", second.Json.GetProperty("next").GetRawText());
    }

    [Fact]
    public async Task A_design_that_came_from_another_profile_shows_only_what_it_was_here()
    {
        await using var studio = await Both();
        await studio.Has("/v1/designs/GLOBE", """{"profile":"main","making":{"piecesPerDay":2}}""");
        await studio.Delete("/v1/designs/GLOBE");
        var own = await Held(studio, "read");
        var history = await studio.Get("/v1/designs/GLOBE/revisions", own);
        Assert.Equal([2, 3], history.Json.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("revision").GetInt32()));
        (await studio.Get("/v1/designs/GLOBE/revisions/1", own)).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task Writing_stays_within_the_profiles()
    {
        await using var studio = await Both();
        var own = await Held(studio, "read", "write");
        Assert.Equal(200, (await studio.Put("/v1/designs/RB-014", """{"profile":"main","making":{"piecesPerDay":5}}""", own)).Status);
        Assert.Equal(200, (await studio.Put("/v1/designs/RB-014/prices/web", """{"price":60}""", own)).Status);
        Assert.Equal(201, (await studio.Put("/v1/profiles/second", Sample.SmallProfile, own)).Status);
        (await studio.Put("/v1/designs/RB-014", Sample.Pendant.Replace("main", "other", StringComparison.Ordinal), own))
            .IsProblem(422, "unknown-reference");
        (await studio.Put("/v1/designs/GLOBE/prices/web", """{"price":60}""", own)).IsProblem(404, "not-found");
        (await studio.Delete("/v1/designs/GLOBE", own)).IsProblem(404, "not-found");
        (await studio.Delete("/v1/profiles/other", own)).IsProblem(404, "not-found");
        (await studio.Delete("/v1/quotes/Q-OTHER", own)).IsProblem(404, "not-found");
        (await studio.Post("/v1/quotes/Q-OTHER/issue", "", own)).IsProblem(404, "not-found");
        (await studio.SendBytes("PATCH", "/v1/quotes/Q-OTHER", "{}"u8.ToArray(), "application/merge-patch+json", own)).IsProblem(404, "not-found");
        (await studio.Post("/v1/quotes/Q-OTHER/revise", """{"as":"Q-MINE"}""", own)).IsProblem(404, "not-found");
        (await studio.Put("/v1/quotes/Q-OTHER/outcome", """{"result":"declined"}""", own)).IsProblem(404, "not-found");
        (await studio.Put("/v1/quotes/Q-OTHER/actual", """{"benchHours":3}""", own)).IsProblem(404, "not-found");
        foreach (var name in new[] { "other", "nothing" })
            (await studio.Put($"/v1/profiles/{name}", Sample.SmallProfile, own)).IsProblem(403, "key-not-allowed");
        (await studio.Put("/v1/channels/web", Sample.Shop, own)).IsProblem(403, "key-not-allowed");
        (await studio.Delete("/v1/channels/web", own)).IsProblem(403, "key-not-allowed");
        foreach (var taken in new[]
        {
            await studio.Put("/v1/designs/GLOBE", Sample.Pendant, own, ("If-Match", "\"9\"")),
            await studio.Put("/v1/quotes/Q-OTHER", """{"profile":"main","channel":"web","extra":[{"hours":1}]}""", own),
            await studio.Post("/v1/quotes/Q-MAIN/revise", """{"as":"Q-OTHER"}""", own),
            await studio.Put("/v1/designs/RB-015", """{"profile":"main","making":{"piecesPerDay":5},"aliases":["globe-alias"]}""", own),
            await studio.Post("/v1/designs/batch", """[{"key":"GLOBE","profile":"main","making":{"piecesPerDay":5}}]""", own),
        })
            Assert.DoesNotContain("\"usedBy\":[{", taken.IsProblem(409, "in-use").Text, StringComparison.Ordinal);
        Assert.Equal("other", (await studio.Get("/v1/designs/GLOBE")).Json.GetProperty("profile").GetString());
    }

    [Fact]
    public async Task Reading_rules_are_as_if_absent_and_cannot_be_changed()
    {
        await using var studio = await Both();
        await studio.Has("/v1/reading-rules/main", """{"rules":[{"textHas":"rent","to":"household","name":"Their rent"}]}""");
        var own = await Held(studio, "read", "write");
        Assert.Equal("""{"items":[],"next":null}""", (await studio.Get("/v1/reading-rules", own)).Text);
        foreach (var path in new[] { "/v1/reading-rules/{0}", "/v1/reading-rules/{0}/revisions", "/v1/reading-rules/{0}/revisions/1" })
        {
            var (hidden, missing) = (await studio.Get(path.Replace("{0}", "main", StringComparison.Ordinal), own),
                await studio.Get(path.Replace("{0}", "nothing", StringComparison.Ordinal), own));
            hidden.IsProblem(404, "not-found");
            Assert.Equal(Plain(missing, "nothing"), Plain(hidden, "main"));
        }

        foreach (var name in new[] { "main", "nothing" })
            (await studio.Put($"/v1/reading-rules/{name}", """{"rules":[]}""", own)).IsProblem(403, "key-not-allowed");
        (await studio.Delete("/v1/reading-rules/main", own)).IsProblem(404, "not-found");
        await studio.Has("/v1/statement-layouts/main", """{"name":"Their card","dateColumn":"Booked"}""");
        Assert.Equal("""{"items":[],"next":null}""", (await studio.Get("/v1/statement-layouts", own)).Text);
        (await studio.Get("/v1/statement-layouts/main", own)).IsProblem(404, "not-found");
        (await studio.Put("/v1/statement-layouts/main", """{"dateColumn":"Booked"}""", own)).IsProblem(403, "key-not-allowed");
        var sheet = "Date,Amount,Description\n2027-01-02,-10.00,Rent\n"u8.ToArray();
        (await studio.SendBytes("POST", "/v1/statements?currency=USD&rules=main", sheet, "text/csv", own)).IsProblem(422, "unknown-reference");
        var unsorted = await studio.SendBytes("POST", "/v1/statements?currency=USD", sheet, "text/csv", own);
        Assert.Equal((200, 1), (unsorted.Status, unsorted.Json.GetProperty("accounted").GetProperty("unplaced").GetProperty("lines").GetInt32()));
        Assert.Equal("\"1\"", (await studio.Get("/v1/reading-rules/main"))["ETag"]);
    }

    [Theory]
    [InlineData("""{"name":"a","scopes":["read"],"profiles":[]}""", "#/profiles", "required")]
    [InlineData("""{"name":"a","scopes":["read"],"profiles":["a b"]}""", "#/profiles", "bad-key")]
    [InlineData("""{"name":"a","scopes":["read","admin"],"profiles":["main"]}""", "#/profiles", "unexpected")]
    public async Task Profiles_are_named_and_no_admin_is_limited_to_them(string body, string pointer, string code)
    {
        await using var studio = new Studio();
        var answer = (await studio.Post("/v1/keys", body)).IsProblem(422, "invalid-input");
        Assert.Equal((pointer, code), (Assert.Single(answer.Pointers), Assert.Single(answer.Codes)));
    }

    /// <summary>The hidden one is answered word for word like one that does not exist.</summary>
    private static async Task Alike(Studio studio, HttpClient client, string path, string seen, string hidden, string missing)
    {
        string At(string name) => string.Format(System.Globalization.CultureInfo.InvariantCulture, path, name);
        Assert.Equal((path, 200), (path, (await studio.Get(At(seen), client)).Status));
        Assert.Equal((path, 200), (path, (await studio.Get(At(hidden))).Status));
        var (one, other) = (await studio.Get(At(hidden), client), await studio.Get(At(missing), client));
        Assert.Contains(one.Status, s_unknown);
        Assert.Equal(Plain(other, missing), Plain(one, hidden));
    }

    private static string Plain(Answer answer, params string[] names) =>
        names.Aggregate($"{answer.Status} {answer["ETag"]} {answer.Text}".Replace(answer["X-Request-Id"]!, "", StringComparison.Ordinal),
            (text, name) => text.Replace(name, "NAME", StringComparison.Ordinal));
}
