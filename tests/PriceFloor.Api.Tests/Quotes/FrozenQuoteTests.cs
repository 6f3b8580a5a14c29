using System.Text.RegularExpressions;
using Dapper;
using Microsoft.Data.Sqlite;
using Xunit;

namespace PriceFloor.Api.Tests.Quotes;

/// <summary>What was issued is answered byte for byte as it was issued, whatever changes after that.</summary>
public sealed partial class FrozenQuoteTests
{
    [Fact]
    public async Task Documents_and_the_clock_change_nothing_that_was_issued()
    {
        await using var studio = await QuotingStudio.Worked();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Goblets("\"GB-030\""));
        var draft = (await studio.Get("/v1/quotes/Q-1/figures")).Text;
        await studio.Issues("Q-1");
        var (issued, page) = (await Issued(studio), (await studio.Get("/v1/quotes/Q-1/page")).Text);
        Assert.Equal(draft, IssuedAt().Replace(issued, ""));

        await studio.Has("/v1/designs/GB-030", QuotingStudio.Goblet.Replace("120", "240", StringComparison.Ordinal)
            .Replace("Twist stem", "Plain", StringComparison.Ordinal));
        var moved = (await studio.Get("/v1/quotes/Q-1/figures")).Json.GetProperty("moved");
        Assert.True(moved.GetProperty("costsMoved").GetBoolean() && moved.GetProperty("floorTotal").GetDecimal() > 3792.32m);
        Assert.Equal("costs-moved-since", moved.GetProperty("warnings")[0].GetProperty("code").GetString());
        Assert.Equal((issued, page), (await Issued(studio), (await studio.Get("/v1/quotes/Q-1/page")).Text));

        studio.Clock.Advance(TimeSpan.FromDays(20));
        Assert.Equal(issued, await Issued(studio));
        foreach (var path in new[] { "/v1/designs/GB-030", "/v1/channels/direct", "/v1/profiles/main" })
            Assert.Equal((path, 204), (path, (await studio.Delete(path)).Status));
        Assert.Equal((issued, page), (await Issued(studio), (await studio.Get("/v1/quotes/Q-1/page")).Text));
        moved = (await studio.Get("/v1/quotes/Q-1/figures")).Json.GetProperty("moved");
        Assert.Equal(("null", "null", "unknown-profile"), (moved.GetProperty("floorTotal").GetRawText(), moved.GetProperty("costsMoved").GetRawText(),
            moved.GetProperty("reason").GetString()));
        studio.Clock.Advance(TimeSpan.FromDays(4000));
        Assert.Equal(issued, await Issued(studio));
    }

    [Fact]
    public async Task Figures_that_this_program_would_not_calculate_are_answered_as_they_were_issued()
    {
        var studio = await QuotingStudio.Worked();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Goblets());
        await studio.Issues("Q-1");
        var issued = await Issued(studio);
        var older = issued.Replace("\"floorTotal\":3792.32", "\"floorTotal\":3792.3100", StringComparison.Ordinal)
            .Replace("\"outOfPocket\":656.03", "\"out_of_pocket\":656.0262", StringComparison.Ordinal);
        Assert.NotEqual(issued, older);
        var folder = await studio.Stopped();
        await Replace(Path.Combine(folder, "pricefloor.db"), Quoted(issued), Quoted(older));
        await using var again = await studio.Restarted();
        Assert.Equal(older, await Issued(again));
        var moved = (await again.Get("/v1/quotes/Q-1/figures")).Json.GetProperty("moved");
        Assert.Equal((3792.32m, true), (moved.GetProperty("floorTotal").GetDecimal(), moved.GetProperty("costsMoved").GetBoolean()));
        Assert.Equal(200, (await again.Send("POST", "/v1/quotes/Q-1/issue", null)).Status);
        Assert.Equal(older, await Issued(again));
    }

    [Fact]
    public async Task An_outcome_and_a_later_offer_change_nothing_that_was_issued()
    {
        await using var studio = await QuotingStudio.Worked();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Goblets());
        await studio.Issues("Q-1");
        var issued = await Issued(studio);
        await studio.Has("/v1/quotes/Q-1/outcome", """{"result":"declined"}""");
        Assert.Equal(201, (await studio.Post("/v1/quotes/Q-1/revise", """{"as":"Q-2"}""")).Status);
        Assert.Equal(issued, await Issued(studio));
        Assert.Equal(issued, (await Issued(studio, "?asOf=2027-01-02T09:30:00Z")));
    }

    [Fact]
    public async Task A_quote_whose_issued_figures_are_damaged_says_so()
    {
        var studio = await QuotingStudio.Worked();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Goblets());
        await studio.Issues("Q-1");
        var folder = await studio.Stopped();
        await Replace(Path.Combine(folder, "pricefloor.db"), "\\\"currency\\\":\\\"USD\\\"", "\\\"currency\\\":\\\"XXZ\\\"");
        await using var again = await studio.Restarted();
        foreach (var path in new[] { "", "/figures", "/page" })
            (await again.Get("/v1/quotes/Q-1" + path)).IsProblem(503, "damaged-document");
    }

    /// <summary>What was issued, without what it would be now.</summary>
    private static async Task<string> Issued(Studio studio, string query = "")
    {
        var answer = await studio.Get($"/v1/quotes/Q-1/figures{query}");
        Assert.True(answer.Status == 200, answer.Text);
        return answer.Text[..answer.Text.IndexOf(",\"moved\":", StringComparison.Ordinal)] + "}";
    }

    /// <summary>The text as it is inside a stored text.</summary>
    private static string Quoted(string text) => text.Replace("\"", "\\\"", StringComparison.Ordinal);

    private static async Task Replace(string store, string from, string to)
    {
        await using var file = new SqliteConnection($"Data Source={store};Pooling=False");
        Assert.Equal(1, await file.ExecuteAsync(
            "UPDATE revision SET body = replace(body, @from, @to) WHERE kind = 'quote' AND instr(body, @from) > 0", new { from, to }));
    }

    [GeneratedRegex("\"issuedAt\":\"2027-01-02T09:00:00[0-9.]*Z\",", RegexOptions.None, 5000)]
    private static partial Regex IssuedAt();
}
