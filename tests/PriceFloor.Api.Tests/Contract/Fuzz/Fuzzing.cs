using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using PriceFloor.Api.Http.Reading;
using PriceFloor.Api.OpenApi;

namespace PriceFloor.Api.Tests.Contract.Fuzz;

/// <summary>So many requests to one studio, each answer checked.</summary>
internal sealed class Fuzzing(Studio studio, ContractDocument contract, int seed)
{
    /// <summary>Documents that were spoilt or deleted come back this often, so that most requests find what they refer to.</summary>
    private const int Refreshed = 20;

    private readonly RequestsOfContract _requests = new(contract, new Random(seed));
    private readonly AnswerCheck _check = new(contract);
    private readonly List<string> _faults = [];

    public IReadOnlyList<string> Faults => _faults;

    /// <summary>Answers by status.</summary>
    public SortedDictionary<int, int> Statuses { get; } = [];

    /// <summary>Successes by operation.</summary>
    public Dictionary<string, int> Succeeded { get; } = [];

    public async Task Run(int count, int mostFaults = 30)
    {
        using var store = new SqliteConnection($"Data Source={Path.Combine(studio.Folder, "pricefloor.db")};Mode=ReadOnly;Pooling=False");
        for (var i = 0; i < count && _faults.Count < mostFaults; i++)
        {
            if (i % Refreshed == 0)
                await Refresh();
            studio.Clock.Advance(TimeSpan.FromSeconds(1));
            var request = _requests.Next();
            var before = Written(store);
            var (sent, answer) = await Send(request);
            if (answer is null)
                continue;
            Statuses[answer.Status] = Statuses.GetValueOrDefault(answer.Status) + 1;
            if (answer.Status < 300)
                Succeeded[Id(request)] = Succeeded.GetValueOrDefault(Id(request)) + 1;
            foreach (var fault in _check.Faults(request, sent!, answer, Written(store) != before))
                _faults.Add($"request {i} of seed {seed}: {fault}\n{request}\nanswered {Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(answer.Text)[..Math.Min(answer.Text.Length, 600)])}\n");
        }
    }

    private static string Id(FuzzedRequest request) => request.Operation["operationId"]!.GetValue<string>();

    /// <summary>Everything in the store that only grows, and the keys.</summary>
    private static (long, long, long) Written(SqliteConnection store) =>
        store.QuerySingle<(long, long, long)>("SELECT (SELECT count(*) FROM revision), (SELECT count(*) FROM event), (SELECT count(*) FROM access_key)");

    private async Task Refresh()
    {
        foreach (var profile in (string[])["main", "second"])
            await studio.Has($"/v1/profiles/{profile}", Sample.Rich);
        foreach (var design in (string[])["RB-014", "RB-015"])
            await studio.Has($"/v1/designs/{design}", Sample.RichDesign);
        foreach (var channel in (string[])["web", "stall"])
            await studio.Has($"/v1/channels/{channel}", Sample.RichChannel);
        await studio.Has("/v1/designs/RB-014/prices/web", """{"price":58.00}""");
    }

    /// <summary>Null where the client itself refuses to send such a thing.</summary>
    private async Task<(Uri? Sent, Answer? Answer)> Send(FuzzedRequest request)
    {
        // A zero in a path is refused by the web server before any code of ours, and by the one in memory with an exception.
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
