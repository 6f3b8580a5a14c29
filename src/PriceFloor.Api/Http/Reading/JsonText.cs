using System.Text.Json;

namespace PriceFloor.Api.Http.Reading;

/// <summary>
/// Strings of JSON as text. JSON can spell half of a surrogate pair, which is not a character and which later readers cannot accept.
/// </summary>
public static class JsonText
{
    /// <summary>No document of ours is nearly as deep.</summary>
    public static readonly JsonReaderOptions Options = new() { MaxDepth = 32 };

    public const string HalfAPair = "A string has half of a surrogate pair, which is not a character; correct the \\u escape.";

    /// <summary>The string or property name at the reader's position; null if it is not text.</summary>
    public static string? Of(ref Utf8JsonReader json)
    {
        try
        {
            return json.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>Whether every string in it is text.</summary>
    /// <exception cref="JsonException">It is not JSON, or is deeper than a body may be.</exception>
    public static bool IsWhole(ReadOnlySpan<byte> utf8)
    {
        var json = new Utf8JsonReader(utf8, Options);
        while (json.Read())
            if (json.TokenType is JsonTokenType.String or JsonTokenType.PropertyName && json.ValueIsEscaped && Of(ref json) is null)
                return false;
        return true;
    }

    /// <summary>The body without a byte order mark.</summary>
    public static ReadOnlyMemory<byte> WithoutMark(ReadOnlyMemory<byte> utf8) => utf8.Span.StartsWith("\uFEFF"u8) ? utf8[3..] : utf8;
}
