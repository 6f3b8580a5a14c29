using System.Text.Json;

namespace PriceFloor.Api.Http.Reading;

/// <summary>
/// Strings of JSON as text. JSON can spell half of a surrogate pair, which is no character and which nothing that reads on can take.
/// </summary>
public static class JsonText
{
    /// <summary>No document of ours is nearly as deep.</summary>
    public static readonly JsonReaderOptions Options = new() { MaxDepth = 32 };

    public const string HalfAPair = "A string holds half of a surrogate pair, which is no character; correct the \\u escape.";

    /// <summary>The string or property name that the reader stands at; null if it is no text.</summary>
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
    /// <exception cref="JsonException">It is not JSON, or deeper than a body may be.</exception>
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
