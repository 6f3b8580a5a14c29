using System.Collections.Concurrent;
using System.Text;
using Xunit;

namespace PriceFloor.Api.Tests.Running;

/// <summary>
/// Designs that are written again and again, each time with other minutes, and what was acknowledged of them: a read of that revision must find the
/// same minutes.
/// </summary>
internal sealed class AcknowledgedWrites
{
    /// <summary>Twelve, so that some share a commit and others do not.</summary>
    public static readonly IReadOnlyList<string> Skus = ["A", "B", "C", "D", "E", "F", "G", "H", "I", "J", "K", "L"];

    private readonly ConcurrentDictionary<(string Sku, string Revision), int> _acknowledged = new();

    public int Count => _acknowledged.Count;

    public async Task<Answer> Write(HttpClient client, string sku, int minutes)
    {
        using var body = new StringContent($$"""{"profile":"main","making":{"minutesPerPiece":{{minutes}}} }""", Encoding.UTF8, "application/json");
        using var response = await client.PutAsync(new Uri($"/v1/designs/{sku}", UriKind.Relative), body, Studio.Cancellation);
        var answer = await Answer.Of(response);
        if (answer.Status is 200 or 201)
            _acknowledged[(sku, answer["ETag"]!.Trim('"'))] = minutes;
        return answer;
    }

    public async Task AreAllThere(HttpClient client)
    {
        var found = new Dictionary<(string, string), int>();
        foreach (var sku in Skus)
            for (var after = "0"; after is not null;)
            {
                using var response =
                    await client.GetAsync(new Uri($"/v1/designs/{sku}/revisions?limit=1000&after={after}", UriKind.Relative), Studio.Cancellation);
                var page = await Answer.Of(response);
                if (page.Status == 404)
                    break;
                foreach (var revision in page.Json.GetProperty("items").EnumerateArray())
                    found[(sku, revision.GetProperty("revision").GetRawText())] = (int)revision.GetProperty("making")
                        .GetProperty("minutesPerPiece").GetDecimal();
                after = page.Json.GetProperty("next").GetString();
            }

        foreach (var (written, minutes) in _acknowledged)
            Assert.True(found.GetValueOrDefault(written) == minutes,
                $"{written} was acknowledged with {minutes} minutes; it has {found.GetValueOrDefault(written)}.");
    }
}
