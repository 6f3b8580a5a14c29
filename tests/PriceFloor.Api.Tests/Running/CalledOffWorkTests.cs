using PriceFloor.Api.Running;
using PriceFloor.Api.Telemetry;
using PriceFloor.Storage;
using Serilog;
using Serilog.Core;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>A start that fails cancels the work beside the service; the log does not report that as a fault.</summary>
public sealed class CalledOffWorkTests
{
    [Fact]
    public async Task Cancelled_work_is_not_logged_and_broken_work_is()
    {
        var captured = new CapturedLog();
        var write = new LoggerConfiguration().WriteTo.Sink(captured);
        RequestLog.KeepCalledOffWorkOut(write);
        await using (var log = write.CreateLogger())
        {
            var host = log.ForContext(Constants.SourceContextPropertyName, "Microsoft.Extensions.Hosting.Internal.Host");
            host.Fatal(new TaskCanceledException(), "called off");
            host.Fatal(new InvalidOperationException(), "broke");
            log.Fatal(new TaskCanceledException(), "another's");
        }

        Assert.Equal(["broke", "another's"], captured.Lines.Select(line => line.Split(' ')[0]));
    }

    [Fact]
    public async Task A_start_that_fails_reports_one_sentence_and_leaves_no_half_of_a_scheduled_backup()
    {
        var folder = Directory.CreateTempSubdirectory("pricefloor-start-");
        HoldsTenMegabytes(Path.Combine(folder.FullName, "pricefloor.db")); // so its backup is under way when the start fails
        var backups = new DirectoryInfo(Path.Combine(folder.FullName, "backups"));
        for (var i = 0; i < 3; i++) // the order of cancellation varies
        {
            var refused = await RealProgram.Run(folder.FullName,
                new Dictionary<string, string> { ["ASPNETCORE_URLS"] = "http://192.0.2.1:5080", ["PRICEFLOOR_BACKUP_EVERY_HOURS"] = "24" });
            Assert.Equal(1, refused.Code);
            RealProgram.OneSentence(refused.Errors, "http://192.0.2.1:5080");
            Assert.DoesNotContain("FTL", refused.Output, StringComparison.Ordinal);
            if (!backups.Exists)
                continue; // cancelled before it began
            Assert.Empty(backups.GetFiles("*.part-*"));
            backups.Delete(recursive: true); // so that another is due
        }

        folder.Delete(recursive: true);
    }

    private static void HoldsTenMegabytes(string path)
    {
        using var store = new Store(new SqliteEngine(path, TimeProvider.System), TimeProvider.System);
        store.Open();
        var text = $"\"{new string('a', 100_000)}\"";
        store.Write("test", async writing =>
        {
            for (var i = 0; i < 100; i++)
                await writing.Save("text", $"t-{i}", text, []);
            return true;
        });
    }
}
