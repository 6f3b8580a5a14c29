using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>The program as a process of its own, on a free port.</summary>
public static class RealProgram
{
    private static readonly string s_program = Path.Combine(AppContext.BaseDirectory, "PriceFloor.Api.dll");

    public static void OneSentence(string errors, params string[] told)
    {
        Assert.All(told, part => Assert.Contains(part, errors, StringComparison.Ordinal));
        Assert.DoesNotContain("   at ", errors, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", errors, StringComparison.Ordinal);
        Assert.Single(errors.Trim().Split('\n'));
    }

    /// <summary>Asks it to stop, as systemd and docker do, and returns how it ended.</summary>
    public static async Task<int> Terminate(Started service)
    {
        using var kill = Process.Start("kill", ["-TERM", $"{service.Process.Id}"]);
        await kill.WaitForExitAsync(Studio.Cancellation);
        await service.Process.WaitForExitAsync(Studio.Cancellation);
        return service.Process.ExitCode;
    }

    public static Task<Ended> Run(string folder, params string[] arguments) => Run(folder, new Dictionary<string, string>(), arguments);

    public static async Task<Ended> Run(string folder, Dictionary<string, string> environment, params string[] arguments)
    {
        using var started = Start(folder, environment, arguments);
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(Studio.Cancellation);
        limit.CancelAfter(TimeSpan.FromSeconds(30));
        var (output, errors) = (started.Process.StandardOutput.ReadToEndAsync(limit.Token),
            started.Process.StandardError.ReadToEndAsync(limit.Token));
        await started.Process.WaitForExitAsync(limit.Token);
        return new Ended(started.Process.ExitCode, await output, await errors);
    }

    public static Started Start(string folder, Dictionary<string, string> environment, params string[] arguments) =>
        Start(["dotnet"], folder, environment, arguments);

    /// <summary>The same with a umask that opens every file to all users, unless the program prevents it.</summary>
    public static Started StartUnmasked(string folder, params string[] arguments) =>
        Start(["sh", "-c", "umask 000 && exec dotnet \"$@\"", "sh"], folder, [], arguments);

    private static Started Start(string[] command, string folder, Dictionary<string, string> environment, string[] arguments)
    {
        using var free = new TcpListener(IPAddress.Loopback, 0);
        free.Start();
        var address = $"http://127.0.0.1:{((IPEndPoint)free.LocalEndpoint).Port}";
        free.Stop();
        var start = new ProcessStartInfo(command[0], [.. command[1..], s_program, .. arguments])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["PRICEFLOOR_DATA"] = folder;
        start.Environment["ASPNETCORE_URLS"] = address;
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        return new Started(Process.Start(start)!, address);
    }

    public static Task Ready(Started service) => Answers(service, "/health/ready");

    /// <summary>Waits until an address answers 200.</summary>
    public static async Task Answers(Started service, string path)
    {
        using var client = new HttpClient();
        for (var i = 0; i < 300; i++)
        {
            try
            {
                using var answer = await client.GetAsync(new Uri(service.Address + path), Studio.Cancellation);
                if (answer.IsSuccessStatusCode)
                    return;
            }
            catch (HttpRequestException)
            {
            }

            await Task.Delay(50, Studio.Cancellation);
        }

        Assert.Fail($"{path} never was 200.");
    }

    public sealed record Ended(int Code, string Output, string Errors);

    public sealed record Started(Process Process, string Address) : IDisposable
    {
        /// <summary>Reads what it writes and drops it: a program stops when nobody reads and the pipe is full.</summary>
        public Started WithoutItsOutput()
        {
            _ = Process.StandardOutput.BaseStream.CopyToAsync(Stream.Null);
            _ = Process.StandardError.BaseStream.CopyToAsync(Stream.Null);
            return this;
        }

        public void Dispose()
        {
            if (!Process.HasExited)
                Process.Kill();
            Process.WaitForExit();
            Process.Dispose();
        }
    }
}
