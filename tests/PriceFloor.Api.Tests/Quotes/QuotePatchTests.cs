using System.Text;
using Xunit;

namespace PriceFloor.Api.Tests.Quotes;

/// <summary>A part of a draft changes; what is issued stays as it is.</summary>
public sealed class QuotePatchTests
{
    [Fact]
    public async Task Members_of_a_draft_are_replaced_merged_and_taken_back()
    {
        await using var studio = await QuotingStudio.Worked();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Goblets("\"GB-030\""));
        var patched = await Patch(studio, """{"price":4300,"rush":null,"deposit":{"share":0.5},"payments":[{"when":"delivery","share":0.5}]}""");
        Assert.Equal((200, "\"2\"", "draft"), (patched.Status, patched["ETag"], patched.Json.GetProperty("state").GetString()));
        Assert.Equal(patched.Text, (await studio.Get("/v1/quotes/Q-1")).Text);
        Assert.Equal(("4300.00", "0.5", "wedding table, May"), (patched.Json.GetProperty("price").GetRawText(),
            patched.Json.GetProperty("deposit").GetProperty("share").GetRawText(), patched.Json.GetProperty("to").GetString()));
        Assert.Equal("null", (await studio.Get("/v1/quotes/Q-1/figures")).Json.GetProperty("rushTotal").GetRawText());
        Assert.Equal("\"2\"", (await Patch(studio, "{}"))["ETag"]);
        Assert.Equal("\"2\"", (await Patch(studio, """{"state":"issued","issuedAt":"2027-01-02T09:00:00Z","supersededBy":"Q-7"}"""))["ETag"]);
        Assert.Equal("draft", await studio.StateOf("Q-1"));
    }

    [Fact]
    public async Task The_result_is_checked_as_a_whole_quote()
    {
        await using var studio = await QuotingStudio.Worked();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Goblets("\"GB-030\""));
        Assert.Equal(["not-whole"], (await Patch(studio, """{"deposit":{"share":0.3}}""")).IsProblem(422, "invalid-input").Codes);
        (await Patch(studio, """{"channel":"none"}""")).IsProblem(422, "unknown-reference");
        (await Patch(studio, """{"prise":null}""")).IsProblem(400, "unreadable-request");
        (await Patch(studio, """{"price":1}""", ("If-Match", "\"7\""))).IsProblem(412, "stale-revision");
        (await studio.SendBytes("PATCH", "/v1/quotes/Q-9", "{}"u8.ToArray(), "application/merge-patch+json")).IsProblem(404, "not-found");
        Assert.Equal(1, (await studio.Get("/v1/quotes/Q-1")).Json.GetProperty("revision").GetInt64());
    }

    [Fact]
    public async Task An_issued_quote_is_changed_in_no_part()
    {
        await using var studio = await QuotingStudio.Worked();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Goblets("\"GB-030\""));
        await studio.Issues("Q-1");
        var issued = (await studio.Get("/v1/quotes/Q-1")).Text;
        foreach (var patch in new[] { """{"price":4100}""", """{"to":null}""", """{"lines":[]}""" })
            (await Patch(studio, patch)).IsProblem(409, "issued");
        var same = await Patch(studio, """{"price":4200}"""); // as it is: nothing changes, as with PUT
        Assert.Equal((200, issued), (same.Status, same.Text));
        await studio.Has("/v1/quotes/Q-1/outcome", """{"result":"accepted"}""");
        (await Patch(studio, """{"price":4100}""")).IsProblem(409, "issued");
        Assert.Equal(409, (await studio.Put("/v1/quotes/Q-1", QuotingStudio.Goblets().Replace("4200", "4100", StringComparison.Ordinal))).Status);
    }

    [Fact]
    public async Task A_key_that_may_not_read_learns_the_revision_alone()
    {
        await using var studio = await QuotingStudio.Small();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Repair);
        using var writer = await studio.ClientFor("write");
        var patched = await studio.SendBytes("PATCH", "/v1/quotes/Q-1", """{"price":95}"""u8.ToArray(), "application/merge-patch+json", writer);
        Assert.Equal((204, "\"2\"", ""), (patched.Status, patched["ETag"], patched.Text));
    }

    private static Task<Answer> Patch(Studio studio, string patch, params (string, string)[] headers) =>
        studio.SendBytes("PATCH", "/v1/quotes/Q-1", Encoding.UTF8.GetBytes(patch), "application/merge-patch+json", headers: headers);
}
