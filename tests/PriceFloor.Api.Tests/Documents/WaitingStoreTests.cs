using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Xunit;

namespace PriceFloor.Api.Tests.Documents;

/// <summary>The service over an engine whose every answer comes later: the same answers, and no thread waits for one.</summary>
public sealed class WaitingStoreTests
{
    private const string Before = "asOf=2027-01-02T09:30:00Z";

    private static readonly string[] s_questions =
    [
        "/v1/profiles", "/v1/designs?limit=1", "/v1/designs/RB-014", $"/v1/designs/RB-014?{Before}", "/v1/designs/RB-014/revisions",
        "/v1/designs/RB-014/revisions/1", "/v1/designs/GONE", "/v1/designs/GONE/revisions", "/v1/designs/RB-014/prices", "/v1/audit?limit=2",
        "/v1/keys", "/v1/floor-changes", $"/v1/floor-changes?since=2027-01-02T09:30:00Z&limit=1", "/v1/price-list", $"/v1/price-list?{Before}",
        "/v1/designs/RB-014/floor-price", $"/v1/designs/RB-014/floor-price?{Before}&workings=true", "/v1/designs/NOT/floor-price",
        "/v1/price-checks?sku=RB-014&channel=web&price=58", $"/v1/price-checks?sku=RB-014&channel=web&price=58&{Before}",
        $"/v1/designs/RB-014/remedies?channel=web&{Before}", "/v1/designs/RB-014/floor-history?channel=web", "/v1/remedies",
        "/v1/profiles/main/requirement", $"/v1/profiles/main/requirement?{Before}", "/health/ready",
    ];

    [Fact]
    public async Task Answers_are_the_same_whether_the_store_answers_at_once_or_later()
    {
        await using var studio = new Studio();
        await using var waiting = new Studio(configure: host => host.UseWaitingStore());
        await HasAHistory(studio);
        await HasAHistory(waiting);
        var (limited, limitedOver) = (await LimitedTo("other", studio), await LimitedTo("other", waiting));
        foreach (var question in s_questions)
        {
            Assert.Equal(Plain(await studio.Get(question)), Plain(await waiting.Get(question)));
            Assert.Equal(Plain(await studio.Get(question, limited)), Plain(await waiting.Get(question, limitedOver)));
        }
    }

    [Fact]
    public async Task Of_many_who_change_one_document_one_wins_each_time_and_readers_see_it_at_once()
    {
        await using var waiting = new Studio(configure: host => host.UseWaitingStore());
        await waiting.HasASmallShop();
        for (var round = 1; round <= 5; round++)
        {
            var seen = (await waiting.Get("/v1/designs/RB-014"))["ETag"]!;
            var outcomes = await Task.WhenAll(Enumerable.Range(30, 8).Select(minutes => waiting.Put("/v1/designs/RB-014",
                $$$"""{"profile":"main","making":{"minutesPerPiece":{{{minutes + 10 * round}}}}}""", headers: ("If-Match", seen))));
            Assert.Equal(7, outcomes.Count(one => one.Status == 412));
            var kept = Assert.Single(outcomes, one => one.Status == 200).Json.GetProperty("revision").GetInt64();
            Assert.Equal($"RB-014@{kept}",
                (await waiting.Get("/v1/designs/RB-014/floor-price")).Json.GetProperty("basis").GetProperty("design").GetString());
        }
    }

    private static async Task HasAHistory(Studio studio)
    {
        await studio.HasASmallShop();
        await studio.Has("/v1/profiles/other", Sample.SmallProfile);
        await studio.Has("/v1/designs/GONE", """{"profile":"other","making":{"minutesPerPiece":30},"aliases":["OLD"]}""");
        await studio.Has("/v1/designs/GONE/prices/web", """{"price":80}""");
        studio.Clock.Advance(TimeSpan.FromHours(1));
        var lines = """{"key":"RB-014","profile":"main","making":{"minutesPerPiece":45}}""" + "\n"
            + """{"key":"RB-015","profile":"other","making":{"minutesPerPiece":20}}""" + "\n";
        Assert.Equal(200, (await studio.SendBytes("POST", "/v1/designs/batch", Encoding.UTF8.GetBytes(lines), "application/x-ndjson")).Status);
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":40}""");
        (await studio.Put("/v1/designs/X", """{"profile":"none","making":{"minutesPerPiece":45}}""")).IsProblem(422, "unknown-reference");
        (await studio.Delete("/v1/profiles/other")).IsProblem(409, "in-use");
        Assert.Equal(204, (await studio.Delete("/v1/designs/GONE")).Status);
    }

    private static async Task<HttpClient> LimitedTo(string profile, Studio studio)
    {
        var made = await studio.Post("/v1/keys", $$"""{"name":"limited","scopes":["read"],"profiles":["{{profile}}"]}""");
        return studio.ClientWith(made.Json.GetProperty("key").GetString());
    }

    /// <summary>What does not differ by chance from one store to another.</summary>
    private static (int Status, string Text) Plain(Answer answer) => (answer.Status,
        Regex.Replace(answer.Text, "\"(requestId|next)\":\"[^\"]*\"", "", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)));
}
