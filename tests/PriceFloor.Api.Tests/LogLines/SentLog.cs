using System.Globalization;
using System.Text;
using System.Text.Json;

namespace PriceFloor.Api.Tests.LogLines;

/// <summary>Sends lines of the log, and says what came of them.</summary>
internal static class SentLog
{
    public const string Heading = "ref,on,sku,channel,pieces,price,order\n";

    public static Task<Answer> Sheet(this Studio studio, string query, string text, HttpClient? client = null) =>
        studio.SendBytes("POST", $"/v1/movements/batch?{query}", Encoding.UTF8.GetBytes(text), "text/csv", client);

    public static Task<Answer> BenchSheet(this Studio studio, string query, string text, HttpClient? client = null) =>
        studio.SendBytes("POST", $"/v1/bench-log/batch?{query}", Encoding.UTF8.GetBytes(text), "text/csv", client);

    /// <summary>Stored, unchanged, corrected, withdrawn, and how many are unplaced and refused.</summary>
    public static string Told(this Answer answer)
    {
        var json = answer.Json;
        int Of(string name) => json.GetProperty(name).GetInt32();
        int Lines(string name) => json.GetProperty("accounted").GetProperty(name).GetProperty("lines").GetInt32();
        return string.Create(CultureInfo.InvariantCulture,
            $"{Of("stored")} stored, {Of("unchanged")} unchanged, {Of("corrected")} corrected, {Of("withdrawn")} withdrawn, ")
            + string.Create(CultureInfo.InvariantCulture, $"{Lines("unplaced")} unplaced, {Lines("refused")} refused");
    }

    public static string Refused(this Answer answer) => string.Join(", ", answer.Json.GetProperty("refused").EnumerateArray()
        .Select(line => $"{line.GetProperty("line").GetInt32()} {line.GetProperty("code").GetString()}"));

    /// <summary>The lines of a list without their positions.</summary>
    public static async Task<string> Listed(this Studio studio, string path, HttpClient? client = null) => string.Join("\n",
        (await studio.Get(path, client)).Json.GetProperty("items").EnumerateArray().Select(item => string.Join(' ', item.EnumerateObject()
            .Where(field => field.Name != "position").Select(field => field.Value.ToString()))).Order(StringComparer.Ordinal));

    /// <summary>Lines and money of the places of lines add up to what was read.</summary>
    public static bool AddsUp(this Answer answer)
    {
        var all = answer.Json.GetProperty("accounted").EnumerateObject().ToList();
        decimal Sum(Func<JsonElement, decimal> of) => all.Where(one => one.Name != "read").Sum(one => of(one.Value));
        var read = all.Single(one => one.Name == "read").Value;
        return Sum(one => one.GetProperty("lines").GetDecimal()) == read.GetProperty("lines").GetDecimal()
            && Sum(one => one.GetProperty("money").GetDecimal()) == read.GetProperty("money").GetDecimal();
    }
}
