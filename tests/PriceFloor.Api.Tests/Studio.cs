using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using PriceFloor.Api.Configuration;
using PriceFloor.Storage;

namespace PriceFloor.Api.Tests;

/// <summary>The real service on its own store: real pipeline, real SQLite file, a clock that stands still until a test moves it.</summary>
public sealed class Studio : IAsyncDisposable
{
    public const string AdminKey = "a-key-for-tests-only-of-forty-characters";

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
    }
}

/// <summary>An answer, read whole.</summary>
public sealed record Answer(int Status, string Text, string? ContentType, IReadOnlyDictionary<string, string> Headers)
{
    public JsonElement Json => JsonDocument.Parse(Text).RootElement;

    public string? this[string header] => Headers.GetValueOrDefault(header);

    public IReadOnlyList<string> Pointers => [.. Json.GetProperty("errors").EnumerateArray()
        .Select(error => error.TryGetProperty("pointer", out var pointer) ? pointer.GetString()! : error.GetProperty("parameter").GetString()!)];

    public IReadOnlyList<string> Codes => [.. Json.GetProperty("errors").EnumerateArray().Select(error => error.GetProperty("code").GetString()!)];

    /// <summary>A problem's slug.</summary>
    public string Slug => Json.GetProperty("type").GetString()!.Split('/')[^1];

    public static async Task<Answer> Of(HttpResponseMessage response) => new(
        (int)response.StatusCode, await response.Content.ReadAsStringAsync(Studio.Cancellation), response.Content.Headers.ContentType?.MediaType,
        response.Headers.Concat(response.Content.Headers)
            .ToDictionary(header => header.Key, header => string.Join(", ", header.Value), StringComparer.OrdinalIgnoreCase));

    /// <summary>Every code and reason of a problem must be in docs/reference/codes.md, or be a kind of problem.</summary>
    private void HasKnownCodes()
    {
        IEnumerable<string> codes = Json.TryGetProperty("errors", out _) ? Codes : [];
        if (Json.TryGetProperty("reason", out var reason))
            codes = codes.Append(reason.GetString()!);
        Xunit.Assert.All(codes, code => Xunit.Assert.Contains(code, s_known));
    }

    private static readonly HashSet<string> s_known =
        [.. Conventions.Codes.Faults.Select(code => code.Word), .. PriceFloor.Api.Http.ProblemTypes.All.Select(type => type.Slug)];

    /// <summary>The answer must be this problem, as JSON.</summary>
    public Answer IsProblem(int status, string slug)
    {
        Xunit.Assert.Equal((status, "application/problem+json"), (Status, ContentType));
        Xunit.Assert.Equal(slug, Slug);
        Xunit.Assert.Equal(status, Json.GetProperty("status").GetInt32());
        Xunit.Assert.Equal("no-store", this["Cache-Control"]);
        HasKnownCodes();
        return this;
    }
}

/// <summary>Documents for tests.</summary>
public static class Sample
{
    /// <summary>600 pendants at their listed price, most of them before Christmas.</summary>
    public const string Plan =
        """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":600,"season":"gifts"}],"seasons":{"gifts":[4,5,6,6,8,6,5,5,7,10,19,19]}}""";

    public const string SmallProfile =
        """{"currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":24000,"per":"year"}],"household":[{"amount":3000,"per":"month"}]}""";

    public const string Pendant = """{"profile":"main","making":{"piecesPerDay":4}}""";

    public const string Shop = """{"sells":"retail","currency":"USD","fees":[{"name":"card","rate":0.024,"fixed":0.25,"of":"paid"}]}""";

