using System.Text.Json;

namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>A text of a line that is refused, so the caller sees which line it was.</summary>
public static class SentText
{
    /// <summary>The text as it was sent; null if it is missing or incomplete.</summary>
    public static string? In(byte[] line, string property)
    {
        try
        {
            using var json = JsonDocument.Parse(line);
            return json.RootElement.ValueKind == JsonValueKind.Object && json.RootElement.TryGetProperty(property, out var value)
                && value.ValueKind == JsonValueKind.String && value.GetString() is { Length: <= Limits.AliasLength } found ? found : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException) // invalid JSON, or half a surrogate pair
        {
            return null;
        }
    }
}
