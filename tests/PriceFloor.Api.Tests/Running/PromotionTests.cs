using System.Globalization;
using Microsoft.AspNetCore.Hosting;
using PriceFloor.Storage.Tests.Postgres;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>A standby takes over while two processes serve: what callers hold of a history that may be gone is refused, and stays so.</summary>
public sealed class PromotionTests : IAsyncDisposable
{
    private readonly FailoverCluster _cluster = new();
    private Studio? _one, _other;

    public async ValueTask DisposeAsync()
    {
        foreach (var studio in new[] { _one, _other }.OfType<Studio>())
            await studio.DisposeAsync();
        _cluster.Dispose();
    }

    [Fact]
    public async Task A_standby_that_is_behind_makes_old_cursors_and_ETags_worth_nothing_for_good()
    {
        await Serving("lossy");
        await _one!.HasASmallShop();
        await Pause(TimeSpan.FromSeconds(1)); // the standby has it
        _cluster.Do("stop b");
        await Changed(_other!, 30);
        var (cursor, tag) = (await Cursor(_other!), (await _other!.Get("/v1/designs/RB-014"))["ETag"]!);
        _cluster.Do("kill a");
        _cluster.Do("start b");
        _cluster.Do("promote b");
        await Soon(() => Put(_one, 40));
        for (var written = 0; written < 10; written++) // the position of the lost write is given again, and left behind
        {
            foreach (var studio in new[] { _one, _other })
            {
                Assert.Equal(["unknown-cursor"], (await studio.Get($"/v1/floor-changes?since={cursor}")).IsProblem(422, "invalid-input").Codes);
                Assert.Equal(412, (await studio.Put("/v1/designs/RB-014", Pendant(1), headers: ("If-Match", tag))).Status);
            }

            await Changed(written % 2 == 0 ? _one : _other, 50 + written);
        }

        Assert.Equal(200, (await _other.Get($"/v1/floor-changes?since={await Cursor(_one)}")).Status);
    }

    [Fact]
    public async Task A_synchronous_standby_has_all_and_what_callers_hold_stays_good()
    {
        _cluster.Do("synchronous");
        await Pause(TimeSpan.FromSeconds(1));
        await Serving("synchronous");
        await _one!.HasASmallShop();
        var cursor = await Cursor(_one);
        await Changed(_other!, 30);
        var before = await _other!.Get("/v1/designs/RB-014");
        _cluster.Do("kill a");
        _cluster.Do("promote b");
        await Soon(() => _one.Get("/v1/designs"));
        foreach (var studio in new[] { _one, _other })
        {
            var after = await Soon(() => studio.Get("/v1/designs/RB-014"));
            Assert.Equal((before.Text, before["ETag"]), (after.Text, after["ETag"]));
        }

        var changes = (await _one.Get($"/v1/floor-changes?since={cursor}")).Json.GetProperty("items");
        Assert.Equal("RB-014", changes[0].GetProperty("sku").GetString());
        Assert.Equal(200, (await Soon(() => _one.Put("/v1/designs/RB-014", Pendant(40), headers: ("If-Match", before["ETag"]!)))).Status);
    }

    private async Task Serving(string failover)
    {
        (_one, _other) = (new Studio(configure: Configure), new Studio(configure: Configure));
        await Soon(() => _one.Get("/v1/designs"));
        await Soon(() => _other.Get("/v1/designs"));

        void Configure(IWebHostBuilder host)
        {
            host.UseSetting("PRICEFLOOR_STORE", _cluster.ConnectionString);
            host.UseSetting("PRICEFLOOR_STORE_FAILOVER", failover);
        }
    }

    private static async Task<string> Cursor(Studio studio) => (await studio.Get("/v1/floor-changes")).Json.GetProperty("next").GetString()!;

    private static async Task Changed(Studio studio, int perDay) => Assert.Equal(200, (await Put(studio, perDay)).Status);

    private static Task<Answer> Put(Studio studio, int perDay) => studio.Put("/v1/designs/RB-014", Pendant(perDay));

    private static string Pendant(int perDay) => """{"profile":"main","making":{"piecesPerDay":N}}"""
        .Replace("N", perDay.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);

    /// <summary>Until then each refusal is a 503 that says when to try again.</summary>
    private static async Task<Answer> Soon(Func<Task<Answer>> ask)
    {
        for (var tries = 0; ; tries++)
        {
            var answer = await ask();
            if (answer.Status is 200 or 412)
                return answer;
            Assert.NotNull(answer.IsProblem(503, "busy")["Retry-After"]);
            Assert.True(tries < 100, "It does not serve.");
            await Pause(TimeSpan.FromMilliseconds(100));
        }
    }

    private static Task Pause(TimeSpan time) => Task.Delay(time, Studio.Cancellation);
}
