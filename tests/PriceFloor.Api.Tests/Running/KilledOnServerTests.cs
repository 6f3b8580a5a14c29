using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using PriceFloor.Storage.Tests.Postgres;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>
/// Two processes on one database, and one of the three is killed (SIGKILL) while twelve callers write: whatever was acknowledged is there, also in a
/// synchronous standby that takes over.
/// <c>PRICEFLOOR_CRASH_ROUNDS</c> sets how often, a fiftieth of that in tests/PriceFloor.Storage.Tests/CrashTests.
/// </summary>
public sealed class KilledOnServerTests : IDisposable
{
    private static readonly TimeSpan s_pause = TimeSpan.FromMilliseconds(20);

    private readonly FailoverCluster _cluster = new();
    private readonly AcknowledgedWrites _acknowledged = new();
    private readonly ConcurrentBag<(long At, ServingProcess By)> _kept = [];
    private readonly ConcurrentBag<Answer> _refused = [];
    private readonly int _rounds = int.Max(1,
        int.Parse(Environment.GetEnvironmentVariable("PRICEFLOOR_CRASH_ROUNDS") ?? "50", CultureInfo.InvariantCulture) / 50);

    public void Dispose() => _cluster.Dispose();

    [Fact]
    public async Task A_killed_process_loses_nothing_and_the_other_serves_on()
    {
        using var stays = await Serving();
        await HasAProfile(stays);
        for (var round = 0; round < _rounds; round++)
        {
            using var killed = await Serving();
            await WhileOthersWrite([killed, stays], async () =>
            {
                killed.Kill();
                await Pause(TimeSpan.FromSeconds(1));
            });
            Assert.Empty(_refused); // who asked the other was never refused
            Assert.True(_kept.Count(write => write.By == stays) > 20);
            await _acknowledged.AreAllThere(stays.Client);
        }

        using var again = await Serving();
        await _acknowledged.AreAllThere(again.Client);
    }

    [Fact]
    public async Task A_killed_database_loses_nothing_and_both_serve_again_without_a_restart()
    {
        using var one = await Serving();
        using var other = await Serving();
        await HasAProfile(one);
        for (var round = 0; round < _rounds; round++)
            await LosesNothingWhile([one, other], () =>
            {
                _cluster.Do("kill a");
                return "start a";
            });
        foreach (var process in new[] { one, other }) // one line an outage; those that follow at once may share it
            Assert.InRange(OutagesIn(process), 1, _rounds);
    }

    [Fact]
    public async Task A_synchronous_standby_that_takes_over_has_whatever_was_acknowledged_and_both_serve_again()
    {
        _cluster.Do("synchronous");
        using var one = await Serving("synchronous");
        using var other = await Serving("synchronous");
        await HasAProfile(one);
        await LosesNothingWhile([one, other], () =>
        {
            _cluster.Do("kill a");
            return "promote b";
        });
        Assert.True(_acknowledged.Count > 40);
        foreach (var process in new[] { one, other })
        {
            Assert.Equal(1, OutagesIn(process));
            Assert.DoesNotContain("Followers of floor changes must begin again", process.Log, StringComparison.Ordinal);
        }
    }

    /// <summary>
    /// What happens to the database, and then what makes one serve again: each refusal says when to try again, and what was acknowledged is there.
    /// </summary>
    private async Task LosesNothingWhile(ServingProcess[] processes, Func<string> happen)
    {
        var back = 0L;
        await WhileOthersWrite(processes, async () =>
        {
            var again = happen();
            await Pause(TimeSpan.FromMilliseconds(700));
            _cluster.Do(again);
            back = Stopwatch.GetTimestamp();
            await Pause(TimeSpan.FromSeconds(3));
        });
        Assert.NotEmpty(_refused);
        Assert.All(_refused.Select(answer => answer.IsProblem(503, "busy")["Retry-After"]!),
            seconds => Assert.InRange(int.Parse(seconds, CultureInfo.InvariantCulture), 1, 60));
        Assert.All(processes, process => Assert.True(
            _kept.Any(write => write.By == process && write.At > back && Stopwatch.GetElapsedTime(back, write.At) < TimeSpan.FromSeconds(3)),
            "It does not serve within three seconds."));
        foreach (var process in processes)
            await _acknowledged.AreAllThere(process.Client);
    }

    private static int OutagesIn(ServingProcess process) => process.Log.Split("The store answered").Length - 1;

    private async Task<ServingProcess> Serving(string failover = "lossy")
    {
        var process = new ServingProcess(_cluster, failover);
        await process.IsReady();
        return process;
    }

    private static async Task HasAProfile(ServingProcess process)
    {
        using var body = new StringContent(Sample.SmallProfile, Encoding.UTF8, "application/json");
        using var answer = await process.Client.PutAsync(new Uri("/v1/profiles/main", UriKind.Relative), body, Studio.Cancellation);
        Assert.Equal(201, (int)answer.StatusCode);
    }

    /// <summary>Half of the callers ask each. Whoever gets no answer at all goes to the other, as behind a proxy.</summary>
    private async Task WhileOthersWrite(ServingProcess[] processes, Func<Task> happen)
    {
        using var ended = new CancellationTokenSource();
        var writers = AcknowledgedWrites.Skus.Select((sku, n) => Task.Run(async () =>
        {
            for (var (minutes, at) = (1, n); !ended.IsCancellationRequested; minutes = (minutes % 9000) + 1)
                try
                {
                    var process = processes[at % processes.Length];
                    var answer = await _acknowledged.Write(process.Client, sku, minutes);
                    if (answer.Status is 200 or 201)
                        _kept.Add((Stopwatch.GetTimestamp(), process));
                    else
                        _refused.Add(answer);
                    if (answer.Status is not (200 or 201))
                        await Task.Delay(s_pause, Studio.Cancellation);
                }
                catch (HttpRequestException)
                {
                    at++;
                }
        })).ToList();
        await Pause(TimeSpan.FromMilliseconds(Random.Shared.Next(500, 900)));
        await happen();
        await ended.CancelAsync();
        await Task.WhenAll(writers);
    }

    private static Task Pause(TimeSpan time) => Task.Delay(time, Studio.Cancellation);
}
