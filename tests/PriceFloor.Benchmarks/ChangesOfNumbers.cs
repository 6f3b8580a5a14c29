using System.Diagnostics;
using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>
/// What-ifs over small and large catalogues, and thousands of draws of one design, each from the request to the last byte of the answer.
/// </summary>
public static class ChangesOfNumbers
{
    private const int Port = 5493;

    private const int Warming = 8;

    private const string Ranges = """
        [{"of":"profile:main","at":"/calendar/weeksPerYear","to":{"low":42,"likely":46,"high":50}},
         {"of":"profile:main","at":"/expenses/0/amount","by":{"low":0.95,"high":1.1}},
         {"of":"profile:main","at":"/household/0/amount","by":{"low":0.9,"high":1.1}},
         {"of":"design:D-0","at":"/making/minutesPerPiece","by":{"low":0.9,"high":1.3}}]
        """;

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (designs, rounds) = Numbers.Of(args, 10_000, 9) is [var a, var b] ? (a, b) : default;
        await using (var small = await BenchStudio.StartAsync(await Published.Folder, Port))
        {
            await small.ArrangeAsync(17);
            for (var round = 0; round < Warming + rounds; round++)
            {
                Add(figures, round, "what-ifs, 17 designs on 5 channels, 4 scenarios", "at most 10 ms",
                    await AskAsync(small, "/v1/what-ifs", WhatIf(round, 4)));
                Add(figures, round, "sureness of a price, 4,096 draws", "at most 350 ms", await AskAsync(small, "/v1/sureness", Sureness(4096)));
                Add(figures, round, "sureness of a price, 16,384 draws", "at most 2,200 ms", await AskAsync(small, "/v1/sureness", Sureness(16384)));
            }
        }

        await OfTheDemoAsync(figures, rounds);
        await using var large = await BenchStudio.StartAsync(await Published.Folder, Port);
        await large.ArrangeAsync(designs);
        for (var round = 0; round < Warming + rounds; round++)
            Add(figures, round, string.Create(CultureInfo.InvariantCulture, $"what-ifs, {designs:#,0} designs on 5 channels, 1 scenario"),
                "at most 400 ms", await AskAsync(large, "/v1/what-ifs", WhatIf(round, 1)));
    }

    /// <summary>The invented studio with its plan: what a caller waits for, and what it costs the service.</summary>
    private static async Task OfTheDemoAsync(Figures figures, int rounds)
    {
        await using var demo = await BenchStudio.StartAsync(await Published.Folder, Port, demo: true);
        foreach (var (draws, wall, cpu) in new[] { (16384, "at most 2,200 ms", ""), (4096, "at most 350 ms", "at most 600 ms") })
            for (var round = 0; round < Warming + rounds; round++)
            {
                var before = demo.Process.Cpu;
                var name = string.Create(CultureInfo.InvariantCulture, $"sureness of the demo's plan and a price, {draws:#,0} draws");
                Add(figures, round, name, wall, await AskAsync(demo, "/v1/sureness", OfTheDemo(draws, round)));
                Add(figures, round, $"{name}: server CPU", cpu, (demo.Process.Cpu - before).TotalMilliseconds);
            }
    }

    private static string OfTheDemo(int draws, int seed) => string.Create(CultureInfo.InvariantCulture, $$"""
        {"profile":"main","plan":"this-year","sku":"RB-014","channel":"web","price":58,"draws":{{draws}},"seed":{{seed}},"ranges":[
         {"of":"design:RB-014","at":"/making/steps/torch/handsOnMinutes","to":{"low":30,"likely":34,"high":42} },
         {"of":"profile:main","at":"/calendar/benchShare","to":{"low":0.52,"high":0.64} },
         {"of":"profile:main","at":"/calendar/weeksPerYear","to":{"low":42,"high":47} },
         {"of":"profile:main","at":"/materials/*/price","by":{"low":0.95,"high":1.12} },
         {"of":"profile:main","at":"/household/Food/amount","by":{"low":0.93,"high":1.14} },
         {"of":"profile:main","at":"/expenses/Bench rent/amount","by":{"low":1,"high":1.1} },
         {"of":"profile:main","at":"/soldShare","to":{"low":0.86,"high":0.98} },
         {"of":"plan:this-year","at":"/lines/*/units","by":{"low":0.8,"high":1.1} }]}
        """);

    /// <summary>Other figures in each round, so nothing is known yet.</summary>
    private static string WhatIf(int round, int scenarios)
    {
        var changes = Enumerable.Range(0, scenarios).Select(scenario => string.Create(CultureInfo.InvariantCulture,
            $$"""{"changes":[{"of":"main","at":"/expenses/0/amount","plus":{{(1000 * (scenario + 1)) + round}}}]}"""));
        return $$"""{"profile":"main","scenarios":[{{string.Join(',', changes)}}]}""";
    }

    private static string Sureness(int draws) => string.Create(CultureInfo.InvariantCulture,
        $$"""{"profile":"main","sku":"D-0","channel":"c0","price":40,"draws":{{draws}},"ranges":{{Ranges}}}""");

    private static void Add(Figures figures, int round, string name, string wanted, double milliseconds)
    {
        if (round >= Warming)
            figures.Add(name, " ms", milliseconds, wanted);
    }

    private static async Task<double> AskAsync(BenchStudio studio, string path, string body)
    {
        var clock = Stopwatch.StartNew();
        await studio.TakeAsync(path, body);
        return clock.Elapsed.TotalMilliseconds;
    }
}
