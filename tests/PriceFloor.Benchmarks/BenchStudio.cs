using System.Globalization;
using System.Net.Http.Headers;
using System.Text;

namespace PriceFloor.Benchmarks;

/// <summary>The published service on a store of its own, with a studio in it: as shipped, its log at Warning, its metrics on.</summary>
public sealed class BenchStudio : IAsyncDisposable
{
    private const string AdminKey = "a-key-for-benchmarks-only-of-forty-characters";

    private readonly string _data;

    private BenchStudio(ServedProcess process, string data)
    {
        (Process, _data) = (process, data);
        Client = new HttpClient { BaseAddress = new Uri(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{process.Port}")), Timeout = TimeSpan.FromMinutes(10) };
        Client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", AdminKey);
    }

    public ServedProcess Process { get; }

    /// <summary>Asks with a key that may do everything.</summary>
    public HttpClient Client { get; }

    public static async Task<BenchStudio> StartAsync(string published, int port)
    {
        var data = Directory.CreateTempSubdirectory("pricefloor-bench-").FullName;
        return new BenchStudio(await ServedProcess.StartAsync(port, [Path.Combine(published, "PriceFloor.Api.dll")], new Dictionary<string, string>
        {
            ["PRICEFLOOR_DATA"] = data,
            ["PRICEFLOOR_ADMIN_KEY"] = AdminKey,
            ["PRICEFLOOR_REQUESTS_PER_MINUTE"] = "1000000000",
            ["PRICEFLOOR_METRICS"] = "on",
            ["Serilog__MinimumLevel__Default"] = "Warning",
        }), data);
    }

    public static async Task<string> PublishAsync()
    {
        var folder = Directory.CreateTempSubdirectory("pricefloor-publish-").FullName;
        var start = new System.Diagnostics.ProcessStartInfo("dotnet", ["publish", "src/PriceFloor.Api", "--configuration", "Release", "--output", folder, "--verbosity", "quiet"]);
        using var publish = System.Diagnostics.Process.Start(start)!;
        await publish.WaitForExitAsync();
        return publish.ExitCode == 0 ? folder : throw new InvalidOperationException("Run this in the repository's root; publishing failed.");
    }

    public Task PutProfileAsync(int yearlyExpenses) => SendAsync(HttpMethod.Put, "/v1/profiles/main", string.Create(CultureInfo.InvariantCulture,
        $$"""{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":{{yearlyExpenses}},"per":"year"}],"household":[{"amount":3000,"per":"month"}]}"""));

    /// <summary>So many designs on 5 channels.</summary>
    public async Task ArrangeAsync(int designs)
    {
        await PutProfileAsync(24000);
        for (var i = 0; i < 5; i++)
            await SendAsync(HttpMethod.Put, $"/v1/channels/c{i}", """{"sells":"retail","currency":"USD","fees":[{"name":"card","rate":0.03,"fixed":0.30,"of":"paid"}]}""");
        foreach (var some in Enumerable.Range(0, designs).Chunk(1000))
            await SendAsync(HttpMethod.Post, "/v1/designs/batch", string.Concat(some.Select(i => $$"""{"key":"D-{{i}}","profile":"main","making":{"minutesPerPiece":{{20 + (i % 400)}} } }""" + "\n")), "application/x-ndjson");
    }

    /// <summary>A key that may check.</summary>
    public async Task<string> MakeKeyAsync()
    {
        using var key = System.Text.Json.JsonDocument.Parse(await SendAsync(HttpMethod.Post, "/v1/keys", """{"name":"shop","scopes":["check"]}"""));
        return key.RootElement.GetProperty("key").GetString()!;
    }

    public async Task<string> SendAsync(HttpMethod method, string path, string? body = null, string type = "application/json")
    {
        using var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative)) { Content = body is null ? null : new StringContent(body, Encoding.UTF8, type) };
        using var answer = await Client.SendAsync(request);
        var text = await answer.Content.ReadAsStringAsync();
        return answer.IsSuccessStatusCode ? text : throw new InvalidOperationException(text);
    }

    /// <summary>One price check as it goes over the wire.</summary>
    public static byte[] CheckRequest(string key)
    {
        const string Body = """{"sku":"D-117","channel":"c3","price":58.00}""";
        return Encoding.ASCII.GetBytes($"POST /v1/price-checks HTTP/1.1\r\nHost: 127.0.0.1\r\nAuthorization: Bearer {key}\r\nContent-Type: application/json\r\nContent-Length: {Body.Length}\r\n\r\n{Body}");
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await Process.DisposeAsync();
        Directory.Delete(_data, recursive: true);
    }
}
