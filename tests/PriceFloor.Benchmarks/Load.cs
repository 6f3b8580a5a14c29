using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace PriceFloor.Benchmarks;

/// <summary>Requests over loopback as fast as they are answered, on so many connections, each waiting for its answer before it asks again.</summary>
public static class Load
{
    /// <summary>What a stretch of load came to.</summary>
    /// <param name="Requests">How many were answered.</param>
    /// <param name="Seconds">In which time.</param>
    /// <param name="P99Milliseconds">All but one in a hundred took at most so long.</param>
    /// <param name="CpuMicrosecondsARequest">What each cost the service.</param>
    /// <param name="DriverMicrosecondsARequest">What each cost this process, which has the same processors.</param>
    public sealed record Result(long Requests, double Seconds, double P99Milliseconds, double CpuMicrosecondsARequest,
        double DriverMicrosecondsARequest)
    {
        public double PerSecond => Requests / Seconds;

        /// <summary>How many were refused as busy, if that is allowed: they count neither as requests nor in the times.</summary>
        public long Refused { get; init; }
    }

    public static Task<Result> RunAsync(ServedProcess service, byte[] request, int connections, double seconds) =>
        RunAsync(service, _ => () => request, connections, seconds);

    /// <param name="service">Who is asked.</param>
    /// <param name="requests">What each connection, by its number, asks next.</param>
    /// <param name="connections">How many ask at the same time.</param>
    /// <param name="seconds">How long.</param>
    /// <param name="mayBeBusy">Whether an answer 503 is counted; otherwise it is thrown, as every other that is not good.</param>
    public static Task<Result> RunAsync(ServedProcess service, Func<int, Func<byte[]>> requests, int connections, double seconds,
        bool mayBeBusy = false)
    {
        var until = Stopwatch.GetTimestamp() + (long)(seconds * Stopwatch.Frequency);
        return RunAsync(service, requests, connections, () => Stopwatch.GetTimestamp() < until, mayBeBusy);
    }

    /// <summary>The same request on one connection, for as long as something lasts.</summary>
    public static Task<Result> RunBesideAsync(ServedProcess service, byte[] request, Task something) =>
        RunAsync(service, _ => () => request, 1, () => !something.IsCompleted);

    private static async Task<Result> RunAsync(ServedProcess service, Func<int, Func<byte[]>> requests, int connections, Func<bool> goesOn,
        bool mayBeBusy = false)
    {
        var (cpu, driver, started) = (service.Cpu, Environment.CpuUsage.TotalTime, Stopwatch.GetTimestamp());
        var asked = await Task.WhenAll(Enumerable.Range(0, connections)
            .Select(i => Task.Run(() => ConnectionAsync(service.Port, requests(i), goesOn, mayBeBusy))));
        var took = Stopwatch.GetElapsedTime(started).TotalSeconds;
        (cpu, driver) = (service.Cpu - cpu, Environment.CpuUsage.TotalTime - driver);
        var all = asked.SelectMany(one => one.Times).Order().ToList();
        return new Result(all.Count, took, all[(int)(all.Count * 0.99)] * 1000.0 / Stopwatch.Frequency, cpu.TotalMicroseconds / all.Count,
            driver.TotalMicroseconds / all.Count)
        {
            Refused = asked.Sum(one => one.Refused),
        };
    }

    /// <summary>One request on a connection of its own: from connecting to the last byte.</summary>
    public static async Task<(TimeSpan Took, WireAnswer Answer)> AskAsync(int port, byte[] request)
    {
        var clock = Stopwatch.StartNew();
        using var socket = await ConnectAsync(port);
        await socket.SendAsync(request);
        var answer = await WireAnswer.ReadAsync(socket, new byte[64 * 1024]);
        return (clock.Elapsed, answer);
    }

    public static async Task<Socket> ConnectAsync(int port)
    {
        var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        await socket.ConnectAsync(IPAddress.Loopback, port);
        return socket;
    }

    private static async Task<(List<long> Times, long Refused)> ConnectionAsync(int port, Func<byte[]> next, Func<bool> goesOn, bool mayBeBusy)
    {
        using var socket = await ConnectAsync(port);
        var (times, refused, buffer) = (new List<long>(100_000), 0L, new byte[16 * 1024]);
        while (goesOn())
        {
            var asked = Stopwatch.GetTimestamp();
            await socket.SendAsync(next());
            var answer = await WireAnswer.ReadAsync(socket, buffer, mayBeBusy);
            if (answer.IsBusy)
                refused++;
            else
                times.Add(Stopwatch.GetTimestamp() - asked);
        }

        return (times, refused);
    }
}
