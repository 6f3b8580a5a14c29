using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Headers;
using System.Text;

namespace PriceFloor.Benchmarks;

/// <summary>
/// The published service and a bare Minimal API, each in fresh processes, driven in turn from this process over loopback. Prints one line
/// a figure: the bare API, ours, and their ratio; medians over the rounds. 200 designs, 5 channels, a key that may check.
/// </summary>
public static class HttpHarness
{
    private const int Warm = 12, FreshProcesses = 3, BarePort = 5491, OurPort = 5492;
    private const string Key = "a-key-for-benchmarks-only-of-forty-characters";

    public static async Task<int> RunAsync(string[] args)
    {
        var seconds = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 5;
        var rounds = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 3;
        var publish = await PublishAsync();
        Console.WriteLine($"{Environment.ProcessorCount} processors, {System.Runtime.InteropServices.RuntimeInformation.FrameworkDescription}, {System.Runtime.InteropServices.RuntimeInformation.OSDescription}");
        var figures = new Dictionary<string, (List<double> Bare, List<double> Ours)>();
        void Add(string name, double bare, double ours)
        {
            var (bares, our) = figures.TryGetValue(name, out var known) ? known : figures[name] = ([], []);
            bares.Add(bare);
            our.Add(ours);
        }

        for (var process = 0; process < FreshProcesses; process++)
        {
            var data = Directory.CreateTempSubdirectory("pricefloor-bench-").FullName;
            await using var bare = await ServedProcess.StartAsync(BarePort, [typeof(HttpHarness).Assembly.Location, "bare"], new Dictionary<string, string>());
            await using var ours = await ServedProcess.StartAsync(OurPort, [Path.Combine(publish, "PriceFloor.Api.dll")], new Dictionary<string, string>
            {
                ["PRICEFLOOR_DATA"] = data,
                ["PRICEFLOOR_ADMIN_KEY"] = Key,
                ["PRICEFLOOR_REQUESTS_PER_MINUTE"] = "2000000000",
                ["Serilog__MinimumLevel__Default"] = "Warning",
            });
            Add("start to first 200, ms", bare.StartUp.TotalMilliseconds, ours.StartUp.TotalMilliseconds);
            var request = Request(await ArrangeAsync());
            await Load.RunAsync(BarePort, request, 16, TimeSpan.FromSeconds(Warm));
            await Load.RunAsync(OurPort, request, 16, TimeSpan.FromSeconds(Warm));
            foreach (var connections in new[] { 16, 64 })
                for (var round = 0; round < rounds; round++)
                {
                    var (one, oneCpu) = await MeasuredAsync(bare, request, connections, seconds);
                    var (other, otherCpu) = await MeasuredAsync(ours, request, connections, seconds);
                    Add($"requests/s, {connections} connections", one.PerSecond, other.PerSecond);
                    Add($"server CPU a request, us, {connections} connections", oneCpu, otherCpu);
                    Add($"p99, ms, {connections} connections", one.P99Milliseconds, other.P99Milliseconds);
                }

            Add("memory peak, MiB", bare.Memory.Peak, ours.Memory.Peak);
            Directory.Delete(data, recursive: true);
        }

        foreach (var (name, (bare, ours)) in figures)
            Console.WriteLine(FormattableString.Invariant($"{name,-42} bare {Median(bare),10:0.0}  ours {Median(ours),10:0.0}  ratio {Median(ours) / Median(bare),6:0.00}"));
        return 0;
    }

    private static async Task<(Load.Result Result, double CpuMicrosecondsARequest)> MeasuredAsync(ServedProcess service, byte[] request, int connections, int seconds)
    {
        var before = service.Cpu;
        var result = await Load.RunAsync(service.Port, request, connections, TimeSpan.FromSeconds(seconds));
        return (result, (service.Cpu - before).TotalMicroseconds / result.Requests);
    }

    private static async Task<string> PublishAsync()
    {
        var folder = Directory.CreateTempSubdirectory("pricefloor-publish-").FullName;
        var start = new ProcessStartInfo("dotnet", ["publish", "src/PriceFloor.Api", "--configuration", "Release", "--output", folder, "-p:UseAppHost=false", "--verbosity", "quiet"]);
        using var publish = Process.Start(start)!;
        await publish.WaitForExitAsync();
        return publish.ExitCode == 0 ? folder : throw new InvalidOperationException("Run this in the repository's root; publishing failed.");
    }

    /// <summary>A studio of 200 designs on 5 channels, and a key that may check.</summary>
    private static async Task<string> ArrangeAsync()
    {
        using var client = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{OurPort}") };
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", Key);
        async Task<string> Send(HttpMethod method, string path, string body, string type = "application/json")
        {
            using var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative)) { Content = new StringContent(body, Encoding.UTF8, type) };
            using var answer = await client.SendAsync(request);
            return answer.IsSuccessStatusCode ? await answer.Content.ReadAsStringAsync() : throw new InvalidOperationException(await answer.Content.ReadAsStringAsync());
        }

        await Send(HttpMethod.Put, "/v1/profiles/main", """{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":24000,"per":"year"}],"household":[{"amount":3000,"per":"month"}]}""");
        for (var i = 0; i < 5; i++)
            await Send(HttpMethod.Put, $"/v1/channels/c{i}", """{"sells":"retail","currency":"USD","fees":[{"name":"card","rate":0.03,"fixed":0.30,"of":"paid"}]}""");
        await Send(HttpMethod.Post, "/v1/designs/batch", string.Concat(Enumerable.Range(0, 200).Select(i => $$"""{"key":"D-{{i}}","profile":"main","making":{"minutesPerPiece":{{20 + i}} } }""" + "\n")), "application/x-ndjson");
        using var key = System.Text.Json.JsonDocument.Parse(await Send(HttpMethod.Post, "/v1/keys", """{"name":"shop","scopes":["check"]}"""));
        return key.RootElement.GetProperty("key").GetString()!;
    }

    private static byte[] Request(string key)
    {
        const string Body = """{"sku":"D-117","channel":"c3","price":58.00}""";
        return Encoding.ASCII.GetBytes($"POST /v1/price-checks HTTP/1.1\r\nHost: 127.0.0.1\r\nAuthorization: Bearer {key}\r\nContent-Type: application/json\r\nContent-Length: {Body.Length}\r\n\r\n{Body}");
    }

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);
}
