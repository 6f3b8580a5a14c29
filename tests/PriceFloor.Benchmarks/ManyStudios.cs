namespace PriceFloor.Benchmarks;

/// <summary>
/// Many studios in one service, each in a file of its own: the start, the first check in each, memory with all and with a hundred of them open,
/// checks and writes over all of them; beside the same service with one studio.
/// </summary>
public static class ManyStudios
{
    private const int Port = 5491, Callers = 32;

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var (studios, seconds, rounds) = Numbers.Of(args, 1000, 3, 3) is [var a, var b, var c] ? (a, b, c) : default;
        var published = await Published.Folder;
        using var data = new TemporaryFolder();
        var keys = await HostedStudios.ArrangeAsync(published, Port, data.Path, studios);
        var bytes = new FileInfo(Path.Combine(data.Path, "studios", HostedStudios.Name(0), "pricefloor.db")).Length;
        await OfAllAsync(figures, published, data.Path, keys, seconds, rounds);
        var (memory, again) = await HostedStudios.HeldAsync(published, Port, data.Path, keys, bytes);
        figures.Add($"memory held to {HostedStudios.HeldOpen} of {studios} studios", " MiB", memory, "at most 160");
        figures.Add($"first check again, held to {HostedStudios.HeldOpen}, p99", " ms", again, "at most 30");
    }

    private static async Task OfAllAsync(Figures figures, string published, string data, IReadOnlyList<string> keys, int seconds, int rounds)
    {
        await using var host = await BenchStudio.StartAsync(published, Port, data, studios: "many", openBytes: int.MaxValue);
        figures.Add($"start to first 200, {keys.Count} studios", " ms", host.Process.StartUp.TotalMilliseconds, "at most 2,000");
        figures.Add($"memory then, {keys.Count} studios", " MiB", host.Process.Memory.Now);
        var before = host.Process.Memory.Now;
        var cold = await HostedStudios.ColdChecksAsync(host.Process, keys);
        figures.Add($"first check in each studio of {HostedStudios.Designs} designs, p99", " ms", cold, "at most 30");
        figures.Add($"memory with {keys.Count} studios open", " MiB", host.Process.Memory.Now, "at most 300");
        figures.Add("memory of an open studio", " MiB", (host.Process.Memory.Now - before) / keys.Count, "at most 0.2");

        await using var one = await BenchStudio.StartAsync(published, Port + 1);
        await one.ArrangeAsync(HostedStudios.Designs);
        var key = await one.MakeKeyAsync();
        await Load.RunAsync(one.Process, WireRequest.Check(key), Callers, seconds); // makes ready
        await Load.RunAsync(host.Process, WireRequest.Check(keys[0]), Callers, seconds);
        for (var round = 0; round < rounds; round++)
        {
            var alone = await Load.RunAsync(one.Process, WireRequest.Check(key), Callers, seconds);
            var inOne = await Load.RunAsync(host.Process, WireRequest.Check(keys[0]), Callers, seconds);
            var over = await Load.RunAsync(host.Process, caller => HostedStudios.Checks(keys, caller), Callers, seconds);
            figures.Add("price checks a second in one studio of many", "", "one studio", alone.PerSecond, inOne.PerSecond, "at least 0.9");
            figures.Add($"price checks a second over {keys.Count} studios", "", "one studio", alone.PerSecond, over.PerSecond);
            var ofOne = await Load.RunAsync(one.Process, caller => HostedStudios.Puts([AdminOf(one)], caller), Callers, seconds);
            var ofMany = await Load.RunAsync(host.Process, caller => HostedStudios.Puts(keys, caller), Callers, seconds);
            figures.Add($"designs stored a second, {Callers} callers over {keys.Count} studios", "", "one studio", ofOne.PerSecond, ofMany.PerSecond);
            figures.Add($"designs stored, {Callers} callers over {keys.Count} studios, p99", " ms", "one studio", ofOne.P99Milliseconds,
                ofMany.P99Milliseconds);
        }
    }

    private static string AdminOf(BenchStudio one) => one.Client.DefaultRequestHeaders.Authorization!.Parameter!;
}
