using System.Diagnostics;
using PriceFloor.Api.Running;
using Xunit;
using static PriceFloor.Api.Tests.Running.RealProgram;

namespace PriceFloor.Api.Tests.Running;

/// <summary>Long work says how far it is on a terminal, and nowhere else.</summary>
public sealed class ProgressLineTests
{
    [Theory]
    [InlineData("backup", "0.4289", 3.9, "backup: 42 %, 3 s")] // rounded down: 100 % is not said before the end
    [InlineData("check", "1.2", 0, "check: 100 %, 0 s")]
    [InlineData("restore", null, 61, "restore: 61 s")]
    public void It_says_the_work_its_share_and_the_seconds(string what, string? share, double seconds, string line) => Assert.Equal(line,
        ProgressLine.LineOf(what, share is null ? null : decimal.Parse(share, System.Globalization.CultureInfo.InvariantCulture),
            TimeSpan.FromSeconds(seconds)));

    [Fact]
    public void Where_standard_error_is_no_terminal_there_is_none() => Assert.Null(ProgressLine.Start("work", () => null));

    /// <summary>`script` gives the program a terminal; the sheet comes slowly enough to be watched.</summary>
    [Fact]
    public async Task On_a_terminal_a_slow_sheet_shows_how_far_it_is_and_the_line_is_gone_at_the_end()
    {
        if (!File.Exists("/usr/bin/script"))
            return;
        var folder = Directory.CreateTempSubdirectory("pricefloor-progress-").FullName;
        try
        {
            var program = Path.Combine(AppContext.BaseDirectory, "PriceFloor.Api.dll");
            using (var service = Start(folder, []).WithoutItsOutput())
            {
                await Ready(service);
                Assert.Equal(0, await Terminate(service));
            }

            await File.WriteAllLinesAsync(Path.Combine(folder, "prices.csv"), Enumerable.Repeat("NOPE-1,web,1", 600_000).Prepend("sku,channel,price"),
                Studio.Cancellation);
            var command = $"dotnet '{program}' check '{folder}/prices.csv' --json --data '{folder}' >/dev/null";
            var onTerminal = await Said("script", ["-qec", command, "/dev/null"]);
            Assert.Matches("\rcheck: [0-9]+ %, [0-9]+ s", onTerminal);
            Assert.Matches("\r +\r$", onTerminal);
            Assert.Equal("", await Said("sh", ["-c", command]));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<string> Said(string file, string[] arguments)
    {
        using var started = Process.Start(new ProcessStartInfo(file, arguments)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var output = started.StandardOutput.ReadToEndAsync(Studio.Cancellation);
        var errors = started.StandardError.ReadToEndAsync(Studio.Cancellation);
        await started.WaitForExitAsync(Studio.Cancellation);
        return await output + await errors;
    }
}
