using System.Diagnostics;
using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>
/// A large plan, a large quote, a long ladder and a large order, asked for one after the other, fifty times in a round: from the request to the last
/// byte.
/// </summary>
public static class PlansAndQuotes
{
    private const int Port = 5497, Lines = 500, Pieces = 50, Warming = 6, Together = 50;

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var rounds = Numbers.Of(args, 15) is [var a] ? a : 0;
        await using var studio = await BenchStudio.StartAsync(await Published.Folder, Port);
        await studio.ArrangeAsync(Lines);
        await studio.SendAsync(HttpMethod.Put, "/v1/plans/large", Plan);
        await studio.SendAsync(HttpMethod.Put, "/v1/quotes/large", Quote);
        (string Name, string Wanted, HttpMethod Method, string Path, string? Body)[] asked =
        [
            ("months of a stored plan of 500 lines", "at most 5 ms", HttpMethod.Get, "/v1/plans/large/months", null),
            ("months of a plan of 500 lines that is sent", "", HttpMethod.Post, "/v1/plan-months", $"{{\"plan\":{Plan}}}"),
            ("months of a stored plan of 500 lines, with the pieces of each", "", HttpMethod.Get, "/v1/plans/large/months?lines=true", null),
            ("progress of a plan of 500 lines by an empty log", "", HttpMethod.Get, "/v1/plans/large/progress", null),
            ("figures of a stored quote of 50 lines", "at most 2 ms", HttpMethod.Get, "/v1/quotes/large/figures", null),
            ("figures of a quote of 50 lines that is sent", "at most 2 ms", HttpMethod.Post, "/v1/quote-figures", Quote),
            ("ladder of 12 quantities", "at most 5 ms", HttpMethod.Get,
                "/v1/designs/D-7/run-prices?channel=c3&quantities=1,2,3,6,12,18,24,36,48,60,100,200", null),
            ("order check of 50 items", "at most 2 ms", HttpMethod.Post, "/v1/order-checks", Order),
        ];
        for (var round = -Warming; round < rounds; round++) // each in turn, so what disturbs a while disturbs all
            foreach (var (name, wanted, method, path, body) in asked)
            {
                var (cpu, clock) = (studio.Process.Cpu, Stopwatch.StartNew());
                for (var i = 0; i < Together; i++)
                    await studio.SendAsync(method, path, body);
                if (round < 0)
                    continue;
                figures.Add(name, " ms", clock.Elapsed.TotalMilliseconds / Together, wanted);
                figures.Add($"{name}: server CPU", " ms", (studio.Process.Cpu - cpu).TotalMilliseconds / Together, "");
            }
    }

    private static string Plan => $$"""
        {"profile":"main","seasons":{"gifts":[4,5,6,6,8,6,5,5,7,10,19,19],"shops":[5,10,10,8,6,5,6,14,16,12,6,2]},
         "work":[4,4,4,4,4,4,3,2.5,4,4.5,4.5,3.5],"opening":{"cash":3000},
         "terms":[{"channel":"c1","depositShare":0.3,"depositMonthsBefore":1,"paidAfterMonths":1}],
         "lines":[{{Joined(Lines, LineOf)}}]}
        """;

    private static string Quote => $$"""
        {"profile":"main","channel":"c3","validUntil":"2027-03-31","price":90000,"rush":0.1,"extra":[{"hours":6}],
         "lines":[{{Joined(Pieces, i => $$"""{"quantity":{{2 + i}},"design":"D-{{i}}","learning":{"rate":0.85},"trialPieces":1}""")}}]}
        """;

    private static string Order =>
        $$"""{"channel":"c3","items":[{{Joined(Pieces, i => $$"""{"sku":"D-{{i + 100}}","pieces":2,"price":58.00}""")}}]}""";

    private static FormattableString LineOf(int i) =>
        $$"""{"sku":"D-{{i}}","channel":"c{{i % BenchStudio.Channels}}","price":58.00,"units":{{1 + (i % 7)}},"season":"{{SeasonOf(i)}}"}""";

    private static string SeasonOf(int line) => line % 3 == 0 ? "shops" : "gifts";

    private static string Joined(int count, Func<int, FormattableString> one) =>
        string.Join(',', Enumerable.Range(0, count).Select(i => one(i).ToString(CultureInfo.InvariantCulture)));
}
