// Checks a sheet of listings and says which do not carry their share, then which floors moved since the last run.
//   PRICEFLOOR_URL=http://127.0.0.1:5080 PRICEFLOOR_KEY=pf_... dotnet run check-shop.cs listings.csv [cursor file]
// Exit code: 0 none is below its floor, 1 some are, 2 no answer (hold nothing up, ask again later), 3 the key, 4 refused otherwise.
using System.Text.Json;

var url = Environment.GetEnvironmentVariable("PRICEFLOOR_URL") ?? "http://127.0.0.1:5080";
var (sheet, cursor) = (args.FirstOrDefault() ?? "listings.csv", args.ElementAtOrDefault(1));
using var client = new HttpClient { Timeout = TimeSpan.FromSeconds(30) };
client.DefaultRequestHeaders.TryAddWithoutValidation("Authorization", $"Bearer {Environment.GetEnvironmentVariable("PRICEFLOOR_KEY")}");

try
{
    var below = await Check();
    if (cursor is not null)
        await Follow(cursor);
    return below ? 1 : 0;
}
catch (Exception trouble) when (trouble is HttpRequestException or TaskCanceledException or HttpIOException)
{
    return End(new Refusal(2, $"no answer; nothing is held up: {trouble.Message}"));
}
catch (Exception trouble)
{
    return End(trouble as Refusal ?? new Refusal(4, trouble.Message));
}

static int End(Refusal refusal)
{
    Console.Error.WriteLine(refusal.Message);
    return refusal.Code;
}

async Task<bool> Check()
{
    const string Path = "/v1/price-checks/batch?skuColumn=Item&channelColumn=Shop&priceColumn=List%20price";
    var text = await Ask(Path, await File.ReadAllBytesAsync(sheet));
    var lines = text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    if (lines.Length == 0 || !lines[^1].StartsWith("{\"summary\""))
        throw new Refusal(2, "no answer; nothing is held up: it was cut short");
    var below = false;
    foreach (var line in lines.SkipLast(1))
    {
        using var json = JsonDocument.Parse(line);
        var answer = json.RootElement;
        // A row of the sheet may have several lines, so an answer is named by its own sku and channel.
        var name = (TextOf(answer, "sku") is { Length: > 0 } sku ? sku : $"line {answer.GetProperty("errors")[0].GetProperty("line")}")
            + (TextOf(answer, "channel") is { } channel ? $" on {channel}" : "");
        if (!answer.TryGetProperty("verdict", out _))
        {
            Console.WriteLine($"{name} was not answered: {Reason(answer)}");
        }
        else if (!answer.GetProperty("carriesItsShare").GetBoolean())
        {
            below = true; // money as the text it came as, or GetDecimal: never GetDouble
            var prices = answer.TryGetProperty("floorPrice", out var floor)
                ? $": floor {floor.GetRawText()}, target {answer.GetProperty("targetPrice").GetRawText()}" : "";
            Console.WriteLine($"{name} does not carry its share{prices}");
        }
    }

    return below;
}

async Task Follow(string cursor)
{
    var since = File.Exists(cursor) ? (await File.ReadAllTextAsync(cursor)).Trim() : "";
    string text;
    var told = "{0} floors moved since the last run";
    try
    {
        text = await Ask("/v1/floor-changes" + (since.Length == 0 ? "" : "?since=" + since));
    }
    catch (Refusal refusal) when (refusal.UnknownCursor)
    {
        text = await Ask("/v1/floor-changes");
        told = "the cursor is not of this store; begun again with {0} floors";
    }

    using var changes = JsonDocument.Parse(text);
    if (since.Length > 0)
        Console.WriteLine(told, changes.RootElement.GetProperty("items").GetArrayLength());
    // By rename, so a run that is cut short leaves a whole cursor.
    await File.WriteAllTextAsync(cursor + ".new", TextOf(changes.RootElement, "next"));
    File.Move(cursor + ".new", cursor, overwrite: true);
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
    return answer.IsSuccessStatusCode ? text : throw Refused((int)answer.StatusCode, text, answer.Content.Headers.ContentType?.MediaType);
}

static Refusal Refused(int status, string text, string? mediaType)
{
    // What is no problem is not of the service: a proxy's page.
    using var problem = JsonDocument.Parse(mediaType == "application/problem+json" ? text : "{}");
    var why = Reason(problem.RootElement);
    var isCursor = problem.RootElement.TryGetProperty("errors", out var errors) && TextOf(errors[0], "code") == "unknown-cursor";
    return status switch
    {
        401 => new Refusal(3, $"no key that is known (401): {why} Set PRICEFLOOR_KEY to a key with the scope check."),
        403 => new Refusal(3, $"the key may not do this (403): {why} Set PRICEFLOOR_KEY to a key with the scope check."),
        408 or 429 or >= 500 => new Refusal(2, $"no answer; nothing is held up: {status} {why}"),
        _ => new Refusal(4, $"refused: {status} {why}") { UnknownCursor = isCursor },
    };
}

static string Reason(JsonElement problem)
{
    JsonElement[] faults = problem.TryGetProperty("errors", out var errors) ? [.. errors.EnumerateArray()] : [problem];
    return string.Join(' ', faults.Select(fault => TextOf(fault, "detail")));
}

static string? TextOf(JsonElement answer, string name) => answer.TryGetProperty(name, out var value) ? value.GetString() : null;

sealed class Refusal(int code, string why) : Exception(why)
{
    public int Code => code;

    public bool UnknownCursor { get; init; }
}
