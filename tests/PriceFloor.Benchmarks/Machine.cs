using System.Globalization;
using System.Runtime.InteropServices;

namespace PriceFloor.Benchmarks;

/// <summary>What the figures were measured on, in a line.</summary>
public static class Machine
{
    public static void Print() => Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"{Environment.ProcessorCount} processors{Model()}, {GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / 1073741824.0:0} GiB, "
        + $"{RuntimeInformation.FrameworkDescription}, {RuntimeInformation.OSDescription}, {new DriveInfo(Path.GetTempPath()).DriveFormat}{Load()}"));

    private static string Model() =>
        LineOf("/proc/cpuinfo", "model name") is { } line ? $" ({line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim()})" : "";

    /// <summary>What others did on it meanwhile: figures of a busy machine are no figures.</summary>
    private static string Load() => LineOf("/proc/loadavg", "") is { } line ? $", load before {line.Split(' ')[0]}" : "";

    private static string? LineOf(string file, string start) =>
        File.Exists(file) ? File.ReadLines(file).FirstOrDefault(line => line.StartsWith(start, StringComparison.Ordinal)) : null;
}
