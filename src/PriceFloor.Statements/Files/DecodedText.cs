using System.Text;
using System.Text.Unicode;

namespace PriceFloor.Statements.Files;

/// <summary>The characters of a file, in any of the usual encodings.</summary>
internal static class DecodedText
{
    /// <summary>How far into the file its own declaration of an encoding is looked for: an OFX header or an XML declaration.</summary>
    private const int HeadLength = 512;

    private static readonly Encoding s_windows1252 = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;

    /// <summary>
    /// A byte order mark decides. Without one, bytes that are valid UTF-8 are UTF-8, whatever the file declares: banks write CHARSET:1252 above
    /// UTF-8, and text in a one-byte encoding is hardly ever valid UTF-8 by chance. Otherwise the file's own declaration counts, and without one,
    /// Windows-1252. Invalid bytes become U+FFFD; none is an error.
    /// </summary>
    public static string Of(ReadOnlySpan<byte> bytes)
    {
        var (encoding, mark) = Marked(bytes);
        encoding ??= Utf8.IsValid(bytes) ? Encoding.UTF8 : Declared(bytes) ?? s_windows1252;
        return encoding.GetString(bytes[mark..]);
    }

    private static (Encoding? Encoding, int MarkLength) Marked(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0xEF, 0xBB, 0xBF, ..] => (Encoding.UTF8, 3),
        [0xFF, 0xFE, ..] => (Encoding.Unicode, 2),
        [0xFE, 0xFF, ..] => (Encoding.BigEndianUnicode, 2),
        // The first "<" shows UTF-16 without a mark (XML 1.0, appendix F).
        [(byte)'<', 0, ..] => (Encoding.Unicode, 0),
        [0, (byte)'<', ..] => (Encoding.BigEndianUnicode, 0),
        _ => (null, 0),
    };

    private static Encoding? Declared(ReadOnlySpan<byte> bytes)
    {
        var head = Encoding.Latin1.GetString(bytes[..int.Min(bytes.Length, HeadLength)]);
        if (!head.StartsWith("<?xml", StringComparison.Ordinal))
            return null; // CHARSET:1252, CHARSET:ISO-8859-1 and NONE all mean Windows-1252, which has every letter of ISO-8859-1
        var end = head.IndexOf("?>", StringComparison.Ordinal);
        var word = head.IndexOf("encoding", StringComparison.Ordinal);
        return word < 0 || word > end ? Encoding.UTF8 : OneByte(Quoted(head.AsSpan(word, end - word)));
    }

    private static ReadOnlySpan<char> Quoted(ReadOnlySpan<char> declaration)
    {
        var from = declaration.IndexOfAny('"', '\'');
        if (from < 0)
            return [];
        var length = declaration[(from + 1)..].IndexOf(declaration[from]);
        return length < 0 ? [] : declaration.Slice(from + 1, length);
    }

    /// <summary>Only declarations of one-byte encodings are trusted; with any other, the file is read as UTF-8.</summary>
    private static Encoding OneByte(ReadOnlySpan<char> name)
    {
        if (name.Equals("iso-8859-1", StringComparison.OrdinalIgnoreCase) || name.Equals("us-ascii", StringComparison.OrdinalIgnoreCase))
            return s_windows1252;
        return CodePagesEncodingProvider.Instance.GetEncoding(name.ToString()) is { IsSingleByte: true } known ? known : Encoding.UTF8;
    }
}
