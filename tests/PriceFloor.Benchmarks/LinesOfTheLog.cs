using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace PriceFloor.Benchmarks;

/// <summary>
/// A million sales appended to the log as sheets over HTTP: what a line costs and takes on the disk; how long a price write waits beside sheets, and
/// price checks too.
/// </summary>
public static class LinesOfTheLog
{
    private const int Port = 5494, Designs = 500, SheetLines = 200_000, Warming = 20_000;
    private const double SecondsOfWarming = 6;
    private const string Named = "source=web-shop", Whole = "source=till&from=2024-01-01&to=2026-12-31",
        Heading = "ref,on,sku,channel,pieces,price,listed,fees,order\n";

    private static readonly DateOnly s_first = new(2024, 1, 1);

    private static readonly string s_sheet = string.Create(CultureInfo.InvariantCulture, $"{SheetLines:#,0} lines");

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (lines, rounds) = Numbers.Of(args, 1_000_000, 2) is [var a, var b] ? (a, b) : default;
        for (var round = 0; round < rounds; round++)
        {
            using var data = new TemporaryFolder();
            await AppendAllAsync(figures, data.Path, lines);
            figures.Add("a stored line of the log, indexes included", " B", (double)new FileInfo(data.File("pricefloor.db")).Length / lines,
                "at most 120 B");
            await using var studio = await BenchStudio.StartAsync(await Published.Folder, Port, data.Path);
            await SwitchAsync(figures, studio);
            await BesideChecksAsync(figures, studio);
            await ClearingAsync(figures, studio);
        }
    }

    private static async Task AppendAllAsync(Figures figures, string data, int lines)
    {
        await using var studio = await BenchStudio.StartAsync(await Published.Folder, Port, data);
        await studio.ArrangeAsync(Designs);
        await SendAsync(studio, Named, Sheet(0, Warming, 52)); // makes ready
        var (cpu, clock) = (studio.Process.Cpu, Stopwatch.StartNew());
        for (var from = Warming; from < lines; from += SheetLines)
            await SendAsync(studio, Named, Sheet(from, int.Min(SheetLines, lines - from), 52));
        var (took, all) = (clock.Elapsed, string.Create(CultureInfo.InvariantCulture, $"{lines:#,0} lines appended to the log"));
        figures.Add($"{all}: server CPU a line", " us", (studio.Process.Cpu - cpu).TotalMicroseconds / (lines - Warming), "at most 20 us");
        figures.Add($"{all}: all of it", " s", took.TotalSeconds);
        await studio.StopAsync();
    }

    /// <summary>All of three years from a till without ids: first new, then each line with another price.</summary>
    private static async Task SwitchAsync(Figures figures, BenchStudio studio)
    {
        await SendAsync(studio, Whole, Sheet(0, SheetLines, 52));
        var longest = await LongestWriteAsync(studio, SendAsync(studio, Whole, Sheet(0, SheetLines, 49)));
        figures.Add($"longest wait of a price write beside a switch of {s_sheet}", " ms", longest.TotalMilliseconds, "at most 300 ms");
    }

    private static async Task BesideChecksAsync(Figures figures, BenchStudio studio)
    {
        var check = WireRequest.Check(BenchStudio.AdminKey);
        await Load.RunAsync(studio.Process, check, 1, SecondsOfWarming);
        for (var from = 10_000_000; from < 10_000_000 + (6 * SheetLines); from += 2 * SheetLines)
        {
            var sheet = Sheet(from, SheetLines, 52);
            var alone = await Load.RunAsync(studio.Process, check, 1, 2);
            var appending = SendAsync(studio, Named, sheet);
            var beside = await Load.RunBesideAsync(studio.Process, check, appending);
            await appending;
            figures.Add($"p99 of price checks, 1 connection, beside an append of {s_sheet}", " ms", "alone", alone.P99Milliseconds,
                beside.P99Milliseconds, "at most 1.5");
            var longest = await LongestWriteAsync(studio, SendAsync(studio, Named, Sheet(from + SheetLines, SheetLines, 52)));
            figures.Add($"longest wait of a price write beside an append of {s_sheet}", " ms", longest.TotalMilliseconds, "at most 300 ms");
        }
    }

    /// <summary>Checks of a price at which pieces are sold off, which count in the log what was sold since, beside checks of another.</summary>
    private static async Task ClearingAsync(Figures figures, BenchStudio studio)
    {
        await studio.SendAsync(HttpMethod.Put, "/v1/designs/D-118/prices/c3",
            """{"price":58.00,"currency":"USD","clears":{"pieces":5000,"until":"2099-12-31"}}""");
        var (plain, clearing) = (WireRequest.Check(BenchStudio.AdminKey), WireRequest.Check(BenchStudio.AdminKey, "D-118"));
        await Load.RunAsync(studio.Process, clearing, 1, SecondsOfWarming);
        for (var round = 0; round < 3; round++)
        {
            var (of, ours) = (await Load.RunAsync(studio.Process, plain, 1, 2), await Load.RunAsync(studio.Process, clearing, 1, 2));
            figures.Add("server CPU a check of a price that clears pieces, 1 connection", " us", "another price", of.CpuMicrosecondsARequest,
                ours.CpuMicrosecondsARequest);
            figures.Add("p99 of checks of a price that clears pieces, 1 connection", " ms", "another price", of.P99Milliseconds,
                ours.P99Milliseconds);
        }
    }

    /// <summary>One price write after another, until something is done.</summary>
    private static async Task<TimeSpan> LongestWriteAsync(BenchStudio studio, Task until)
    {
        var (longest, minutes) = (TimeSpan.Zero, 0);
        while (!until.IsCompleted)
        {
            var clock = Stopwatch.StartNew();
            await studio.SendAsync(HttpMethod.Put, "/v1/designs/D-0", $$"""{{{BenchStudio.MadeIn((minutes++ % 500) + 1)}}}""");
            longest = clock.Elapsed > longest ? clock.Elapsed : longest;
        }

        await until;
        return longest;
    }

    private static Task<string> SendAsync(BenchStudio studio, string query, string sheet) =>
        studio.SendAsync(HttpMethod.Post, $"/v1/movements/batch?{query}", sheet, "text/csv");

    /// <summary>Sales of three years over all designs and channels.</summary>
    private static string Sheet(int from, int lines, int price)
    {
        var text = new StringBuilder(Heading, lines * 70);
        for (var i = from; i < from + lines; i++)
            text.Append(CultureInfo.InvariantCulture,
                $"{i}/1,{s_first.AddDays(i % 1096):yyyy-MM-dd},D-{i * 7 % Designs},c{i % BenchStudio.Channels},{1 + (i % 3)},{price}.00,58.00,1.96,{i}\n");
        return text.ToString();
    }
}
