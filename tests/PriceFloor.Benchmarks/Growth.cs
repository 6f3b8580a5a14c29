using System.Globalization;
using System.Text.Json;

namespace PriceFloor.Benchmarks;

/// <summary>The same questions of small and large stores, in turn: what should stay as it is and what should grow with the store.</summary>
public static class Growth
{
    private const int FirstPort = 5491, Connections = 4;

    private static readonly int[] s_designs = [100, 1_000, 10_000], s_revisions = [1, 100, 1_000, 10_000];

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (seconds, rounds) = Numbers.Of(args, 1, 5) is [var a, var b] ? (a, b) : default;
        await OfDesignsAsync(figures, seconds, rounds);
        await OfRevisionsAsync(figures, seconds, rounds);
    }

    /// <summary>More designs: a check stays as it is, a price list grows as they do.</summary>
    private static async Task OfDesignsAsync(Figures figures, int seconds, int rounds)
    {
        var studios = new List<BenchStudio>();
        try
        {
            foreach (var (i, designs) in s_designs.Index())
            {
                studios.Add(await BenchStudio.StartAsync(await Published.Folder, FirstPort + i));
                await studios[i].ArrangeAsync(designs);
                await Load.RunAsync(studios[i].Process, Check("D-7"), Connections, 3); // makes ready
            }

            for (var round = 0; round <= rounds; round++)
            {
                var (checks, lists) = (new List<Load.Result>(), new List<double>());
                foreach (var (i, studio) in studios.Index())
                {
                    lists.Add((await PriceListAfterAChange.ReckonedAnewAsync(studio, round)).Milliseconds * 100 / s_designs[i]);
                    checks.Add(await Load.RunAsync(studio.Process, Check("D-7"), Connections, seconds));
                }

                for (var i = 1; i < studios.Count && round > 0; i++)
                {
                    var (small, name) = (Of(s_designs[0], "designs"), Of(s_designs[i], "designs"));
                    figures.Add($"{name}: checks/s", "", $"{small}", checks[0].PerSecond, checks[i].PerSecond, "about 1");
                    figures.Add($"{name}: server CPU a check", " us", $"{small}", checks[0].CpuMicrosecondsARequest,
                        checks[i].CpuMicrosecondsARequest, "about 1");
                    figures.Add($"{name}: price list anew, for each 100 of them", " ms", $"{small}", lists[0], lists[i], "at most 1.1");
                }
            }
        }
        finally
        {
            foreach (var studio in studios)
                await studio.DisposeAsync();
        }
    }

    /// <summary>More revisions of a document: everything stays as it is, also as of the first of them.</summary>
    private static async Task OfRevisionsAsync(Figures figures, int seconds, int rounds)
    {
        await using var studio = await BenchStudio.StartAsync(await Published.Folder, FirstPort);
        await studio.ArrangeAsync(200);
        var first = await PutAgainAndAgainAsync(studio);
        var questions = new (string Name, Func<int, byte[]> Ask)[]
        {
            ("checks/s", revisions => Check(Sku(revisions))),
            ("GET of the design, a second", revisions => WireRequest.Get($"/v1/designs/{Sku(revisions)}", BenchStudio.AdminKey)),
            ("floor prices/s", revisions => WireRequest.Get($"/v1/designs/{Sku(revisions)}/floor-price", BenchStudio.AdminKey)),
            ("floor prices as of the first revision, a second",
                revisions => WireRequest.Get($"/v1/designs/{Sku(revisions)}/floor-price?asOf={first}", BenchStudio.AdminKey)),
        };
        for (var round = 0; round <= rounds; round++)
            foreach (var (name, ask) in questions)
            {
                var rates = new List<double>();
                foreach (var revisions in s_revisions)
                    rates.Add((await Load.RunAsync(studio.Process, ask(revisions), Connections, seconds)).PerSecond);
                for (var i = 1; i < rates.Count && round > 0; i++) // the first round makes ready
                    figures.Add($"{Of(s_revisions[i], "revisions")}: {name}", "", "1 revision", rates[0], rates[i], "about 1");
            }
    }

    /// <summary>A design for each number of revisions, all beginning together.</summary>
    /// <returns>The time when all of them had their first revision.</returns>
    private static async Task<string> PutAgainAndAgainAsync(BenchStudio studio)
    {
        var first = "";
        for (var done = 0; done < s_revisions[^1]; done++)
        {
            var lines = string.Concat(s_revisions.Where(revisions => revisions > done)
                .Select(revisions => $$"""{"key":"{{Sku(revisions)}}",{{BenchStudio.MadeIn((done % 500) + 20)}}}""" + "\n"));
            await studio.SendAsync(HttpMethod.Post, "/v1/designs/batch", lines, "application/x-ndjson");
            if (done == 0)
                first = await SavedAtAsync(studio, Sku(s_revisions[0]));
        }

        return first;
    }

    private static async Task<string> SavedAtAsync(BenchStudio studio, string sku)
    {
        using var design = JsonDocument.Parse(await studio.SendAsync(HttpMethod.Get, $"/v1/designs/{sku}"));
        return design.RootElement.GetProperty("savedAt").GetString()!;
    }

    private static string Sku(int revisions) => string.Create(CultureInfo.InvariantCulture, $"R-{revisions}");

    private static byte[] Check(string sku) =>
        WireRequest.Of("POST", "/v1/price-checks", BenchStudio.AdminKey, $$"""{"sku":"{{sku}}","channel":"c3","price":58.00}""");

    private static string Of(int count, string noun) => string.Create(CultureInfo.InvariantCulture, $"{count:#,0} {noun}");
}
