using System.Globalization;
using System.Runtime.InteropServices;

namespace PriceFloor.Benchmarks;

/// <summary>
/// Price checks of two services, each in fresh processes, driven in turn from this process over loopback: one line a figure, with the ratio
/// of the second to the first. 200 designs, 5 channels, a key that may check.
/// </summary>
public static class HttpHarness
{
    private const int Warm = 12, FirstPort = 5491, SecondPort = 5492;

    /// <summary>The published service beside a bare Minimal API.</summary>
    public static async Task<int> RunAsync(string[] args)
    {
        var published = await BenchStudio.PublishAsync();
        var figures = new Figures("bare", "ours");
        await InTurnAsync(figures, args, async () =>
        {
            var bare = await ServedProcess.StartAsync(FirstPort, [typeof(HttpHarness).Assembly.Location, "bare"], new Dictionary<string, string>());
            return (bare, bare, "any key");
        }, () => OursAsync(published, SecondPort));
        return 0;
    }

    /// <summary>Two published folders of the service, such as before and after a change.</summary>
    public static async Task<int> CompareAsync(string[] args)
    {
        await InTurnAsync(new Figures("before", "after"), args[2..], () => OursAsync(args[0], FirstPort), () => OursAsync(args[1], SecondPort));
        return 0;
    }

    private static async Task<(ServedProcess Process, IAsyncDisposable Whole, string Key)> OursAsync(string published, int port)
    {
        var studio = await BenchStudio.StartAsync(published, port);
        await studio.ArrangeAsync(200);
        return (studio.Process, studio, await studio.MakeKeyAsync());
    }

    private static async Task InTurnAsync(Figures figures, string[] args, Func<Task<(ServedProcess Process, IAsyncDisposable Whole, string Key)>> startOne, Func<Task<(ServedProcess Process, IAsyncDisposable Whole, string Key)>> startOther)
    {
        var seconds = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 5;
        var rounds = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 3;
        var processes = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 3;
        Console.WriteLine($"{Environment.ProcessorCount} processors, {RuntimeInformation.FrameworkDescription}, {RuntimeInformation.OSDescription}");
        for (var process = 0; process < processes; process++)
        {
            var (one, wholeOne, keyOfOne) = await startOne();
            await using var _ = wholeOne;
            var (other, wholeOther, keyOfOther) = await startOther();
            await using var __ = wholeOther;
            figures.Add("start to first 200, ms", one.StartUp.TotalMilliseconds, other.StartUp.TotalMilliseconds);
            figures.Add("memory idle, MiB", one.Memory.Now, other.Memory.Now);
            var (askOne, askOther) = (BenchStudio.CheckRequest(keyOfOne), BenchStudio.CheckRequest(keyOfOther));
            await Load.RunAsync(one.Port, askOne, 16, TimeSpan.FromSeconds(Warm));
            await Load.RunAsync(other.Port, askOther, 16, TimeSpan.FromSeconds(Warm));
            foreach (var connections in new[] { 16, 64 })
                for (var round = 0; round < rounds; round++)
                {
                    var (first, firstCpu) = await MeasuredAsync(one, askOne, connections, seconds);
                    var (second, secondCpu) = await MeasuredAsync(other, askOther, connections, seconds);
                    figures.Add($"requests/s, {connections} connections", first.PerSecond, second.PerSecond);
                    figures.Add($"server CPU a request, us, {connections} connections", firstCpu, secondCpu);
                    figures.Add($"p99, ms, {connections} connections", first.P99Milliseconds, second.P99Milliseconds);
                }

            figures.Add("memory peak, MiB", one.Memory.Peak, other.Memory.Peak);
        }

        figures.Print();
    }

    private static async Task<(Load.Result Result, double CpuMicrosecondsARequest)> MeasuredAsync(ServedProcess service, byte[] request, int connections, int seconds)
    {
        var before = service.Cpu;
        var result = await Load.RunAsync(service.Port, request, connections, TimeSpan.FromSeconds(seconds));
        return (result, (service.Cpu - before).TotalMicroseconds / result.Requests);
    }
}
