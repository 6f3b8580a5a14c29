using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>
/// One studio in a file and in a database of PostgreSQL, in the same run and in turn: price checks, where each answer asks the database first and
/// where it is asked from time to time, and designs stored by many callers. Then the same file beside an earlier version of the service, and what
/// was at an earlier moment among millions of revisions.
/// </summary>
public static class BesidePostgres
{
    private const int Port = 5491, Designs = 200, SecondsOfWarming = 12;

    private const string Polled = "asked every 100 ms", Asked = "asked each time";

    private static readonly int[] s_callers = [1, 16, 64];

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (seconds, rounds, revisions) = Numbers.Of(args, 4, 3, 10_000_000) is [var a, var b, var c] ? (a, b, c) : default;
        await using (var server = await PostgresServer.StartAsync())
            if (server is not null)
                await BesideAsync(figures, server, seconds, rounds);
        if (args is [_, _, _, var earlier, ..])
            await BeforeAsync(figures, earlier, seconds, rounds);
        if (revisions > 0)
            await EarlierMoments.MeasureAsync(figures, revisions);
    }

    private static async Task BesideAsync(Figures figures, PostgresServer server, int seconds, int rounds)
    {
        var published = await Published.Folder;
        await using var file = await ReadyAsync(published, Port);
        await using var asked = await ReadyAsync(published, Port + 1, await server.MakeAsync("asked"));
        await using var polled = await ReadyAsync(published, Port + 2, await server.MakeAsync("polled"), fresh: "100");
        for (var round = 0; round < rounds; round++)
            foreach (var callers in s_callers)
            {
                var inFile = await ChecksAsync(file, callers, seconds);
                AddChecks(figures, Polled, callers, "file", inFile, await ChecksAsync(polled, callers, seconds), "at least 0.9");
                AddChecks(figures, Asked, callers, "file", inFile, await ChecksAsync(asked, callers, seconds), "at least 0.5");
            }

        for (var round = 0; round < rounds; round++)
            foreach (var callers in s_callers)
                AddWrites(figures, "on PostgreSQL", callers, "file", await WritesAsync(file, callers, seconds),
                    await WritesAsync(asked, callers, seconds), callers == s_callers[^1] ? "at least 1" : "");
    }

    /// <summary>A file served by this version and by an earlier one.</summary>
    private static async Task BeforeAsync(Figures figures, string earlier, int seconds, int rounds)
    {
        await using var before = await ReadyAsync(earlier, Port);
        await using var now = await ReadyAsync(await Published.Folder, Port + 1);
        for (var round = 0; round < rounds; round++)
            foreach (var callers in s_callers)
            {
                AddChecks(figures, "in a file", callers, "before", await ChecksAsync(before, callers, seconds),
                    await ChecksAsync(now, callers, seconds), "at least 0.98");
                AddWrites(figures, "in a file", callers, "before", await WritesAsync(before, callers, seconds),
                    await WritesAsync(now, callers, seconds), callers == s_callers[^1] ? "at least 1" : "");
            }
    }

    private static async Task<CheckingService> ReadyAsync(string published, int port, string? store = null, string fresh = "ask")
    {
        var studio = await BenchStudio.StartAsync(published, port, store: store, fresh: fresh);
        await studio.ArrangeAsync(Designs);
        var service = new CheckingService(studio.Process, await studio.MakeKeyAsync(), studio);
        await ChecksAsync(service, 16, SecondsOfWarming);
        await WritesAsync(service, 16, SecondsOfWarming);
        return service;
    }

    private static Task<Load.Result> ChecksAsync(CheckingService service, int callers, int seconds) =>
        Load.RunAsync(service.Process, WireRequest.Check(service.Key), callers, seconds);

    private static Task<Load.Result> WritesAsync(CheckingService service, int callers, int seconds) =>
        Load.RunAsync(service.Process, Writes.Puts, callers, seconds);

    private static void AddChecks(Figures figures, string what, int callers, string reference, Load.Result other, Load.Result ours, string wanted)
    {
        var on = On(what, callers);
        figures.Add($"price checks a second, {on}", "", reference, other.PerSecond, ours.PerSecond, wanted);
        figures.Add($"a price check, p99, {on}", " ms", reference, other.P99Milliseconds, ours.P99Milliseconds);
        figures.Add($"server CPU a price check, {on}", " us", reference, other.CpuMicrosecondsARequest, ours.CpuMicrosecondsARequest);
    }

    private static void AddWrites(Figures figures, string what, int callers, string reference, Load.Result other, Load.Result ours, string wanted)
    {
        var on = On(what, callers);
        figures.Add($"designs stored a second, {on}", "", reference, other.PerSecond, ours.PerSecond, wanted);
        figures.Add($"a design stored, p99, {on}", " ms", reference, other.P99Milliseconds, ours.P99Milliseconds);
    }

    private static string On(string what, int callers) =>
        string.Create(CultureInfo.InvariantCulture, $"{what}, {callers} {(callers == 1 ? "caller" : "callers")}");
}
