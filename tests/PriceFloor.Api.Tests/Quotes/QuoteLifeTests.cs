using Xunit;

namespace PriceFloor.Api.Tests.Quotes;

/// <summary>From a draft to a quote that is done: what each step allows, and what it refuses.</summary>
public sealed class QuoteLifeTests
{
    private const string Outcome = "/v1/quotes/Q-1/outcome", Actual = "/v1/quotes/Q-1/actual";

    [Fact]
    public async Task A_quote_goes_from_draft_to_done()
    {
        await using var studio = await QuotingStudio.Small();
        var draft = await studio.Has("/v1/quotes/Q-1", QuotingStudio.Repair);
        Assert.Equal((201, "\"1\"", "/v1/quotes/Q-1"), (draft.Status, draft["ETag"], draft["Location"]));
        Assert.Equal("draft", await studio.StateOf("Q-1"));
        var issued = await studio.Issues("Q-1");
        Assert.Equal(("\"2\"", issued.Json.GetProperty("savedAt").GetString()), (issued["ETag"], issued.Json.GetProperty("issuedAt").GetString()));
        Assert.Equal(201, (await studio.Has(Outcome, """{"result":"accepted","on":"2027-01-05"}""")).Status);
        Assert.Equal("accepted", await studio.StateOf("Q-1"));
        await studio.Has(Actual, """{"benchHours":2.5,"materials":1.20,"starts":1,"paid":90}""");
        Assert.Equal("done", await studio.StateOf("Q-1"));
        Assert.EndsWith(""","benchHours":2.5,"materials":1.20,"starts":1,"paid":90.00}""", (await studio.Get(Actual)).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("declined")]
    [InlineData("withdrawn")]
    public async Task What_became_of_it_can_be_another_thing_than_a_yes(string result)
    {
        await using var studio = await QuotingStudio.Small();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Repair);
        await studio.Issues("Q-1");
        await studio.Has(Outcome, $$"""{"result":"{{result}}"}""");
        Assert.Equal(result, await studio.StateOf("Q-1"));
        Assert.Equal("2027-01-02", (await studio.Get(Outcome)).Json.GetProperty("on").GetString());
        await studio.Has(Actual, """{"benchHours":1}"""); // of work that was begun
        Assert.Equal(result, await studio.StateOf("Q-1"));
        Assert.Equal(204, (await studio.Delete(Outcome)).Status);
        Assert.Equal("issued", await studio.StateOf("Q-1"));
    }

