using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

namespace PriceFloor.Benchmarks;

/// <summary>The published service on a store of its own, with a studio in it: as shipped, its log at Warning, its metrics on.</summary>
public sealed class BenchStudio : IAsyncDisposable
{
    public const int Channels = 5;

    /// <summary>May do everything.</summary>
    public const string AdminKey = "a-key-for-benchmarks-only-of-forty-characters";

    private static readonly string[] s_demo = ["--demo"];

    private readonly TemporaryFolder? _ownData;

    private BenchStudio(ServedProcess process, string data, TemporaryFolder? ownData, string key = AdminKey)
    {
        (Process, Data, _ownData) = (process, data, ownData);
        Client = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{process.Port}"), Timeout = TimeSpan.FromMinutes(10) };
        Client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
    }

    public ServedProcess Process { get; }

    /// <summary>The folder of its store.</summary>
    public string Data { get; }

    /// <summary>Asks with <see cref="AdminKey"/>.</summary>
    public HttpClient Client { get; }

    /// <param name="published">The published service.</param>
    /// <param name="port">Where it listens.</param>
    /// <param name="data">The folder of a store that stays; absent: one of its own that ends with it.</param>
    /// <param name="demo">Whether the invented studio is in it.</param>
    /// <param name="studios">one, or many: then its key is that of their host.</param>
    /// <param name="openBytes">With many, how much may stay open.</param>
    /// <param name="store">The database that is its store; absent: a file in its folder.</param>
    /// <param name="fresh">How often it asks whether another process has written to that database.</param>
    public static async Task<BenchStudio> StartAsync(string published, int port, string? data = null, bool demo = false, string studios = "one",
        int openBytes = 128 * 1024 * 1024, string? store = null, string fresh = "ask")
    {
        var own = data is null ? new TemporaryFolder() : null;
        data ??= own!.Path;
        return new BenchStudio(
            await ServedProcess.StartAsync("dotnet", [Path.Combine(published, "PriceFloor.Api.dll"), .. demo ? s_demo : []],
                new Dictionary<string, string>
                {
                    ["PRICEFLOOR_DATA"] = data,
                    ["PRICEFLOOR_STORE"] = store ?? "sqlite",
                    ["PRICEFLOOR_STORE_FRESH"] = fresh,
                    ["PRICEFLOOR_ADMIN_KEY"] = AdminKey,
                    ["PRICEFLOOR_REQUESTS_PER_MINUTE"] = "1000000000",
                    ["PRICEFLOOR_METRICS"] = "on",
                    ["PRICEFLOOR_STUDIOS"] = studios,
                    ["PRICEFLOOR_STUDIOS_OPEN_BYTES"] = openBytes.ToString(CultureInfo.InvariantCulture),
                    ["Serilog__MinimumLevel__Default"] = "Warning",
                }, port), data, own);
    }

    /// <summary>The same service asked with another key. Disposing of it leaves the service running.</summary>
    public StudioOfMany With(string key) => new(new BenchStudio(Process, Data, null, key));

    public Task PutProfileAsync(int yearlyExpenses) => SendAsync(HttpMethod.Put, "/v1/profiles/main", string.Create(CultureInfo.InvariantCulture,
        $$"""{"currency":"USD","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":{{yearlyExpenses}},"per":"year"}],"household":[{"amount":3000,"per":"month"}]}"""));

    /// <summary>So many designs, D-0 and on, on the channels c0 to c4.</summary>
    public async Task ArrangeAsync(int designs)
    {
        await PutProfileAsync(24000);
        for (var i = 0; i < Channels; i++)
            await SendAsync(HttpMethod.Put, $"/v1/channels/c{i}",
                """{"sells":"retail","currency":"USD","fees":[{"name":"card","rate":0.024,"fixed":0.25,"of":"paid"}]}""");
        foreach (var some in Enumerable.Range(0, designs).Chunk(1000))
            await SendAsync(HttpMethod.Post, "/v1/designs/batch",
                string.Concat(some.Select(i => $$"""{"key":"D-{{i}}",{{MadeIn(20 + (i % 400))}}}""" + "\n")), "application/x-ndjson");
    }

    /// <summary>What a design says besides its key.</summary>
    /// <param name="minutes">At the bench, for a piece.</param>
    public static string MadeIn(int minutes) => string.Create(CultureInfo.InvariantCulture, $$"""
        "profile":"main","making":{"minutesPerPiece":{{minutes}} }
        """);

    /// <summary>A key that may check.</summary>
    public async Task<string> MakeKeyAsync()
    {
        using var key = JsonDocument.Parse(await SendAsync(HttpMethod.Post, "/v1/keys", """{"name":"shop","scopes":["check"]}"""));
        return key.RootElement.GetProperty("key").GetString()!;
    }

    public async Task<string> SendAsync(HttpMethod method, string path, string? body = null, string type = "application/json", string accept = "*/*")
    {
        using var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative))
        {
            Content = body is null ? null : new StringContent(body, Encoding.UTF8, type),
        };
        request.Headers.Accept.ParseAdd(accept);
        using var answer = await Client.SendAsync(request);
        var text = await answer.Content.ReadAsStringAsync();
        return answer.IsSuccessStatusCode ? text : throw new InvalidOperationException(text);
    }

    /// <summary>
    /// Takes an answer to its last byte and keeps none of it: what a caller does with a long one is not to be counted as the service's time, which
    /// shares these processors.
    /// </summary>
    public async Task TakeAsync(string path, string body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(path, UriKind.Relative))
        {
            Content = new StringContent(body, Encoding.UTF8, "application/json"),
        };
        using var answer = await Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
        if (!answer.IsSuccessStatusCode)
            throw new InvalidOperationException(await answer.Content.ReadAsStringAsync());
        await answer.Content.CopyToAsync(Stream.Null);
    }

    /// <summary>Ends in good order and leaves its store.</summary>
    public Task StopAsync() => Process.StopAsync();

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await Process.DisposeAsync();
        _ownData?.Dispose();
    }
}

/// <summary>A studio of many, in a service that somebody else ends.</summary>
public sealed class StudioOfMany(BenchStudio studio) : IDisposable
{
    public Task ArrangeAsync(int designs) => studio.ArrangeAsync(designs);

    public void Dispose() => studio.Client.Dispose();
}
