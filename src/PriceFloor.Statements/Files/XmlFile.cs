using System.Globalization;
using System.Xml;

namespace PriceFloor.Statements.Files;

/// <summary>XML from strangers: no DTD, nothing fetched, depth and length limited, read forward only.</summary>
internal static class XmlFile
{
    /// <summary>Statements nest about a dozen deep.</summary>
    public const int Deepest = 64;

    private const int MostCharacters = 64 * 1024 * 1024;

    private const string Camt053 = "urn:iso:std:iso:20022:tech:xsd:camt.053.001.";

    private const int FirstVersion = 2, LastVersion = 13;

    public static Fault Doctype { get; } =
        new("", FileCodes.Doctype, "The file declares a document type, which no statement needs and which can be used to attack; it is not read.");

    public static Fault TooDeep { get; } = new("", FileCodes.Malformed, $"The XML is nested deeper than {Deepest}; that is no statement.");

    /// <summary>A tag of a statement has a handful of attributes; a parser's time grows with the square of their number.</summary>
    private const int LongestTag = 16 * 1024;

    public static Outcome<StatementFile> Read(string text, string account, CancellationToken cancel)
    {
        if (LongTag(text, cancel) is { } line)
            return new Fault("", FileCodes.Malformed, string.Create(CultureInfo.InvariantCulture,
                $"The XML has a tag of more than {LongestTag} characters at line {line}; that is no statement."));
        try
        {
            using var reader = XmlReader.Create(new StringReader(text.TrimStart()), Settings());
            if (reader.MoveToContent() != XmlNodeType.Element)
                return FormatOf.Unknown;
            if (reader.LocalName.Equals("OFX", StringComparison.OrdinalIgnoreCase))
                return OfxXml.Read(reader, account, cancel);
            return IsCamt053(reader) ? CamtFile.Read(reader, account, cancel) : FormatOf.Unknown;
        }
        catch (XmlException broken)
        {
            return Malformed(broken.LineNumber, broken.LinePosition);
        }
    }

    /// <summary>
    /// The line of the first tag that is too long, or null. Comments and character data may be longer; a &gt; inside quotes does not end a tag.
    /// </summary>
    private static int? LongTag(string text, CancellationToken cancel)
    {
        for (var at = text.IndexOf('<', StringComparison.Ordinal); at >= 0; at = text.IndexOf('<', at))
        {
            cancel.ThrowIfCancellationRequested();
            var end = EndOfMarkup(text, at);
            if (end < 0)
                return 1 + text.AsSpan(0, at).Count('\n');
            at = end;
            if (at >= text.Length)
                break;
        }

        return null;
    }

    /// <summary>The end of a comment, character data or a tag; -1 for a tag that is too long.</summary>
    private static int EndOfMarkup(string text, int at)
    {
        if (string.CompareOrdinal(text, at, "<!--", 0, 4) == 0)
            return After(text, "-->", at);
        if (string.CompareOrdinal(text, at, "<![CDATA[", 0, 9) == 0)
            return After(text, "]]>", at);
        var quote = '\0';
        for (var i = at + 1; i < text.Length; i++)
        {
            if (i - at > LongestTag)
                return -1;
            if (quote != '\0')
                quote = text[i] == quote ? '\0' : quote;
            else if (text[i] is '"' or '\'')
                quote = text[i];
            else if (text[i] == '>')
                return i + 1;
        }

        return text.Length;
    }

    private static int After(string text, string end, int at) =>
        text.IndexOf(end, at, StringComparison.Ordinal) is >= 0 and var found ? found + end.Length : text.Length;

    private static XmlReaderSettings Settings() => new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        MaxCharactersFromEntities = 1024,
        MaxCharactersInDocument = MostCharacters,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
        IgnoreWhitespace = true,
    };

    /// <summary>Versions 02 to 13 write these elements alike, or in the two ways that <see cref="CamtEntry"/> knows.</summary>
    private static bool IsCamt053(XmlReader reader) =>
        reader.LocalName == "Document" && reader.NamespaceURI.StartsWith(Camt053, StringComparison.Ordinal)
        && reader.NamespaceURI.AsSpan(Camt053.Length) is { Length: 2 } version
        && int.TryParse(version, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= FirstVersion and <= LastVersion;

    /// <summary>The parser's own message is not reported: it quotes the file.</summary>
    private static Fault Malformed(int line, int column) =>
        new("", FileCodes.Malformed, string.Create(CultureInfo.InvariantCulture,
            $"The XML ends too early or is malformed at line {line}, column {column}; it may have been cut off or edited."));
}
