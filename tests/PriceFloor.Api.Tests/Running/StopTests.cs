using System.Diagnostics;
using System.Net;
using System.Text;
using PriceFloor.Api.Access;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>The real program on SIGTERM, as systemd and docker send it.</summary>
public sealed class StopTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pricefloor-stop-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task An_answer_that_has_begun_is_finished_and_the_log_is_in_the_file()
    {
        using var service = Start(_folder, new Dictionary<string, string> { ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey }, "--demo");
        await Ready(service);
        using var client = ClientOf(service);
        using var lines = new SlowLines(count: 8, TimeSpan.FromMilliseconds(250));
        var asking = client.PostAsync(new Uri("/v1/price-checks/batch", UriKind.Relative), lines, Studio.Cancellation);
        await lines.Begun;
        await Task.Delay(500, Studio.Cancellation);
        var watch = Stopwatch.StartNew();
        var ending = Terminate(service);
        using var answer = await asking;
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        // and the summary
        Assert.Equal(8 + 1, (await answer.Content.ReadAsStringAsync(Studio.Cancellation)).Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.Equal(0, await ending);
        Assert.InRange(watch.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(8));
        Assert.False(File.Exists(Path.Combine(_folder, "pricefloor.db-wal")));
        Assert.Equal(0, (await RealProgram.Run(_folder, "check-store")).Code);
    }

    [Fact]
    public async Task A_caller_who_never_ends_does_not_hold_it_up()
    {
        using var service = Start(_folder, new Dictionary<string, string> { ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey }, "--demo");
        await Ready(service);
        using var client = ClientOf(service);
        using var lines = new SlowLines(count: 1000, TimeSpan.FromMilliseconds(100));
        var asking = client.PostAsync(new Uri("/v1/price-checks/batch", UriKind.Relative), lines, Studio.Cancellation);
        await lines.Begun;
        var watch = Stopwatch.StartNew();
        Assert.Equal(0, await Terminate(service));
        Assert.InRange(watch.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(8));
        Assert.False(File.Exists(Path.Combine(_folder, "pricefloor.db-wal")));
        await Assert.ThrowsAnyAsync<Exception>(async () => await (await asking).Content.ReadAsStringAsync(Studio.Cancellation));
    }

    [Fact]
    public async Task The_settings_are_logged_at_the_start_but_no_secret()
    {
        using var service = Start(_folder, new Dictionary<string, string>
        {
            ["PRICEFLOOR_ADMIN_KEY"] = Studio.AdminKey,
            ["PRICEFLOOR_BACKUPS_KEPT"] = "3",
            ["PRICEFLOOR_BACKUP_KEPT"] = "4",
        });
        await Ready(service);
        Assert.Equal(0, await Terminate(service));
        var output = await service.Process.StandardOutput.ReadToEndAsync(Studio.Cancellation);
        foreach (var told in new[]
        {
            $"data folder is {_folder}",
            "PRICEFLOOR_BACKUPS_KEPT = 3",
            "PRICEFLOOR_ADMIN_KEY = (set, not shown)",
            "PRICEFLOOR_BACKUP_KEPT is not a setting",
        })
            Assert.Contains(told, output, StringComparison.Ordinal);
        Assert.DoesNotContain(Studio.AdminKey, output, StringComparison.Ordinal);
    }

    private static HttpClient ClientOf(Started service)
    {
        var client = new HttpClient { BaseAddress = new Uri(service.Address) };
        client.DefaultRequestHeaders.Authorization = new("Bearer", Studio.AdminKey);
        return client;
    }

    /// <summary>Price checks that arrive one by one.</summary>
    private sealed class SlowLines : HttpContent
    {
        private readonly int _count;
        private readonly TimeSpan _pause;
        private readonly TaskCompletionSource _begun = new();

        public SlowLines(int count, TimeSpan pause)
        {
            (_count, _pause) = (count, pause);
            Headers.ContentType = new("application/x-ndjson");
        }

        public Task Begun => _begun.Task;

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            for (var i = 0; i < _count; i++)
            {
                await stream.WriteAsync(Encoding.UTF8.GetBytes("""{"sku":"nothing","channel":"web","price":1}""" + "\n"), Studio.Cancellation);
                await stream.FlushAsync(Studio.Cancellation);
                _begun.TrySetResult();
                await Task.Delay(_pause, Studio.Cancellation);
            }
        }

        protected override bool TryComputeLength(out long length)
        {
            length = 0;
            return false;
        }
    }
}
