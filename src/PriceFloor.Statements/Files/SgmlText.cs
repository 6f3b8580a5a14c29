using System.Globalization;
using System.Text;

namespace PriceFloor.Statements.Files;

/// <summary>Character references in OFX SGML: the three that OFX 1.6 section 2.3.2.1 requires, and others that banks write.</summary>
internal static class SgmlText
{
    private const int LongestReference = 10;

    public static string Of(string text)
    {
        if (!text.Contains('&', StringComparison.Ordinal))
            return text;
        var plain = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '&' && Reference(text.AsSpan(i + 1), out var length) is { } character)
            {
                plain.Append(character);
                i += length;
                continue;
            }
            plain.Append(text[i]);
        }
        return plain.ToString();
    }

    /// <summary>The character, or null if the ampersand is just an ampersand, as between the names of two partners.</summary>
    private static string? Reference(ReadOnlySpan<char> after, out int length)
    {
        var end = after[..int.Min(after.Length, LongestReference)].IndexOf(';');
        length = end + 1;
        if (end < 2)
            return null;
        return after[..end] switch
        {
            "amp" => "&",
            "lt" => "<",
            "gt" => ">",
            "quot" => "\"",
            "apos" => "'",
            "nbsp" => " ",
            ['#', 'x' or 'X', .. var hex] => Character(hex, NumberStyles.AllowHexSpecifier),
            ['#', .. var digits] => Character(digits, NumberStyles.None),
            _ => null,
        };
    }

    private static string? Character(ReadOnlySpan<char> digits, NumberStyles style) =>
        int.TryParse(digits, style, CultureInfo.InvariantCulture, out var code) && Rune.TryCreate(code, out var rune) ? rune.ToString() : null;
}
