using System.Text;
using System.Text.Json;

namespace PriceFloor.Api.Http.Reading;

/// <summary>Values without members of their own: numbers, texts, words, and what has no schema yet.</summary>
public sealed partial class BodyReader
{
    private const int ShortNumber = 64;

    private static readonly BodySchema.Number s_anyNumber = new(Field: null);

    private void NumberValue(ref Utf8JsonReader json, BodySchema.Number number, string pointer)
    {
        Span<char> digits = stackalloc char[ShortNumber];
        ReadOnlySpan<char> text = json.TokenType == JsonTokenType.String ? Text(ref json, pointer)
            : json.ValueSpan.Length > ShortNumber ? Encoding.UTF8.GetString(json.ValueSpan)
            : digits[..Encoding.UTF8.GetChars(json.ValueSpan, digits)];
        if (FieldRules.OfNumber(text, pointer, number.Field) is { } fault)
            Fault(fault);
    }

    private void WordValue(string text, BodySchema shape, string pointer)
    {
        if (shape is BodySchema.Choice { Words: var words } && !words.Contains(text))
            Fault(pointer, InputCodes.NotOneOf, WordHints.OfWord(Short(text), words) is { Length: > 0 } hint
                ? $"{FieldRules.Name(pointer)} is \"{Short(text)}\".{hint} It must be one of {string.Join(", ", words)}."
                : $"{FieldRules.Name(pointer)} must be one of {string.Join(", ", words)}; it is \"{Short(text)}\".");
        else if (shape is BodySchema.Date && TimeText.ReadDate(text) is null)
            Fault(pointer, InputCodes.NotADate,
                $"{FieldRules.Name(pointer)} must be a date that exists, written as 2027-02-28; it is \"{Short(text)}\".");
        else if (shape is BodySchema.Time && TimeText.ReadTime(text) is null)
            Fault(pointer, InputCodes.NotATime,
                $"{FieldRules.Name(pointer)} must be a time with its offset, written as 2027-03-01T00:00:00Z; it is \"{Short(text)}\".");
    }

    private void TextValue(ref Utf8JsonReader json, string pointer, int least, int most)
    {
        if (IsPlain(json.ValueSpan) && json.ValueSpan.Length >= least && json.ValueSpan.Length <= most)
            return;
        var text = Text(ref json, pointer);
        if (FieldRules.OfText(text, pointer, least, most, _isStored) is { } fault)
            Fault(fault);
    }

    /// <summary>Letters of one byte each that need no decoding, as in nearly all names.</summary>
    private static bool IsPlain(ReadOnlySpan<byte> utf8) => utf8.IndexOfAnyExceptInRange((byte)' ', (byte)'~') < 0 && !utf8.Contains((byte)'\\');

    /// <summary>A value that has no schema yet: its strings must be text, and no object may have a property twice.</summary>
    private void AnyValue(ref Utf8JsonReader json, string pointer)
    {
        if (json.TokenType == JsonTokenType.String)
            TextValue(ref json, pointer, 0, int.MaxValue);
        else if (json.TokenType == JsonTokenType.StartArray)
            for (var index = 0; json.Read() && json.TokenType != JsonTokenType.EndArray; index++)
                AnyValue(ref json, $"{pointer}/{index}");
        else if (json.TokenType == JsonTokenType.StartObject)
            AnyMembers(ref json, pointer);
    }

    private void AnyMembers(ref Utf8JsonReader json, string pointer)
    {
        var before = new HashSet<string>();
        while (json.Read() && json.TokenType != JsonTokenType.EndObject)
        {
            var name = Text(ref json, pointer);
            var at = $"{pointer}/{DocumentPointer.Escape(name)}";
            if (!before.Add(name))
                throw Unreadable(ref json, at, InputCodes.DuplicateProperty, $"\"{Short(name)}\" is given twice; leave one out.");
            json.Read();
            AnyValue(ref json, at);
        }
    }
}
