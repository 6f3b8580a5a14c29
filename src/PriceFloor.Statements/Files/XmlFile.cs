using System.Globalization;
using System.Xml;

namespace PriceFloor.Statements.Files;

/// <summary>XML as strangers may send it: no DTD, nothing fetched, no depth or length without end, read forward only.</summary>
internal static class XmlFile
{
    /// <summary>Statements nest about a dozen deep.</summary>
    public const int Deepest = 64;

    private const int MostCharacters = 64 * 1024 * 1024;

    private const string Camt053 = "urn:iso:std:iso:20022:tech:xsd:camt.053.001.";

    private const int FirstVersion = 2, LastVersion = 13;

    public static Fault Doctype { get; } =
        new("", "doctype", "The file declares a document type, which no statement needs and which can be used to attack; it is not read.");

    public static Fault TooDeep { get; } = new("", "malformed", $"The XML is nested deeper than {Deepest}; that is no statement.");

    public static Outcome<StatementFile> Read(string text, string account)
    {
        try
        {
            using var reader = XmlReader.Create(new StringReader(text.TrimStart()), Settings());
            if (reader.MoveToContent() != XmlNodeType.Element)
                return FormatOf.Unknown;
            if (reader.LocalName.Equals("OFX", StringComparison.OrdinalIgnoreCase))
                return OfxXml.Read(reader, account);
            return IsCamt053(reader) ? CamtFile.Read(reader, account) : FormatOf.Unknown;
        }
        catch (XmlException broken)
        {
            return Malformed(broken.LineNumber, broken.LinePosition);
        }
    }

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

    /// <summary>Versions 02 to 13 write what is read here alike, or in the two ways that <see cref="CamtEntry"/> knows.</summary>
    private static bool IsCamt053(XmlReader reader) =>
        reader.LocalName == "Document" && reader.NamespaceURI.StartsWith(Camt053, StringComparison.Ordinal)
        && reader.NamespaceURI.AsSpan(Camt053.Length) is { Length: 2 } version
        && int.TryParse(version, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= FirstVersion and <= LastVersion;

    /// <summary>The parser's own message is not told: it quotes the file.</summary>
    private static Fault Malformed(int line, int column) =>
        new("", "malformed", string.Create(CultureInfo.InvariantCulture, $"The XML ends too early or breaks off its form at line {line}, column {column}; it may have been cut off or edited."));
}
