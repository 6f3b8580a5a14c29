using System.Diagnostics;

namespace PriceFloor.Benchmarks;

/// <summary>A service in a process of its own, listening on loopback.</summary>
public sealed class ServedProcess : IAsyncDisposable
{
    private readonly Process _process;

    private ServedProcess(Process process, int port, TimeSpan startUp) => (_process, Port, StartUp) = (process, port, startUp);

    public int Port { get; }

    /// <summary>From the start of the process to its first 200.</summary>
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

    public static async Task<ServedProcess> StartAsync(int port, IReadOnlyList<string> arguments, IReadOnlyDictionary<string, string> environment)
    {
        var start = new ProcessStartInfo("dotnet", arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["ASPNETCORE_URLS"] = FormattableString.Invariant($"http://127.0.0.1:{port}");
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        var clock = Stopwatch.StartNew();
        var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.ErrorDataReceived += (_, line) => Console.Error.Write(line.Data is null ? "" : line.Data + Environment.NewLine);
        process.BeginErrorReadLine();
        using var client = new HttpClient();
        while (true)
        {
            try
            {
                using var answer = await client.GetAsync(new Uri($"http://127.0.0.1:{port}/health/ready"));
                if (answer.IsSuccessStatusCode)
                    return new ServedProcess(process, port, clock.Elapsed);
            }
            catch (HttpRequestException) when (!process.HasExited && clock.Elapsed < TimeSpan.FromSeconds(30))
            {
            }

            await Task.Delay(5);
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
            _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
    }
}
