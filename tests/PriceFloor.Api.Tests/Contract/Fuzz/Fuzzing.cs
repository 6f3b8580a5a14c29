using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>Sends a number of requests to one studio and checks each answer.</summary>
/// <param name="studio">The service.</param>
/// <param name="contract">What its answers are checked against.</param>
/// <param name="seed">Of what is sent.</param>
/// <param name="refresh">Restores what the requests refer to; null: the documents of one studio.</param>
internal sealed class Fuzzing(Studio studio, ContractDocument contract, int seed, Func<Task>? refresh = null)
{
    /// <summary>Documents that were damaged or deleted are restored this often, so most requests find what they refer to.</summary>
    private const int Refreshed = 20;

    private readonly RequestsOfContract _requests = new(contract, new Random(seed));
    private readonly AnswerCheck _check = new(contract);
    private readonly List<string> _faults = [];
    private int _made;

    public IReadOnlyList<string> Faults => _faults;

    /// <summary>Answers by status.</summary>
    public SortedDictionary<int, int> Statuses { get; } = [];

    /// <summary>Successes by operation.</summary>
    public Dictionary<string, int> Succeeded { get; } = [];

    /// <summary>The operations that were called, by the addresses that were sent.</summary>
    public HashSet<string> Asked { get; } = [];

    /// <summary>Sends a number of requests made from the contract.</summary>
    public Task Run(int count, int mostFaults = 30) => Run(Enumerable.Range(0, count).Select(_ => _requests.Next()), mostFaults);

    public async Task Run(IEnumerable<FuzzedRequest> requests, int mostFaults = 30)
    {
        foreach (var (i, request) in requests.Index())
        {
            if (_faults.Count >= mostFaults)
                break;
            if (i % Refreshed == 0)
                await (refresh ?? Refresh)();
            await Ask(request);
        }
    }

    /// <summary>Null if the client itself refuses to send it.</summary>
    public async Task<Answer?> Ask(FuzzedRequest request)
    {
        studio.Clock.Advance(TimeSpan.FromSeconds(1));
        var before = Written();
        var (sent, answer) = await Send(request);
        _made++;
        if (answer is null)
            return null;
        Statuses[answer.Status] = Statuses.GetValueOrDefault(answer.Status) + 1;
        if (answer.Status < 300 && request.Id is { } id)
            Succeeded[id] = Succeeded.GetValueOrDefault(id) + 1;
        if (_check.OperationAt(request.Method, sent!.AbsolutePath) is { } operation)
            Asked.Add(operation["operationId"]!.GetValue<string>());
        foreach (var fault in _check.Faults(request, sent, answer, Written() != before))
            _faults.Add($"request {_made - 1} of seed {seed}: {fault}\n{request}\nanswered {Start(answer.Text)}\n");
        return answer;
    }

    private static string Start(string text) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text)[..Math.Min(text.Length, 600)]);

    /// <summary>Everything in the store that only grows, and the keys.</summary>
    private (long, long, long) Written()
    {
        using var store = new SqliteConnection($"Data Source={Path.Combine(studio.Folder, "pricefloor.db")};Mode=ReadOnly;Pooling=False");
        return store.QuerySingle<(long, long, long)>(
            "SELECT (SELECT count(*) FROM revision), (SELECT count(*) FROM event), (SELECT count(*) FROM access_key)");
    }

    private async Task Refresh()
    {
        foreach (var profile in (string[])["main", "second"])
            await studio.Has($"/v1/profiles/{profile}", Sample.Rich);
        foreach (var design in (string[])["RB-014", "RB-015"])
            await studio.Has($"/v1/designs/{design}", Sample.RichDesign);
        foreach (var channel in (string[])["web", "stall", "third"])
            await studio.Has($"/v1/channels/{channel}", Sample.RichChannel);
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":58.00}""");
        await studio.Post("/v1/movements/batch?source=web-shop",
            """[{"ref":"1","on":"2027-01-02","what":"sold","sku":"RB-014","channel":"web","pieces":1,"price":58.00}]""");
        await studio.Post("/v1/bench-log/batch?source=web-shop",
            """[{"ref":"1","on":"2027-01-02","sku":"RB-014","started":4,"good":3,"minutes":90}]""");
        await studio.Has("/v1/scenarios/main",
            """{"profile":"main","changes":[{"of":"profile:main","at":"/calendar/weeksPerYear","by":{"low":0.9,"high":1}}]}""");
        foreach (var key in new[] { "main", "second" })
        {
            await studio.Has($"/v1/reading-rules/{key}", """{"rules":[{"textHas":"rent","to":"household"}]}""");
            await studio.Has($"/v1/statement-layouts/{key}", """{"dateColumn":"Booked"}""");
        }

        // these fail once a quote is issued with other content or superseded
        foreach (var quote in (string[])["Q-1", "Q-2"])
        {
            await studio.Put($"/v1/quotes/{quote}",
                """{"profile":"main","channel":"web","lines":[{"quantity":2,"design":"RB-014"}],"price":300,"validUntil":"2027-03-31"}""");
            await studio.Send("POST", $"/v1/quotes/{quote}/issue", null);
        }

        await studio.Put("/v1/quotes/Q-3", """{"profile":"main","channel":"web","extra":[{"hours":2}]}"""); // a draft, which may be deleted
        await studio.Put("/v1/quotes/Q-1/outcome", """{"result":"accepted"}""");
        await studio.Put("/v1/quotes/Q-1/actual", """{"benchHours":3}""");
        foreach (var plan in (string[])["main", "second"])
            await studio.Has($"/v1/plans/{plan}", Sample.Plan); // neither names the other design or channel, so these can be deleted
    }

    /// <summary>Null if the client itself refuses to send it.</summary>
    private async Task<(Uri? Sent, Answer? Answer)> Send(FuzzedRequest request)
    {
        // The web server refuses a zero byte in a path before any code of ours; the one in memory throws an exception.
        if (request.Address.Contains("%00", StringComparison.Ordinal) || request.Address.Contains('\0', StringComparison.Ordinal))
            return default;
        HttpRequestMessage message;
        try
        {
            message = new HttpRequestMessage(new HttpMethod(request.Method), new Uri(studio.Address, request.Address));
        }
        catch (UriFormatException)
        {
            return default;
        }

        using (message)
        {
            if (request.Body is not null)
            {
                message.Content = new ByteArrayContent(request.Body);
                message.Content.Headers.TryAddWithoutValidation("Content-Type", request.ContentType);
            }

            foreach (var (name, value) in request.Headers)
                if (!message.Headers.TryAddWithoutValidation(name, value))
                    message.Content?.Headers.TryAddWithoutValidation(name, value);
            using var response = await studio.Client.SendAsync(message, Studio.Cancellation);
            return (message.RequestUri, await Answer.Of(response));
        }
    }
}
