using System.Text.Json;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace PriceFloor.Benchmarks;

/// <summary>What one question costs in the pricing library.</summary>
public static class Micro
{
    /// <summary>With BenchmarkDotNet's own arguments and tables.</summary>
    public static Task RunAsync(string[] args)
    {
        BenchmarkSwitcher.FromAssembly(typeof(PricingBenchmarks).Assembly).Run(args);
        return Task.CompletedTask;
    }

    /// <summary>Shorter, in this process, as lines of our table: the mean, and what is allocated.</summary>
    public static void Measure(Figures figures)
    {
        var config = ManualConfig.CreateEmpty().AddJob(Job.ShortRun.WithToolchain(new InProcessEmitToolchain(logOutput: false)))
            .AddDiagnoser(MemoryDiagnoser.Default).AddLogger(NullLogger.Instance).WithArtifactsPath(Path.Combine(Published.Made, "micro"));
        foreach (var report in BenchmarkRunner.Run<PricingBenchmarks>(config).Reports.Where(report => report.ResultStatistics is not null))
        {
            var name = JsonNamingPolicy.KebabCaseLower.ConvertName(report.BenchmarkCase.Descriptor.WorkloadMethod.Name).Replace('-', ' ');
            figures.Add($"library: {name}", " ns", report.ResultStatistics!.Mean);
            figures.Add($"library: {name}, allocated", " B", report.GcStats.GetBytesAllocatedPerOperation(report.BenchmarkCase) ?? double.NaN);
        }
    }
}
