using System.Text.RegularExpressions;
using Xunit;

namespace PriceFloor.Api.Tests.Quotes;

/// <summary>What the client of a quote reads, and what nobody learns from it.</summary>
public sealed partial class QuotePageTests
{
    [Fact]
    public async Task The_page_says_what_is_offered_and_when_it_is_paid()
    {
        await using var studio = await QuotingStudio.Worked();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Goblets());
        await studio.Issues("Q-1");
        var page = await studio.Get("/v1/quotes/Q-1/page", await studio.ClientFor("check"));
        Assert.Equal((200, "text/html"), (page.Status, page.ContentType));
        Assert.Equal("default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'",
            page["Content-Security-Policy"]);
        Assert.Equal(
        [
            "Quote Q-1", "Issued on 2027-01-02.", "What is made", "What|Pieces", "Twist stem goblet, tall|30", "Price", "Payment|USD",
            "Deposit, before the work begins (40 %)|1,680.00", "Delivery (60 %)|2,520.00", "Price in all|4,200.00",
            "Included: Design and drawing, Fitting.", "Valid until 2027-03-31, the whole day.", "Rights: one year, shop display",
        ], Lines(page));
    }

    [Fact]
    public async Task No_key_finds_a_cost_on_it()
    {
        await using var studio = await QuotingStudio.Worked();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Goblets("\"GB-030\""));
        var figures = (await studio.Get("/v1/quotes/Q-1/figures?workings=true")).Text;
        await studio.Issues("Q-1");
        var costs = Figure().Matches(figures + QuotingStudio.Goblet).Select(figure => figure.Value.TrimEnd('0'))
            .Concat(["3707", "3792", "656", "238.8", "357", "wedding", "Engraver", "Travel", "design-fee", "torch", "glass and gas"])
            .Concat(["GB-030", "main"])
            .Except(["4200.", "0.4", "0.6", "30."]).Distinct().ToList();
        Assert.True(costs.Count > 60);
        foreach (var scopes in new string[][] { ["check"], ["read"], ["check", "read"], ["read", "write"], ["read", "write", "admin"] })
        {
            var page = await studio.Get("/v1/quotes/Q-1/page", await studio.ClientFor(scopes));
            var text = page.Text[page.Text.IndexOf("<body>", StringComparison.Ordinal)..].Replace(",", "", StringComparison.Ordinal);
            Assert.All(costs, cost => Assert.DoesNotContain(cost, text, StringComparison.OrdinalIgnoreCase));
            Assert.DoesNotMatch("(?i)floor|hours|material|bench|<script|https?:", text);
        }
    }

    [Fact]
    public async Task Keys_without_a_right_to_it_do_not_see_it()
    {
        await using var studio = await QuotingStudio.Small();
        await studio.Has("/v1/quotes/Q-1", QuotingStudio.Repair);
        var checker = await studio.ClientFor("check");
        (await studio.Get("/v1/quotes/Q-1/page", checker)).IsProblem(403, "key-not-allowed"); // a draft
        Assert.Contains("Draft: this is not an offer yet.", Lines(await studio.Get("/v1/quotes/Q-1/page")));
        await studio.Issues("Q-1");
        Assert.Equal(200, (await studio.Get("/v1/quotes/Q-1/page", checker)).Status);
        (await studio.Get("/v1/quotes/Q-9/page", checker)).IsProblem(404, "not-found");
        (await studio.Get("/v1/quotes/Q-1/page", await studio.ClientFor("verdict"))).IsProblem(403, "key-not-allowed");
        (await studio.Get("/v1/quotes/Q-1/page", await studio.ClientFor("write"))).IsProblem(403, "key-not-allowed");
    }

    [Fact]
    public async Task What_keeps_a_client_from_accepting_it_stands_at_its_head()
    {
        await using var studio = await QuotingStudio.Small();
        foreach (var (key, result) in new[] { ("Q-1", "declined"), ("Q-2", "withdrawn"), ("Q-3", "accepted") })
        {
            await studio.Has($"/v1/quotes/{key}", QuotingStudio.Repair);
            await studio.Issues(key);
            await studio.Has($"/v1/quotes/{key}/outcome", $$"""{"result":"{{result}}"}""");
            Assert.Contains($"This quote was {result}.", Lines(await studio.Get($"/v1/quotes/{key}/page")));
        }

        await studio.Has("/v1/quotes/Q-4", QuotingStudio.Repair);
        await studio.Issues("Q-4");
        studio.Clock.Advance(TimeSpan.FromDays(60));
        Assert.Contains("This quote is no longer valid.", Lines(await studio.Get("/v1/quotes/Q-4/page")));
        await studio.Post("/v1/quotes/Q-4/revise", """{"as":"Q-5"}""");
        Assert.Contains("This quote was replaced by a later one.", Lines(await studio.Get("/v1/quotes/Q-4/page")));
    }

    [Fact]
    public async Task Names_are_text_and_those_that_are_left_out_are_the_design_s()
    {
        await using var studio = await QuotingStudio.Small();
        await studio.Has("/v1/designs/BOWL", """{"name":"Bowl <b>& more","profile":"main","making":{"minutesPerPiece":60}}""");
        await studio.Has("/v1/quotes/Q-1", """
            {"profile":"main","channel":"web","validUntil":"2027-02-01","price":100,
             "payments":[{"when":"<i>on</i> delivery","share":0.3333},{"when":"later","share":0.6667}],
             "lines":[{"quantity":1,"design":"BOWL"},{"quantity":2,"design":{"making":{"minutesPerPiece":5}}}]}
            """);
        foreach (var _ in new[] { "draft", "issued" })
        {
            var page = (await studio.Get("/v1/quotes/Q-1/page")).Text;
            Assert.Contains("<tr><th scope=\"row\">Bowl &lt;b&gt;&amp; more</th><td class=\"money\">1</td></tr>", page, StringComparison.Ordinal);
            Assert.Contains("<tr><th scope=\"row\">Made to order</th><td class=\"money\">2</td></tr>", page, StringComparison.Ordinal);
            Assert.Contains("&lt;i&gt;on&lt;/i&gt; delivery (33.33 %)</th><td class=\"money\">33.33<", page, StringComparison.Ordinal);
            await studio.Issues("Q-1");
        }
    }

    /// <summary>The words of the page, a line for each element that stands on one.</summary>
    private static List<string> Lines(Answer page) =>
        [.. page.Text[(page.Text.IndexOf("<body>", StringComparison.Ordinal) + 6)..].Split('\n')
            .Select(line => Tag().Replace(BetweenCells().Replace(line, "|"), "")).Where(line => line.Length > 0)];

    [GeneratedRegex(@"\d+\.\d+", RegexOptions.None, 5000)]
    private static partial Regex Figure();

    [GeneratedRegex("</t[hd]><t[hd][^>]*>", RegexOptions.None, 5000)]
    private static partial Regex BetweenCells();

    [GeneratedRegex("<[^>]+>", RegexOptions.None, 5000)]
    private static partial Regex Tag();
}
