using System.Globalization;
using System.Text.Json;

namespace PriceFloor.Benchmarks;

/// <summary>The studios of a host, all with the same documents, and what callers ask of them.</summary>
public static class HostedStudios
{
    public const int Designs = 200;

    /// <summary>How many are open at a time where memory is short.</summary>
    public const int HeldOpen = 100;

    private const int Makers = 4;

    /// <summary>What the service counts for an open studio besides its documents.</summary>
    private const long BytesOfEach = 256 * 1024;

    /// <summary>Makes the studios; returns a key of each.</summary>
    /// <param name="published">The published service.</param>
    /// <param name="port">Where it listens meanwhile.</param>
    /// <param name="data">The folder of the host.</param>
    /// <param name="studios">How many.</param>
    /// <param name="store">The database that has them; absent: files in the folder.</param>
    public static async Task<IReadOnlyList<string>> ArrangeAsync(string published, int port, string data, int studios, string? store = null)
    {
        var export = await ExportAsync(published, port);
        await using var all = await BenchStudio.StartAsync(published, port, data, studios: "many", store: store);
        var keys = new string[studios];
        await Parallel.ForEachAsync(Enumerable.Range(0, studios), new ParallelOptions { MaxDegreeOfParallelism = Makers }, async (n, _) =>
        {
            var studio = Name(n);
            await all.SendAsync(HttpMethod.Put, $"/v1/studios/{studio}", $$"""{"name":"{{studio}}"}""");
            await all.SendAsync(HttpMethod.Post, $"/v1/studios/{studio}/import", export, "application/x-ndjson");
            keys[n] = await KeyOfAsync(all, studio, "caller");
        });
        await all.StopAsync();
        return keys;
    }

    public static string Name(int n) => string.Create(CultureInfo.InvariantCulture, $"studio-{n}");

    /// <summary>One check in each studio, one after another; throws if one is refused.</summary>
    public static async Task<double> ColdChecksAsync(ServedProcess service, IReadOnlyList<string> keys)
    {
        var times = new List<double>();
        foreach (var key in keys)
            times.Add((await Load.AskAsync(service.Port, WireRequest.Check(key))).Took.TotalMilliseconds);
        return times.Order().ElementAt((int)(times.Count * 0.99));
    }

    /// <summary>Checks in each with only some of them open at a time: the memory after it, and the p99 of another check in each.</summary>
    /// <param name="published">The published service.</param>
    /// <param name="port">Where it listens.</param>
    /// <param name="data">The folder of the host.</param>
    /// <param name="keys">A key of each.</param>
    /// <param name="bytes">What the documents of one take in its store.</param>
    /// <param name="store">The database that has them; absent: files in the folder.</param>
    public static async Task<(double Memory, double Again)> HeldAsync(string published, int port, string data, IReadOnlyList<string> keys,
        long bytes, string? store = null)
    {
        await using var host = await BenchStudio.StartAsync(published, port, data, studios: "many",
            openBytes: (int)long.Min(HeldOpen * (bytes + BytesOfEach), int.MaxValue), store: store);
        await ColdChecksAsync(host.Process, keys);
        var held = (host.Process.Memory.Now, await ColdChecksAsync(host.Process, keys));
        await host.StopAsync();
        return held;
    }

    /// <summary>A caller checks a price of any studio.</summary>
    public static Func<byte[]> Checks(IReadOnlyList<string> keys, int caller)
    {
        var random = new Random(caller);
        return () => WireRequest.Check(keys[random.Next(keys.Count)]);
    }

    /// <summary>A caller stores a design of its own in any studio.</summary>
    public static Func<byte[]> Puts(IReadOnlyList<string> keys, int caller)
    {
        var (random, minutes) = (new Random(caller), 1);
        return () => WireRequest.Of("PUT", $"/v1/designs/W-{caller}", keys[random.Next(keys.Count)],
            $$"""{{{BenchStudio.MadeIn((minutes++ % 500) + 1)}}}""");
    }

    private static async Task<string> ExportAsync(string published, int port)
    {
        using var data = new TemporaryFolder();
        await using var host = await BenchStudio.StartAsync(published, port, data.Path, studios: "many");
        await host.SendAsync(HttpMethod.Put, "/v1/studios/first", """{"name":"The first"}""");
        using var owner = host.With(await KeyOfAsync(host, "first", "maker"));
        await owner.ArrangeAsync(Designs);
        return await host.SendAsync(HttpMethod.Get, "/v1/studios/first/export");
    }

    private static async Task<string> KeyOfAsync(BenchStudio host, string studio, string name)
    {
        using var made = JsonDocument.Parse(await host.SendAsync(HttpMethod.Post, $"/v1/studios/{studio}/keys",
            $$"""{"name":"{{name}}","scopes":["read","write"]}"""));
        return made.RootElement.GetProperty("key").GetString()!;
    }
}
