// Checks a sheet of listings and says which do not carry their share, then which floors moved since the last run.
//   PRICEFLOOR_URL=http://127.0.0.1:5080 PRICEFLOOR_KEY=pf_... dotnet run check-shop.cs listings.csv [cursor file]
// Exit code: 0 all carry their share, 1 some do not, 2 no answer (then nothing must be held up: ask again later).
using System.Text.Json;

var url = Environment.GetEnvironmentVariable("PRICEFLOOR_URL") ?? "http://127.0.0.1:5080";
var (sheet, cursor) = (args.FirstOrDefault() ?? "listings.csv", args.ElementAtOrDefault(1));
using var client = new HttpClient { Timeout = TimeSpan.FromSeconds(30) };
client.DefaultRequestHeaders.Authorization = new("Bearer", Environment.GetEnvironmentVariable("PRICEFLOOR_KEY"));

try
{
    var items = File.ReadLines(sheet).Skip(1).Select(line => line.Split(',')[0]);
    var answers = (await Ask("/v1/price-checks/batch?skuColumn=Item&channelColumn=Shop&priceColumn=List%20price", await File.ReadAllBytesAsync(sheet))).Split('\n', StringSplitOptions.RemoveEmptyEntries);
    var below = false;
    foreach (var (item, line) in items.Zip(answers.SkipLast(1))) // the last is the summary
    {
        using var answer = JsonDocument.Parse(line);
        if (!answer.RootElement.TryGetProperty("verdict", out _))
        {
            Console.WriteLine($"{item} was not answered: {answer.RootElement.GetProperty("detail")}");
        }
        else if (!answer.RootElement.GetProperty("carriesItsShare").GetBoolean())
        {
            below = true; // money as the text it came as, or GetDecimal: never GetDouble
            Console.WriteLine($"{item} does not carry its share: floor {answer.RootElement.GetProperty("floorPrice").GetRawText()}, target {answer.RootElement.GetProperty("targetPrice").GetRawText()}");
        }
    }

    if (cursor is not null)
    {
        var since = File.Exists(cursor) ? (await File.ReadAllTextAsync(cursor)).Trim() : "";
        using var changes = JsonDocument.Parse(await Ask("/v1/floor-changes" + (since.Length == 0 ? "" : "?since=" + since)));
        if (since.Length > 0)
            Console.WriteLine($"{changes.RootElement.GetProperty("items").GetArrayLength()} floors moved since the last run");
        await File.WriteAllTextAsync(cursor, changes.RootElement.GetProperty("next").GetString());
    }

    return below ? 1 : 0;
}
catch (Exception trouble) when (trouble is HttpRequestException or TaskCanceledException)
{
    Console.Error.WriteLine($"no answer; nothing is held up: {trouble.Message}");
    return 2;
}

async Task<string> Ask(string path, byte[]? rows = null)
{
    using var request = new HttpRequestMessage(rows is null ? HttpMethod.Get : HttpMethod.Post, url + path);
    if (rows is not null)
    {
        request.Content = new ByteArrayContent(rows) { Headers = { ContentType = new("text/csv") } };
        request.Headers.Accept.ParseAdd("application/x-ndjson");
    }

    using var answer = await client.SendAsync(request);
    var text = await answer.Content.ReadAsStringAsync();
    return answer.IsSuccessStatusCode ? text : throw new HttpRequestException($"{(int)answer.StatusCode}: {text}");
}
