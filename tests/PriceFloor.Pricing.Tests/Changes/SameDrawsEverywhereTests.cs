using System.Diagnostics;
using Xunit;

namespace PriceFloor.Pricing.Tests.Changes;

/// <summary>The checksum of the draws in processes of their own, compiled and run in other ways.</summary>
public sealed class SameDrawsEverywhereTests
{
    [Theory]
    [InlineData("DOTNET_TieredCompilation", "0")]
    [InlineData("DOTNET_EnableHWIntrinsic", "0")] // neither vectors nor the processor's own bit counting
    [InlineData("DOTNET_TieredPGO", "0")]
    [InlineData("DOTNET_gcServer", "1")]
    [InlineData("DOTNET_PROCESSOR_COUNT", "1")]
    [InlineData("LANG", "tr_TR.UTF-8")]
    public async Task The_draws_are_the_same(string setting, string value)
    {
        var start = new ProcessStartInfo("dotnet",
            [typeof(SameDrawsEverywhereTests).Assembly.Location, "--filter-class", $"*.{nameof(LatinHypercubeTests)}"])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment[setting] = value;
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var errors = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(process.ExitCode == 0, $"{setting}={value}: {await output}{errors}");
    }
}
