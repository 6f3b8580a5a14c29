using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>A service with what its price checks need.</summary>
/// <param name="Process">Where it runs.</param>
/// <param name="Key">A key that may check.</param>
/// <param name="Owner">Ends it.</param>
public sealed record CheckingService(ServedProcess Process, string Key, IAsyncDisposable Owner) : IAsyncDisposable
{
    /// <summary>The published service with 200 designs on 5 channels.</summary>
    public static async Task<CheckingService> OursAsync(string published, int port)
    {
        var studio = await BenchStudio.StartAsync(published, port);
        await studio.ArrangeAsync(200);
        return new CheckingService(studio.Process, await studio.MakeKeyAsync(), studio);
    }

    public ValueTask DisposeAsync() => Owner.DisposeAsync();
}

/// <summary>What is wanted of ours beside another service; empty: nothing.</summary>
public sealed record WantedOfChecks(string Rate = "", string Cpu = "", string P99 = "", string Peak = "");

/// <summary>Single price checks of two services, each in fresh processes, both warmed, then driven in turn from this process over loopback.</summary>
/// <param name="reference">What ours is measured against, in a word.</param>
/// <param name="wanted">What is wanted of ours.</param>
/// <param name="by">Where "ours" is another's for once: whose, in words.</param>
public sealed class ChecksInTurn(string reference, WantedOfChecks wanted, string by = "")
{
    public const int ReferencePort = 5491, OurPort = 5492;

    private const double SecondsOfWarming = 12;

    private readonly List<double> _driver = [];

    private static readonly int[] s_connections = [16, 64];

    public async Task MeasureAsync(Figures figures, string[] args, Func<Task<CheckingService>> startReference, Func<Task<CheckingService>> startOurs)
    {
        var (seconds, rounds, processes) = Numbers.Of(args, 5, 3, 3) is [var a, var b, var c] ? (a, b, c) : default;
        for (var process = 0; process < processes; process++)
        {
            await using var other = await startReference();
            await using var ours = await startOurs();
            await WarmAsync(other);
            await WarmAsync(ours);
            if (process == 0)
                Console.WriteLine($"An answer: {reference} {await SizeAsync(other)}; ours {await SizeAsync(ours)}.");
            foreach (var connections in s_connections)
                for (var round = 0; round < rounds; round++)
                    Add(figures, connections, await LoadAsync(other, connections, seconds), await LoadAsync(ours, connections, seconds));
            figures.Add($"memory at its peak, after checks{by} beside {reference}", " MiB", reference, other.Process.Memory.Peak,
                ours.Process.Memory.Peak, wanted.Peak);
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"Beside {reference}: the driver took {Figures.Median(_driver):0.0} us a request of the same processors."));
    }

    private void Add(Figures figures, int connections, Load.Result other, Load.Result ours)
    {
        var on = string.Create(CultureInfo.InvariantCulture, $"beside {reference}{by}, {connections} connections");
        _driver.AddRange([other.DriverMicrosecondsARequest, ours.DriverMicrosecondsARequest]);
        figures.Add($"single price check, requests/s, {on}", "", reference, other.PerSecond, ours.PerSecond, wanted.Rate);
        figures.Add($"server CPU a request, {on}", " us", reference, other.CpuMicrosecondsARequest, ours.CpuMicrosecondsARequest, wanted.Cpu);
        figures.Add($"p99, {on}", " ms", reference, other.P99Milliseconds, ours.P99Milliseconds, wanted.P99);
    }

    private static Task WarmAsync(CheckingService service) => LoadAsync(service, s_connections[0], SecondsOfWarming);

    private static Task<Load.Result> LoadAsync(CheckingService service, int connections, double seconds) =>
        Load.RunAsync(service.Process, WireRequest.Check(service.Key), connections, seconds);

    private static async Task<string> SizeAsync(CheckingService service)
    {
        var (_, answer) = await Load.AskAsync(service.Process.Port, WireRequest.Check(service.Key));
        return string.Create(CultureInfo.InvariantCulture, $"{answer.Body.Length} bytes, with its headers {answer.Bytes.Length}");
    }
}