    [Fact]
    public async Task It_lapses_the_day_after_its_last_valid_day()
    {
        await using var studio = await QuotingStudio.Small();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Repair); // until 1 February
        await studio.Issues("Q-1");
        studio.Clock.SetUtcNow(new DateTimeOffset(2027, 2, 1, 23, 59, 59, TimeSpan.Zero));
        var tag = (await studio.Get("/v1/quotes/Q-1"))["ETag"]!;
        Assert.Equal("issued", await studio.StateOf("Q-1"));
        studio.Clock.Advance(TimeSpan.FromSeconds(2));
        Assert.Equal("lapsed", await studio.StateOf("Q-1"));
        Assert.Equal("issued", await studio.StateOf("Q-1", "?asOf=2027-02-01T23:59:59Z"));
        Assert.Equal("draft", await studio.StateOf("Q-1", "/revisions/1"));
        // the same revision reads otherwise, so nobody is told that he has it already
        Assert.Equal(200, (await studio.Get("/v1/quotes/Q-1", headers: ("If-None-Match", tag))).Status);
        await studio.Has(Outcome, """{"result":"accepted"}"""); // the maker keeps the word all the same
        Assert.Equal("accepted", await studio.StateOf("Q-1"));
    }

    [Fact]
    public async Task Only_a_whole_quote_is_issued_and_only_once()
    {
        await using var studio = await QuotingStudio.Small();
        await studio.Has("/v1/quotes/Q-1", """{"profile":"main","channel":"web","extra":[{"hours":2}]}""");
        Assert.Equal(["#/price", "#/validUntil"],
            (await studio.Send("POST", "/v1/quotes/Q-1/issue", null)).IsProblem(422, "invalid-input").Pointers);
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Repair);
        (await studio.Send("POST", "/v1/quotes/Q-1/issue", null, null, ("If-Match", "\"1\""))).IsProblem(412, "stale-revision");
        var first = await studio.Send("POST", "/v1/quotes/Q-1/issue", null, null, ("If-Match", "\"2\""));
        studio.Clock.Advance(TimeSpan.FromHours(1));
        var again = await studio.Send("POST", "/v1/quotes/Q-1/issue", null, null, ("If-Match", "\"2\""));
        Assert.Equal((200, 200, first.Text), (first.Status, again.Status, again.Text));
        (await studio.Send("POST", "/v1/quotes/Q-9/issue", null)).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task What_is_issued_stays()
    {
        await using var studio = await QuotingStudio.Small();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Repair);
        await studio.Issues("Q-1");
        (await studio.Put("/v1/quotes/Q-1", QuotingStudio.Repair.Replace("90", "95", StringComparison.Ordinal))).IsProblem(409, "issued");
        (await studio.Delete("/v1/quotes/Q-1")).IsProblem(409, "issued");
        var same = await studio.Put("/v1/quotes/Q-1", (await studio.Get("/v1/quotes/Q-1")).Text);
        Assert.Equal((200, "\"2\"", "issued"), (same.Status, same["ETag"], same.Json.GetProperty("state").GetString()));
    }

    [Fact]
    public async Task A_draft_has_no_outcome_and_nothing_to_supersede()
    {
        await using var studio = await QuotingStudio.Small();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Repair);
        (await studio.Put(Outcome, """{"result":"accepted"}""")).IsProblem(409, "not-issued");
        (await studio.Put(Actual, """{"benchHours":2}""")).IsProblem(409, "not-issued");
        (await studio.Post("/v1/quotes/Q-1/revise", """{"as":"Q-2"}""")).IsProblem(409, "not-issued");
        (await studio.Put("/v1/quotes/Q-9/outcome", """{"result":"accepted"}""")).IsProblem(404, "not-found");
        Assert.Equal(204, (await studio.Delete("/v1/quotes/Q-1")).Status);
        (await studio.Get("/v1/quotes/Q-1")).IsProblem(404, "not-found");
    }

    [Fact]
    public async Task A_changed_offer_is_another_quote_and_supersedes_the_first()
    {
        await using var studio = await QuotingStudio.Small();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Repair);
        await studio.Issues("Q-1");
        var revised = await studio.Post("/v1/quotes/Q-1/revise", """{"as":"Q-1-2"}""");
        Assert.Equal((201, "/v1/quotes/Q-1-2", "draft"), (revised.Status, revised["Location"], revised.Json.GetProperty("state").GetString()));
        var old = (await studio.Get("/v1/quotes/Q-1")).Json;
        Assert.Equal(("superseded", "Q-1-2"), (old.GetProperty("state").GetString(), old.GetProperty("supersededBy").GetString()));
        (await studio.Post("/v1/quotes/Q-1/revise", """{"as":"Q-1-3"}""")).IsProblem(409, "issued");
        (await studio.Put(Outcome, """{"result":"accepted"}""")).IsProblem(409, "issued");
        await studio.Issues("Q-1-2");
        (await studio.Post("/v1/quotes/Q-1-2/revise", """{"as":"Q-1"}""")).IsProblem(409, "in-use");
        Assert.Equal("issued", await studio.StateOf("Q-1-2"));
        Assert.Equal(["bad-key"], (await studio.Post("/v1/quotes/Q-1-2/revise", """{"as":"batch"}""")).IsProblem(422, "invalid-input").Codes);
    }

    [Fact]
    public async Task A_draft_holds_what_it_names_and_an_issued_quote_holds_nothing()
    {
        await using var studio = await QuotingStudio.Worked();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Goblets("\"GB-030\""));
        foreach (var path in new[] { "/v1/designs/GB-030", "/v1/channels/direct", "/v1/profiles/main" })
            Assert.Contains("\"Q-1\"", (await studio.Delete(path)).IsProblem(409, "in-use").Text, StringComparison.Ordinal);
        await studio.Issues("Q-1");
        foreach (var path in new[] { "/v1/designs/GB-030", "/v1/channels/direct", "/v1/profiles/main" })
            Assert.Equal((path, 204), (path, (await studio.Delete(path)).Status));
        Assert.Equal("issued", await studio.StateOf("Q-1"));
    }

    [Fact]
    public async Task The_list_has_those_of_a_state()
    {
        await using var studio = await QuotingStudio.Small();
        foreach (var key in new[] { "Q-1", "Q-2", "Q-3", "Q-4" })
            await studio.Has($"/v1/quotes/{key}", QuotingStudio.Repair);
        await studio.Issues("Q-2");
        await studio.Issues("Q-4");
        string[] Keys(Answer answer) => [.. answer.Json.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("key").GetString()!)];
        Assert.Equal(["Q-1", "Q-2", "Q-3", "Q-4"], Keys(await studio.Get("/v1/quotes")));
        Assert.Equal(["Q-2", "Q-4"], Keys(await studio.Get("/v1/quotes?state=issued")));
        var first = await studio.Get("/v1/quotes?state=draft&limit=1");
        Assert.Equal(["Q-1"], Keys(first));
        Assert.Equal(["Q-3"], Keys(await studio.Get($"/v1/quotes?state=draft&after={first.Json.GetProperty("next").GetString()}")));
        Assert.Equal(["state"], (await studio.Get("/v1/quotes?state=sold")).IsProblem(422, "invalid-input").Pointers);
        studio.Clock.Advance(TimeSpan.FromDays(60));
        Assert.Equal(["Q-2", "Q-4"], Keys(await studio.Get("/v1/quotes?state=lapsed")));
    }
}
