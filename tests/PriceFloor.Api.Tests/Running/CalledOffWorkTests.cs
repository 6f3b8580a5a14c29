using PriceFloor.Api.Running;
using PriceFloor.Api.Telemetry;
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
    public async Task A_start_that_fails_reports_one_sentence_with_scheduled_backups_too()
    {
        var folder = Directory.CreateTempSubdirectory("pricefloor-start-");
        for (var i = 0; i < 3; i++) // the order of cancellation varies
        {
            var refused = await RealProgram.Run(folder.FullName,
                new Dictionary<string, string> { ["ASPNETCORE_URLS"] = "http://192.0.2.1:5080", ["PRICEFLOOR_BACKUP_EVERY_HOURS"] = "24" });
            Assert.Equal(1, refused.Code);
            RealProgram.OneSentence(refused.Errors, "http://192.0.2.1:5080");
            Assert.DoesNotContain("FTL", refused.Output, StringComparison.Ordinal);
        }

        folder.Delete(recursive: true);
    }
}
