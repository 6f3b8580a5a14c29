using System.Diagnostics;
using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>
/// Designs stored by many writers, each acknowledged when it is on the disk, beside what the disk does: a small append and a flush, again and again.
/// </summary>
public static class Writes
{
    private const int Port = 5491, AppendedBytes = 512;

    private static readonly int[] s_writers = [1, 4, 16, 64];

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (seconds, rounds) = Numbers.Of(args, 3, 3) is [var a, var b] ? (a, b) : default;
        await using var studio = await BenchStudio.StartAsync(await Published.Folder, Port);
        await studio.ArrangeAsync(200);
        await Load.RunAsync(studio.Process, Puts, 4, seconds); // makes ready
        for (var round = 0; round < rounds; round++)
            foreach (var writers in s_writers)
            {
                var flushes = FlushesPerSecond(studio.Data, seconds);
                var writes = await Load.RunAsync(studio.Process, Puts, writers, seconds);
                figures.Add(
                    string.Create(CultureInfo.InvariantCulture, $"designs stored a second, {writers} {(writers == 1 ? "writer" : "writers")}"), "",
                    "fsync", flushes, writes.PerSecond, writers == 64 ? "at least 0.5" : "");
            }
    }

    /// <summary>Each writer stores a design of its own, every time with another minute, so that each is a new revision.</summary>
    public static Func<byte[]> Puts(int writer)
    {
        var minutes = 1;
        return () => WireRequest.Of("PUT", $"/v1/designs/W-{writer}", BenchStudio.AdminKey, $$"""{{{BenchStudio.MadeIn((minutes++ % 500) + 1)}}}""");
    }

    /// <summary>On the file system of the store, by one who waits for each.</summary>
    private static double FlushesPerSecond(string folder, double seconds)
    {
        using var file = File.OpenHandle(Path.Combine(folder, "appended-for-comparison"), FileMode.Create, FileAccess.Write,
            options: FileOptions.DeleteOnClose);
        var (appended, clock, flushes) = (new byte[AppendedBytes], Stopwatch.StartNew(), 0);
        for (; clock.Elapsed.TotalSeconds < seconds; flushes++)
        {
            RandomAccess.Write(file, appended, (long)flushes * AppendedBytes);
            RandomAccess.FlushToDisk(file);
        }

        return flushes / clock.Elapsed.TotalSeconds;
    }
}
