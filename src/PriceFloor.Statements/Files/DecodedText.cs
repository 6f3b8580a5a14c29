using System.Text;
using System.Text.Unicode;

namespace PriceFloor.Statements.Files;

/// <summary>The characters of a file, whichever of the usual encodings it is in.</summary>
internal static class DecodedText
{
    /// <summary>How far into the file its own word on its encoding is looked for: an OFX header or an XML declaration.</summary>
    private const int HeadLength = 512;

    private static readonly Encoding s_windows1252 = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;

    /// <summary>
    /// A byte order mark settles it. Else bytes that are valid UTF-8 are UTF-8, whatever the file says: banks write CHARSET:1252 above UTF-8, while
    /// text in a one-byte encoding that is UTF-8 by chance hardly exists. Else the file's own word counts, and where it has none, Windows-1252.
    /// Bytes that mean nothing become U+FFFD; none is an error.
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
        // UTF-16 without a mark is told by its first "<" (XML 1.0, appendix F).
        [(byte)'<', 0, ..] => (Encoding.Unicode, 0),
        [0, (byte)'<', ..] => (Encoding.BigEndianUnicode, 0),
        _ => (null, 0),
    };

    private static Encoding? Declared(ReadOnlySpan<byte> bytes)
    {
        var head = Encoding.Latin1.GetString(bytes[..int.Min(bytes.Length, HeadLength)]);
        if (!head.StartsWith("<?xml", StringComparison.Ordinal))
            return null; // CHARSET:1252, CHARSET:ISO-8859-1 and NONE all come to Windows-1252, which has every letter of ISO-8859-1
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

    /// <summary>Only encodings of one byte a character are taken at their word; what calls itself anything else is read as UTF-8.</summary>
    private static Encoding OneByte(ReadOnlySpan<char> name)
    {
        if (name.Equals("iso-8859-1", StringComparison.OrdinalIgnoreCase) || name.Equals("us-ascii", StringComparison.OrdinalIgnoreCase))
            return s_windows1252;
        return CodePagesEncodingProvider.Instance.GetEncoding(name.ToString()) is { IsSingleByte: true } known ? known : Encoding.UTF8;
    }
}
