namespace PriceFloor.Benchmarks;

/// <summary>
/// From the start of a process to its first 200 of /health/ready, its first price check right after, and its memory then; the published
/// service on an empty store and on one that is there, and a bare Minimal API, in turn, each time a fresh process.
/// </summary>
public static class Starts
{
    private const int Port = 5491, Designs = 200;

    public static Task RunAsync(string[] args) => Verb.PrintAsync(figures => MeasureAsync(figures, args));

    public static async Task MeasureAsync(Figures figures, string[] args)
    {
        var processes = Numbers.Of(args, 10)[0];
        var published = await Published.Folder;
        using var store = new TemporaryFolder();
        var key = await ArrangeAsync(published, store.Path);
        for (var process = 0; process <= processes; process++)
        {
            var bare = await OfBareAsync(published);
            var empty = await OfOursAsync(published, null, null);
            var there = await OfOursAsync(published, store.Path, key);
            if (process == 0)
                continue; // reads the files of all of them into the system's memory
            figures.Add("start to first 200, empty store", " ms", "bare", bare.Start, empty.Start, "at most 1.25");
            figures.Add($"start to first 200, store with {Designs} designs", " ms", "bare", bare.Start, there.Start, "at most 1.25");
            figures.Add("first price check after it", " ms", "bare", bare.FirstCheck, there.FirstCheck, "at most 100 ms");
            figures.Add("memory at the first 200, empty store", " MiB", "bare", bare.AtFirst200, empty.AtFirst200, "at most 1.3");
            figures.Add($"memory idle after the first check, store with {Designs} designs", " MiB", "bare", bare.Idle, there.Idle, "at most 1.3");
        }
    }

    /// <summary>A store that is there, closed in good order, and a key of it that may check.</summary>
    private static async Task<string> ArrangeAsync(string published, string store)
    {
        await using var studio = await BenchStudio.StartAsync(published, Port, store);
        await studio.ArrangeAsync(Designs);
        var key = await studio.MakeKeyAsync();
        await studio.StopAsync();
        return key;
    }

    private static async Task<Started> OfBareAsync(string published)
    {
        await using var bare = await BareApi.StartAsync(published, Port);
        return await MeasureAsync(bare, "any key");
    }

    private static async Task<Started> OfOursAsync(string published, string? store, string? key)
    {
        await using var studio = await BenchStudio.StartAsync(published, Port, store);
        var started = await MeasureAsync(studio.Process, key);
        await studio.StopAsync();
        return started;
    }

    private static async Task<Started> MeasureAsync(ServedProcess process, string? key)
    {
        var atFirst200 = process.Memory.Now;
        var firstCheck = key is null ? double.NaN : (await Load.AskAsync(process.Port, WireRequest.Check(key))).Took.TotalMilliseconds;
        await Task.Delay(500);
        return new Started(process.StartUp.TotalMilliseconds, firstCheck, atFirst200, process.Memory.Now);
    }

    private sealed record Started(double Start, double FirstCheck, double AtFirst200, double Idle);
}
