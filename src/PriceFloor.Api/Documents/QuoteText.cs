using System.Text.Json;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.Documents;

/// <summary>
/// The stored text of a quote: its document, and before it what was frozen when it was issued. The document's own text is never written again, so an
/// issued quote reads the same for ever.
/// </summary>
/// <param name="Document">The document alone, as drafts are stored.</param>
/// <param name="Issued">What was frozen; null for a draft.</param>
/// <param name="SupersededBy">Key of the quote that was made from it; null if none was.</param>
public sealed record QuoteText(string Document, QuoteIssue? Issued, string? SupersededBy)
{
    private const string IssuedName = "issued", SupersededName = "superseded";

    /// <summary>The quote of a revision that is not a deletion. Throws <see cref="DamagedDocumentException"/>.</summary>
    public static QuoteText Of(Revision revision) =>
        Find(revision.Body!) ?? throw new DamagedDocumentException(revision.Kind, revision.Key, revision.Number);

    /// <summary>Null if the text is damaged.</summary>
    public static QuoteText? Find(string body)
    {
        if (!body.StartsWith($"{{\"{IssuedName}\":", StringComparison.Ordinal))
            return new QuoteText(body, null, null);
        try
        {
            using var json = JsonDocument.Parse(body);
            var issued = json.RootElement.GetProperty(IssuedName);
            var front = Length(IssuedName, issued);
            var superseded = json.RootElement.TryGetProperty(SupersededName, out var by) ? by.GetString() : null;
            if (superseded is not null)
                front += Length(SupersededName, by);
            return new QuoteText("{" + body[(1 + front)..], QuoteIssue.Of(issued), superseded);
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException
            or ArgumentOutOfRangeException)
        {
            return null;
        }
    }

    /// <summary>What is wrong with a stored text; null if it can be read.</summary>
    public static string? FaultIn(string body) =>
        Find(body) is { } text ? StoredText<Quote>.Read(text.Document).Fault : "#/issued: what was issued cannot be read.";

    /// <summary>The text as it is stored.</summary>
    public string Write() => Issued is null ? Document
        : $"{{\"{IssuedName}\":{Issued.Write()},{(SupersededBy is null ? "" : $"\"{SupersededName}\":\"{SupersededBy}\",")}{Document[1..]}";

    /// <summary>The characters of a property, its name and comma included.</summary>
    private static int Length(string name, JsonElement value) => name.Length + "\"\":,".Length + value.GetRawText().Length;
}

/// <summary>What was frozen when a quote was issued.</summary>
/// <param name="At">When.</param>
/// <param name="Figures">The computed answer as the text that was sent; it is not calculated again, even if the service learns to calculate it
/// better.</param>
/// <param name="Currency">Its currency.</param>
/// <param name="BenchHours">Its hours.</param>
/// <param name="FloorTotal">Its floor total.</param>
/// <param name="Names">The name of each line or else of its design; null where there is none.</param>
public sealed record QuoteIssue(DateTimeOffset At, string Figures, Currency Currency, decimal BenchHours, decimal FloorTotal,
    IReadOnlyList<string?> Names)
{
    /// <summary>Freezes an answer.</summary>
    public static QuoteIssue Of(DateTimeOffset at, string figures)
    {
        using var json = JsonDocument.Parse(figures);
        var root = json.RootElement;
        return new QuoteIssue(at, figures, Currency.Find(root.GetProperty("currency").GetString()!) ?? throw new FormatException(),
            root.GetProperty("benchHours").GetDecimal(), root.GetProperty("floorTotal").GetDecimal(),
            [.. root.GetProperty("lines").EnumerateArray().Select(line => line.GetProperty("name").GetString())]);
    }

    internal static QuoteIssue Of(JsonElement stored) =>
        Of(TimeText.ReadTime(stored.GetProperty("at").GetString()!) ?? throw new FormatException(), stored.GetProperty("figures").GetString()!);

    internal string Write() => $"{{\"at\":\"{TimeText.Write(At)}\",\"figures\":{JsonSerializer.Serialize(Figures, WireJson.Options)}}}";
}
