using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using PriceFloor.Api.Configuration;
using PriceFloor.Storage;
using Xunit;

namespace PriceFloor.Api.Tests;

/// <summary>The real service on its own store: real pipeline, real SQLite file, a clock that stands still until a test moves it.</summary>
public sealed class Studio : IAsyncDisposable
{
    public const string AdminKey = "a-key-for-tests-only-of-forty-characters";

    /// <summary>No answer takes so long, but a machine may stand still for minutes, and a request in flight is not to fail for that.</summary>
    private static readonly TimeSpan s_patience = TimeSpan.FromMinutes(10);

    private readonly WebApplicationFactory<Program> _factory;

    /// <param name="environment">Production, Development.</param>
    /// <param name="configure">Additional settings and services.</param>
    /// <param name="onSockets">Uses the real web server and its own port, for what happens before any of our code runs.</param>
    public Studio(string environment = "Production", Action<IWebHostBuilder>? configure = null, bool onSockets = false)
        : this(Directory.CreateTempSubdirectory("pricefloor-test-").FullName,
            new FakeTimeProvider(new DateTimeOffset(2027, 1, 2, 9, 0, 0, TimeSpan.Zero)), environment, configure, onSockets)
    {
    }

    private Studio(string folder, FakeTimeProvider clock, string environment, Action<IWebHostBuilder>? configure, bool onSockets)
    {
        (Folder, Clock) = (folder, clock);
        _factory = new WebApplicationFactory<Program>().WithWebHostBuilder(host =>
        {
            host.UseEnvironment(environment);
            host.UseSetting("PRICEFLOOR_DATA", Folder);
            host.UseSetting("PRICEFLOOR_ADMIN_KEY", AdminKey);
            host.UseSetting("Serilog:MinimumLevel:Default", "Fatal");
            host.UseSetting("Serilog:MinimumLevel:Override:Microsoft.Hosting.Lifetime", "Fatal");
            if (onSockets)
                host.UseSetting("urls", "http://127.0.0.1:0"); // tests on sockets run in parallel
            host.ConfigureServices(services => services.AddSingleton<TimeProvider>(Clock));
            if (WaitingStore.IsForAll)
                host.UseWaitingStore();
            if (ServerStore.IsForAll)
                host.UseServerStore(Folder);
            configure?.Invoke(host);
        });
        if (onSockets)
        {
            _factory.UseKestrel(0);
            _factory.StartServer();
        }

        Client = ClientWith(AdminKey);
    }

    /// <summary>Its address, on sockets.</summary>
    public Uri Address => _factory.ClientOptions.BaseAddress;

    public string Folder { get; }

    public FakeTimeProvider Clock { get; }

    /// <summary>With a key that has every scope.</summary>
    public HttpClient Client { get; }

    public IServiceProvider Services => _factory.Services;

    public static CancellationToken Cancellation => Xunit.TestContext.Current.CancellationToken;

    public HttpClient ClientWith(string? key)
    {
        var client = _factory.CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false, BaseAddress = Address });
        client.Timeout = s_patience;
        if (key is not null)
            client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        return client;
    }

    /// <summary>A client whose key has only these scopes.</summary>
    public async Task<HttpClient> ClientFor(params string[] scopes)
    {
        var answer = await Post("/v1/keys",
            $$"""{"name":"key-{{Guid.NewGuid():N}}","scopes":[{{string.Join(',', scopes.Select(scope => $"\"{scope}\""))}}]}""");
        return ClientWith(JsonDocument.Parse(answer.Text).RootElement.GetProperty("key").GetString());
    }

    public Task<Answer> Get(string path, HttpClient? client = null, params (string Name, string Value)[] headers) =>
        Send("GET", path, null, client, headers);

    public Task<Answer> Put(string path, string json, HttpClient? client = null, params (string Name, string Value)[] headers) =>
        Send("PUT", path, json, client, headers);

    public Task<Answer> Post(string path, string json, HttpClient? client = null) => Send("POST", path, json, client);

    /// <summary>The answer to a question that has one.</summary>
    public async Task<JsonElement> Ask(string path, string json)
    {
        var answer = await Post(path, json);
        Assert.True(answer.Status == 200, answer.Text);
        return answer.Json;
    }

    public Task<Answer> Delete(string path, HttpClient? client = null, params (string Name, string Value)[] headers) =>
        Send("DELETE", path, null, client, headers);

    public Task<Answer> Send(string method, string path, string? json, HttpClient? client = null, params (string Name, string Value)[] headers) =>
        SendBytes(method, path, json is null ? null : Encoding.UTF8.GetBytes(json), "application/json", client, headers);

    public async Task<Answer> SendBytes(string method, string path, byte[]? body, string? contentType, HttpClient? client = null,
        params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        if (body is not null)
        {
            request.Content = new ByteArrayContent(body);
            if (contentType is not null)
                request.Content.Headers.TryAddWithoutValidation("Content-Type", contentType);
        }

        foreach (var (name, value) in headers)
            if (!request.Headers.TryAddWithoutValidation(name, value))
                request.Content?.Headers.TryAddWithoutValidation(name, value);
        using var response = await (client ?? Client).SendAsync(request, Cancellation);
        return await Answer.Of(response);
    }

    /// <summary>Stores a document and asserts that it worked.</summary>
    public async Task<Answer> Has(string path, string json)
    {
        var answer = await Put(path, json);
        Xunit.Assert.True(answer.Status is 200 or 201, $"{path}: {answer.Text}");
        return answer;
    }

    /// <summary>A year of 60,000 over 2,000 bench hours, a pendant at four a day, a shop with a card fee, a listed price of 58.00.</summary>
    public async Task HasASmallShop()
    {
        await Has("/v1/profiles/main", Sample.SmallProfile);
        await Has("/v1/designs/RB-014", Sample.Pendant);
        await Has("/v1/channels/web", Sample.Shop);
        await Has("/v1/designs/RB-014/prices/web", """{"price":58.00}""");
    }

    /// <summary>The service, stopped and started again on the same store.</summary>
    public async Task<Studio> Restarted(Action<IWebHostBuilder>? configure = null)
    {
        await Stopped();
        return new Studio(Folder, Clock, "Production", configure, onSockets: false);
    }

    /// <summary>Stops the service; its folder stays until this, or the service started on it, is disposed of.</summary>
    public async Task<string> Stopped()
    {
        await _factory.DisposeAsync();
        using var free = new StoreLock(Folder, Clock); // the program's own thread may still be closing the store
        free.Take();
        return Folder;
    }

    public async ValueTask DisposeAsync()
    {
        if (Directory.Exists(Folder))
            Directory.Delete(await Stopped(), recursive: true);
        ServerStore.Forget(Folder);
    }
}
