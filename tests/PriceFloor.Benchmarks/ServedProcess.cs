using System.Diagnostics;
using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>A service in a process of its own, listening on loopback.</summary>
public sealed class ServedProcess : IAsyncDisposable
{
    /// <summary>A setting of the driver's own sockets, which no service that it starts may inherit.</summary>
    public const string InlineSockets = "DOTNET_SYSTEM_NET_SOCKETS_INLINE_COMPLETIONS";

    private static readonly HttpClient s_poll = new();

    private static readonly TimeSpan s_longestStart = TimeSpan.FromSeconds(30);

    private readonly Process _process;

    private ServedProcess(Process process, int port, TimeSpan startUp) => (_process, Port, StartUp) = (process, port, startUp);

    public int Port { get; }

    /// <summary>From the start of the process to its first 200, asked for every 5 ms.</summary>
    public TimeSpan StartUp { get; }

    public TimeSpan Cpu
    {
        get
        {
            _process.Refresh();
            return _process.TotalProcessorTime;
        }
    }

    /// <summary>Resident memory now and at its peak, in MiB.</summary>
    public (double Now, double Peak) Memory
    {
        get
        {
            _process.Refresh();
            return (_process.WorkingSet64 / 1048576.0, _process.PeakWorkingSet64 / 1048576.0);
        }
    }

    public static async Task<ServedProcess> StartAsync(string program, IReadOnlyList<string> arguments,
        IReadOnlyDictionary<string, string> environment, int port)
    {
        var ready = new Uri($"http://127.0.0.1:{port}/health/ready");
        if (await IsReadyAsync(ready)) // which also makes ready what asks, so that the first start is not timed with it
            throw new InvalidOperationException($"Something listens on port {port} already.");
        var start = new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment.Remove(InlineSockets);
        start.Environment["ASPNETCORE_URLS"] = $"http://127.0.0.1:{port}";
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        var clock = Stopwatch.StartNew();
        var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.ErrorDataReceived += (_, line) => Console.Error.Write(line.Data is null ? "" : line.Data + Environment.NewLine);
        process.BeginErrorReadLine();
        while (!await IsReadyAsync(ready))
        {
            if (process.HasExited || clock.Elapsed > s_longestStart)
            {
                process.Kill();
                throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} was not ready after {clock.Elapsed.TotalSeconds:0} s.");
            }

            await Task.Delay(5);
        }

        return new ServedProcess(process, port, clock.Elapsed);
    }

    /// <summary>The peak of memory counts from now on, where the system can: Linux.</summary>
    public void ForgetPeak()
    {
        if (OperatingSystem.IsLinux())
            File.WriteAllText(string.Create(CultureInfo.InvariantCulture, $"/proc/{_process.Id}/clear_refs"), "5");
    }

    /// <summary>Asks it to end, as whoever runs it does, and waits until it has.</summary>
    public async Task StopAsync()
    {
        using var kill = Process.Start("kill", ["-TERM", _process.Id.ToString(CultureInfo.InvariantCulture)]);
        await kill.WaitForExitAsync();
        await _process.WaitForExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
            _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
    }

    private static async Task<bool> IsReadyAsync(Uri ready)
    {
        try
        {
            using var answer = await s_poll.GetAsync(ready);
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }
}
