using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace PriceFloor.Benchmarks;

/// <summary>What the log says: of one design of 2,000 lines, and of a shelf of 500 designs and a million lines, after a sale and again.</summary>
public static class ShelfOfTheLog
{
    private const int Port = 5495, Designs = 500, SheetLines = 100_000, LinesOfOne = 2_000, Warming = 10;

    private static readonly DateOnly s_first = new(2017, 1, 1);

    private static readonly string s_to = Day(3652);

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (lines, rounds) = Numbers.Of(args, 1_000_000, 9) is [var a, var b] ? (a, b) : default;
        await OneDesignAsync(figures, rounds);
        using var data = new TemporaryFolder();
        await using (var filling = await BenchStudio.StartAsync(await Published.Folder, Port, data.Path))
        {
            await filling.ArrangeAsync(Designs);
            for (var from = 0; from < lines; from += SheetLines)
                await AppendAsync(filling, from, int.Min(SheetLines, lines - from), Designs);
            await filling.StopAsync();
        }

        await ShelfAsync(figures, data.Path, lines, rounds);
    }

    private static async Task OneDesignAsync(Figures figures, int rounds)
    {
        await using var studio = await BenchStudio.StartAsync(await Published.Folder, Port);
        await studio.ArrangeAsync(1);
        await AppendAsync(studio, 0, LinesOfOne, 1);
        var path = $"/v1/designs/D-0/evidence?to={s_to}";
        figures.Add("evidence of a design of 2,000 lines, the first answer of a process", " ms", await AskAsync(studio, path));
        for (var round = 0; round < Warming + rounds; round++)
        {
            await AppendAsync(studio, LinesOfOne + round, 1, 1);
            var (anew, again) = (await AskAsync(studio, path), await AskAsync(studio, path));
            if (round < Warming)
                continue;
            figures.Add("evidence of a design of 2,000 lines, all of them read", " ms", anew, "at most 15 ms");
            figures.Add("the same again", " ms", again, "at most 1 ms");
        }
    }

    private static async Task ShelfAsync(Figures figures, string data, int lines, int rounds)
    {
        await using var studio = await BenchStudio.StartAsync(await Published.Folder, Port, data);
        await studio.SendAsync(HttpMethod.Get, "/v1/price-checks?sku=D-0&channel=c0&price=100");
        var (idle, path) = (studio.Process.Memory.Now, $"/v1/shelf?profile=main&to={s_to}");
        var what = string.Create(CultureInfo.InvariantCulture, $"shelf of {Designs} designs and {lines:#,0} lines");
        var cpu = studio.Process.Cpu;
        figures.Add($"{what}, the first answer of a process", " s", await AskAsync(studio, path) / 1000, "at most 4 s");
        figures.Add($"{what}, the first answer of a process: server CPU", " s", (studio.Process.Cpu - cpu).TotalSeconds);
        figures.Add($"{what}: memory at its peak above idle", " MiB", studio.Process.Memory.Peak - idle, "at most 40 MB");
        for (var round = 0; round < Warming + rounds; round++)
        {
            await AppendAsync(studio, lines + round, 1, Designs);
            var (anew, again) = (await AskAsync(studio, path), await AskAsync(studio, path));
            if (round < Warming)
                continue;
            figures.Add($"{what}, after one sale", " ms", anew, "at most 50 ms");
            figures.Add($"{what}, again", " ms", again);
        }
    }

    private static async Task<double> AskAsync(BenchStudio studio, string path)
    {
        var clock = Stopwatch.StartNew();
        await studio.SendAsync(HttpMethod.Get, path);
        return clock.Elapsed.TotalMilliseconds;
    }

    private static Task<string> AppendAsync(BenchStudio studio, int from, int lines, int designs) =>
        studio.SendAsync(HttpMethod.Post, "/v1/movements/batch?source=web-shop", Sheet(from, lines, designs), "text/csv");

    /// <summary>Ten years of a studio: of ten lines one is a batch of twelve made, nine are sales of a piece; some orders have two lines.</summary>
    private static string Sheet(int from, int lines, int designs)
    {
        var text = new StringBuilder("ref,on,what,sku,channel,pieces,price,listed,order\n", lines * 70);
        for (var i = from; i < from + lines; i++)
        {
            var (design, day) = (i % designs, Day((int)(3652L * i / (i < 1_000_000 ? 1_000_000 : i + 1L))));
            if (designs == 1)
                day = Day(int.Min(3652, i));
            if (i / designs % 10 == 0)
                text.Append(CultureInfo.InvariantCulture, $"{i},{day},made,D-{design},,12,,,\n");
            else
                text.Append(CultureInfo.InvariantCulture, $"{i},{day},sold,D-{design},c{i / designs % 3},1,{40 + (design % 50)}.00,")
                    .Append(CultureInfo.InvariantCulture, $"{40 + (design % 50)}.00,{(i % 10 == 9 ? i - 1 : i)}\n");
        }

        return text.ToString();
    }

    private static string Day(int day) => s_first.AddDays(day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
