using System.Diagnostics;
using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>The whole price list, right after a change of the cost profile that moves every price, and asked for again.</summary>
public static class PriceListAfterAChange
{
    private const int Port = 5491;

    /// <summary>The first of a process are not yet compiled as well as the later ones.</summary>
    private const int Warming = 8;

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (designs, rounds) = Numbers.Of(args, 10_000, 9) is [var a, var b] ? (a, b) : default;
        await using var studio = await BenchStudio.StartAsync(await Published.Folder, Port);
        await studio.ArrangeAsync(designs);
        var what = string.Create(CultureInfo.InvariantCulture, $"price list of {designs:#,0} designs on {BenchStudio.Channels} channels");
        for (var round = 0; round < Warming + rounds; round++)
        {
            var anew = await ReckonedAnewAsync(studio, round);
            var again = await AskAsync(studio);
            if (round == 0)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"The {what}: {anew.Bytes / 1048576.0:0.0} MiB; {anew.Milliseconds:0} ms for the first one of a process"));
            if (round < Warming)
                continue;
            figures.Add($"{what}, after a change of the profile", " ms", anew.Milliseconds, "at most 250 ms");
            figures.Add($"{what}, from memory", " ms", again.Milliseconds);
        }
    }

    /// <summary>The list right after the profile's expenses have changed.</summary>
    /// <param name="studio">Who is asked.</param>
    /// <param name="round">Another one for other expenses.</param>
    public static async Task<(double Milliseconds, long Bytes)> ReckonedAnewAsync(BenchStudio studio, int round)
    {
        await studio.PutProfileAsync(24100 + round);
        return await AskAsync(studio);
    }

    /// <summary>From the request to the last byte of the answer.</summary>
    private static async Task<(double Milliseconds, long Bytes)> AskAsync(BenchStudio studio)
    {
        var clock = Stopwatch.StartNew();
        using var answer = await studio.Client.GetAsync(new Uri("/v1/price-list", UriKind.Relative), HttpCompletionOption.ResponseHeadersRead);
        await using var body = await answer.EnsureSuccessStatusCode().Content.ReadAsStreamAsync();
        var (buffer, bytes) = (new byte[256 * 1024], 0L);
        while (await body.ReadAsync(buffer) is > 0 and var count)
            bytes += count;
        return (clock.Elapsed.TotalMilliseconds, bytes);
    }
}
