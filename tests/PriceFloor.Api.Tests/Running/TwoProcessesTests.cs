using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>
/// What one process acknowledged, another has with its next answer. PRICEFLOOR_TEST_ROUNDS makes these tests longer, by so many times.
/// </summary>
public sealed class TwoProcessesTests
{
    private static readonly int s_longer =
        int.TryParse(Environment.GetEnvironmentVariable("PRICEFLOOR_TEST_ROUNDS"), CultureInfo.InvariantCulture, out var longer) ? longer : 1;

    [Fact]
    public async Task Of_callers_who_change_the_same_revision_one_wins_wherever_they_are()
    {
        await using var both = new TwoProcesses();
        await both.One.HasASmallShop();
        for (var round = 0; round < 15 * s_longer; round++)
        {
            var tag = (await both.Other.Get("/v1/designs/RB-014"))["ETag"]!;
            var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(n => (n % 2 == 0 ? both.One : both.Other).Put(
                "/v1/designs/RB-014", Pendant(20 + round * 8 + n), headers: ("If-Match", tag))));
            Assert.Equal([200, .. Enumerable.Repeat(412, 7)], answers.Select(answer => answer.Status).Order());
        }
    }

    [Fact]
    public async Task A_write_at_one_is_in_the_next_answer_of_the_other()
    {
        await using var both = new TwoProcesses();
        await both.One.HasASmallShop();
        for (var round = 0; round < 30 * s_longer; round++)
        {
            var (here, there) = round % 2 == 0 ? (both.One, both.Other) : (both.Other, both.One);
            Assert.Equal(200, (await here.Put("/v1/designs/RB-014", Pendant(round + 1))).Status);
            Assert.Equal(await FloorOf(here), await FloorOf(there));
            Assert.Equal((await here.Get("/v1/designs/RB-014")).Text, (await there.Get("/v1/designs/RB-014")).Text);
        }
    }

    [Fact]
    public async Task A_key_that_was_made_or_deleted_at_one_is_so_at_the_other()
    {
        await using var both = new TwoProcesses();
        for (var round = 0; round < 10 * s_longer; round++)
        {
            var (here, there) = round % 2 == 0 ? (both.One, both.Other) : (both.Other, both.One);
            var made = await here.Post("/v1/keys", $$"""{"name":"shop-{{round}}","scopes":["read"]}""");
            var key = made.Json.GetProperty("key").GetString();
            Assert.Equal(200, (await there.Get("/v1/designs", there.ClientWith(key))).Status);
            Assert.Equal(204, (await there.Delete($"/v1/keys/shop-{round}")).Status);
            Assert.Equal(401, (await here.Get("/v1/designs", here.ClientWith(key))).Status);
            Assert.Equal(401, (await there.Get("/v1/designs", there.ClientWith(key))).Status);
        }
    }

    [Fact]
    public async Task A_limit_holds_over_both()
    {
        await using var both = new TwoProcesses(("PRICEFLOOR_REQUESTS_PER_MINUTE", "400"));
        await Know(both, processes: 2);
        var key = (await both.One.Post("/v1/keys", """{"name":"shop","scopes":["read"]}""")).Json.GetProperty("key").GetString();
        var (one, other) = (both.One.ClientWith(key), both.Other.ClientWith(key));
        var allowed = 0;
        for (var n = 0; n < 500; n++)
            if ((await (n % 2 == 0 ? both.One.Get("/v1/channels", one) : both.Other.Get("/v1/channels", other))).Status == 200)
                allowed++;
        Assert.Equal(400, allowed);
    }

    /// <summary>Each item's former floor is what the follower held, so none was missed, repeated or out of order.</summary>
    [Fact]
    public async Task Followers_that_go_to_either_at_each_poll_miss_and_repeat_nothing()
    {
        await using var both = new TwoProcesses();
        await both.One.HasASmallShop();
        var begun = (await both.Other.Get("/v1/floor-changes?limit=500")).Json;
        using var ended = new CancellationTokenSource();
        var followers = Enumerable.Range(0, 2).Select(n => Follow(both, begun, new Random(n), ended.Token)).ToList();
        await Task.WhenAll(Enumerable.Range(0, 3).Select(n => Write(both, n, new Random(100 + n), TimeSpan.FromSeconds(3 * s_longer))));
        await ended.CancelAsync();
        var held = await Task.WhenAll(followers);
        foreach (var studio in new[] { both.One, both.Other })
        {
            var fresh = Items((await studio.Get("/v1/floor-changes?limit=500")).Json).ToDictionary(item => item.Name, item => item.Floor);
            Assert.True(fresh.Count > 1);
            Assert.All(held, one => Assert.Equal(fresh.Where(floor => floor.Value is not null).OrderBy(floor => floor.Key),
                one.Where(floor => floor.Value is not null).OrderBy(floor => floor.Key)));
        }
    }

    [Fact]
    public async Task One_that_hears_from_time_to_time_hears_within_that_time()
    {
        await using var both = new TwoProcesses(("PRICEFLOOR_STORE_FRESH", "20"));
        await both.One.HasASmallShop();
        for (var round = 0; round < 5; round++)
        {
            Assert.Equal(200, (await both.One.Put("/v1/designs/RB-014", Pendant(round + 1))).Status);
            var (written, tries) = (await FloorOf(both.One), 0);
            while (await FloorOf(both.Other) != written)
            {
                Assert.True(tries++ < 100, "It does not hear."); // a machine may stand still
                await Task.Delay(TimeSpan.FromMilliseconds(20), Studio.Cancellation);
            }
        }
    }

    private static string Pendant(int perDay) => """{"profile":"main","making":{"piecesPerDay":N}}"""
        .Replace("N", (1 + perDay % 97).ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);

    private static async Task<string> FloorOf(Studio studio) =>
        (await studio.Post("/v1/floor-prices", """{"design":"RB-014"}""")).Json.GetProperty("floor").GetRawText();

    private static async Task Know(TwoProcesses both, int processes)
    {
        foreach (var studio in new[] { both.One, both.Other })
            for (var tries = 0; studio.Services.GetRequiredService<Store>().Processes != processes; tries++)
            {
                Assert.True(tries < 200, "It does not know of the other.");
                await Task.Delay(TimeSpan.FromMilliseconds(100), Studio.Cancellation);
            }
    }

    private static async Task Write(TwoProcesses both, int writer, Random random, TimeSpan time)
    {
        for (var until = DateTime.UtcNow + time; DateTime.UtcNow < until;)
        {
            var (path, studio) = ($"/v1/designs/W{writer}-{random.Next(4)}", both.Any(random));
            var answer = random.Next(5) == 0 ? await studio.Delete(path) : await studio.Put(path, Pendant(random.Next(97)));
            Assert.True(answer.Status is 200 or 201 or 204 or 404, answer.Text);
        }
    }

    private static async Task<ConcurrentDictionary<string, string?>> Follow(TwoProcesses both, JsonElement begun, Random random,
        CancellationToken ended)
    {
        var held = new ConcurrentDictionary<string, string?>(Items(begun).Select(item => new KeyValuePair<string, string?>(item.Name, item.Floor)));
        for (var (next, isLast) = (begun.GetProperty("next").GetString(), false); ;)
        {
            var answer = await both.Any(random).Get($"/v1/floor-changes?since={next}");
            Assert.True(answer.Status == 200, answer.Text);
            var items = Items(answer.Json).ToList();
            foreach (var (name, old, floor) in items)
            {
                Assert.Equal(held.GetValueOrDefault(name), old);
                held[name] = floor;
            }

            next = answer.Json.GetProperty("next").GetString();
            if (isLast && items.Count == 0)
                return held;
            isLast = ended.IsCancellationRequested;
        }
    }

    private static IEnumerable<(string Name, string? Old, string? Floor)> Items(JsonElement answer) => answer.GetProperty("items").EnumerateArray()
        .Select(item => ($"{item.GetProperty("sku").GetString()}/{item.GetProperty("channel").GetString()}", Text(item, "oldFloorPrice"),
            Text(item, "newFloorPrice")));

    private static string? Text(JsonElement item, string name) =>
        item.TryGetProperty(name, out var value) && value.ValueKind != JsonValueKind.Null ? value.GetRawText() : null;
}