    public const string Rich = """
        { "name": "Year 2027", "currency": "USD", "yearStart": "2027-01-01",
          "calendar": { "weeksPerYear": 48, "daysPerWeek": 5, "hoursPerDay": 8, "benchShare": 0.65 },
          "expenses": [ { "name": "Bench rent", "amount": 540, "per": "month", "costKind": "rent" },
                        { "name": "Rod and frit", "amount": 3900, "per": "year", "costKind": "materials", "tracedTo": "piece" },
                        { "name": "Van loan principal", "amount": 150, "per": "month", "costKind": "interest-and-loans", "deductible": false } ],
          "equipment": [ { "name": "Kiln", "cost": 3200, "salvage": 200, "inService": "2025-04-01", "depreciation": { "method": "straight-line", "lifeYears": 8 } } ],
          "household": [ { "name": "Home rent", "amount": 1450, "per": "month", "businessShare": 0.12 }, { "name": "Savings and emergencies", "amount": 250, "per": "month" } ],
          "otherIncome": [ { "name": "Evening classes", "amount": 280, "per": "month", "kind": "taxable", "daysPerYear": 12 } ],
          "tax": { "kind": "levies", "levies": [
              { "name": "self-employment", "share": 0.9235, "bands": [ { "upTo": 176100, "rate": 0.153 }, { "rate": 0.029 } ], "deductibleShare": 0.5 },
              { "name": "income tax", "allowance": 15750, "bands": [ { "upTo": 11925, "rate": 0.10 }, { "upTo": 48475, "rate": 0.12 }, { "rate": 0.22 } ] } ] },
          "materials": [ { "material": "clear-rod", "unit": "kg", "price": 38.00 }, { "material": "kiln-kwh", "unit": "kWh", "price": 0.21 } ],
          "limits": [ { "name": "kiln", "loadsPerYear": 240 } ],
          "pay": { "amount": 14, "per": "hour" }, "helpers": [ { "name": "Saturday help", "benchHoursPerYear": 120 } ], "soldShare": 0.95,
          "priceRule": { "retailMultiple": 2 } }
        """;

    public const string RichDesign = """
        { "name": "River drop pendant", "profile": "main",
          "making": { "steps": [ { "name": "torch", "handsOnMinutes": 34, "goodShare": 0.95 },
                                 { "name": "anneal", "handsOnMinutes": 20, "batchSize": 24, "goodShare": 0.98, "mayBeHurried": false, "uses": "kiln" },
                                 { "name": "polish", "handsOnMinutes": 9 } ],
                      "setupMinutes": 15, "runSize": 12 },
          "materials": [ { "material": "clear-rod", "quantity": 0.062, "wasteShare": 0.08 },
                         { "material": "kiln-kwh", "quantity": 16, "batchSize": 24, "at": "anneal" },
                         { "name": "gift box", "amount": 1.55, "at": "finish" } ],
          "seconds": { "share": 0.4, "price": 11 }, "soldShare": 0.9 }
        """;

    public const string RichChannel = """
        { "name": "Own web shop", "sells": "retail", "currency": "USD", "fees": [ { "name": "card", "rate": 0.024, "fixed": 0.25, "of": "paid" } ],
          "salesTax": { "rate": 0.0, "included": false }, "shipping": { "charged": 5.00, "cost": 6.20, "returnCost": 6.20 }, "piecesPerOrder": 1.4,
          "costPerPiece": 0.80, "returns": { "share": 0.03, "resaleShare": 0.8, "feesRefunded": false }, "priceStep": 1.00, "priceEnding": 0.00 }
        """;

    public const string RichQuote = """
        { "profile": "main", "channel": "web", "to": "wedding table, May", "validUntil": "2027-03-31", "promised": "2027-06-30",
          "lines": [ { "name": "Pendants", "quantity": 12, "design": "RB-014", "sure": 0.9, "runs": 2 },
                     { "name": "Goblets", "quantity": 30, "trialPieces": 2, "learning": { "rate": 0.85, "madeBefore": 6 },
                       "design": { "making": { "steps": [ { "name": "torch", "handsOnMinutes": 120, "goodShare": 0.87 } ], "setupMinutes": 45, "runSize": 30 },
                                   "materials": [ { "material": "clear-rod", "quantity": 0.3 }, { "name": "box", "amount": 2.10, "at": "finish" } ] } } ],
          "extra": [ { "name": "Design and drawing", "hours": 6, "kind": "design-fee" } ],
          "bought": [ { "name": "Engraver", "amount": 180 }, { "name": "Travel", "distance": 84, "rate": 0.70 } ],
          "rush": 0.25, "price": 4200.00, "deposit": { "share": 0.4 }, "payments": [ { "when": "delivery", "share": 0.6 } ],
          "revisionsIncluded": 2, "revisionHours": 1.5, "rights": { "text": "one year, shop display", "amount": 15 } }
        """;
}
