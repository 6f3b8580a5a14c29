using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>
/// Many studios on PostgreSQL, where a commit waits for the disk, beside as many in files, in the same run and in turn: the start, the first check in
/// each, then checks and designs stored by many callers over all of them, at one process and at two on the same database.
/// </summary>
public static class HostsBesidePostgres
{
    private const int Port = 5491, Callers = 32, SecondsOfWarming = 6;

    private const string BytesOfOne =
        """
        SELECT sum(octet_length(r.body)) FROM head h JOIN revision r ON r.studio = h.studio AND r.position = h.position
        WHERE h.studio = (SELECT max(id) FROM studio)
        """;

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (studios, seconds, rounds) = Numbers.Of(args, 1000, 4, 3) is [var a, var b, var c] ? (a, b, c) : default;
        await using var server = await PostgresServer.StartAsync();
        if (server is null)
            return;
        var published = await Published.Folder;
        using var inFiles = new TemporaryFolder();
        using var inDatabase = new TemporaryFolder();
        using var beside = new TemporaryFolder();
        var store = await server.MakeAsync("studios");
        var ofFiles = await HostedStudios.ArrangeAsync(published, Port, inFiles.Path, studios);
        var ofDatabase = await HostedStudios.ArrangeAsync(published, Port, inDatabase.Path, studios, store);
        await server.RunAsync("studios", "VACUUM ANALYZE; CHECKPOINT"); // as the server does by itself within minutes

        var (heldFiles, againFiles) = await HostedStudios.HeldAsync(published, Port, inFiles.Path, ofFiles,
            new FileInfo(Path.Combine(inFiles.Path, "studios", HostedStudios.Name(0), "pricefloor.db")).Length);
        var (held, again) = await HostedStudios.HeldAsync(published, Port, inDatabase.Path, ofDatabase,
            long.Parse(await server.RunAsync("studios", BytesOfOne), CultureInfo.InvariantCulture), store);
        figures.Add($"memory held to {HostedStudios.HeldOpen} of {studios} studios", " MiB", "files", heldFiles, held, "at most 160 MiB");
        figures.Add($"first check again, held to {HostedStudios.HeldOpen}, p99", " ms", "files", againFiles, again, "at most 30 ms");
        await using var files = await StartAsync(published, Port, inFiles.Path);
        await using var first = await StartAsync(published, Port + 1, inDatabase.Path, store);
        AddStart(figures, studios, files, first, await HostedStudios.ColdChecksAsync(files.Process, ofFiles),
            await HostedStudios.ColdChecksAsync(first.Process, ofDatabase));
        await using var second = await StartAsync(published, Port + 2, beside.Path, store);
        await HostedStudios.ColdChecksAsync(second.Process, ofDatabase);

        await RoundAsync(new Figures(), "", (files, ofFiles), ([first], ofDatabase), SecondsOfWarming);
        await RoundAsync(new Figures(), "", (files, ofFiles), ([first, second], ofDatabase), SecondsOfWarming);
        for (var round = 0; round < rounds; round++)
        {
            await RoundAsync(figures, $"{Callers} callers over {studios} studios, one process", (files, ofFiles), ([first], ofDatabase), seconds);
            await RoundAsync(figures, $"{Callers} callers over {studios} studios, two processes", (files, ofFiles), ([first, second], ofDatabase),
                seconds);
        }
    }

    private static Task<BenchStudio> StartAsync(string published, int port, string data, string? store = null) =>
        BenchStudio.StartAsync(published, port, data, studios: "many", openBytes: int.MaxValue, store: store);

    private static void AddStart(Figures figures, int studios, BenchStudio files, BenchStudio database, double ofFiles, double ofDatabase)
    {
        figures.Add($"start to first 200, {studios} studios", " ms", "files", files.Process.StartUp.TotalMilliseconds,
            database.Process.StartUp.TotalMilliseconds, "at most 2,000 ms");
        figures.Add($"first check in each studio of {HostedStudios.Designs} designs, p99", " ms", "files", ofFiles, ofDatabase,
            "at most 30 ms");
        figures.Add($"memory with {studios} studios open", " MiB", "files", files.Process.Memory.Now, database.Process.Memory.Now,
            "at most 300 MiB");
    }

    private static async Task RoundAsync(Figures figures, string on, (BenchStudio Service, IReadOnlyList<string> Keys) files,
        (BenchStudio[] Services, IReadOnlyList<string> Keys) database, int seconds)
    {
        var inFiles = await LoadAsync([files.Service], files.Keys, HostedStudios.Checks, seconds);
        var checks = await LoadAsync(database.Services, database.Keys, HostedStudios.Checks, seconds);
        figures.Add($"price checks a second, {on}", "", "files", inFiles.PerSecond, checks.PerSecond);
        figures.Add($"a price check, p99, {on}", " ms", "files", inFiles.P99, checks.P99);
        var storedInFiles = await LoadAsync([files.Service], files.Keys, HostedStudios.Puts, seconds);
        var stored = await LoadAsync(database.Services, database.Keys, HostedStudios.Puts, seconds);
        figures.Add($"designs stored a second, {on}", "", "files", storedInFiles.PerSecond, stored.PerSecond, "at least 1,500/s");
        figures.Add($"a design stored, p99, {on}", " ms", "files", storedInFiles.P99, stored.P99, "at most 80 ms");
        figures.Add($"server CPU a design stored, {on}", " us", "files", storedInFiles.Cpu, stored.Cpu);
        figures.Add($"refused as busy, {on}", "", inFiles.Refused + storedInFiles.Refused + checks.Refused + stored.Refused, "none");
    }

    /// <summary>The callers are spread over the processes.</summary>
    private static async Task<(double PerSecond, double P99, double Cpu, long Refused)> LoadAsync(BenchStudio[] services,
        IReadOnlyList<string> keys, Func<IReadOnlyList<string>, int, Func<byte[]>> requests, int seconds)
    {
        var callers = Callers / services.Length;
        var results = await Task.WhenAll(services.Select((service, n) =>
            Load.RunAsync(service.Process, caller => requests(keys, caller + (n * callers)), callers, seconds, mayBeBusy: true)));
        return (results.Sum(one => one.PerSecond), results.Max(one => one.P99Milliseconds), results.Average(one => one.CpuMicrosecondsARequest),
            results.Sum(one => one.Refused));
    }
}
