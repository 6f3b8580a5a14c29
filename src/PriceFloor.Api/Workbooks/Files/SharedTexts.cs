using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml;

namespace PriceFloor.Api.Workbooks.Files;

/// <summary>The texts that cells share, and how a text is written in a workbook.</summary>
internal static partial class SharedTexts
{
    public static List<string> Of(XmlReader? xml)
    {
        var (texts, text, inText, inReading) = (new List<string>(), new StringBuilder(), false, false);
        using (xml)
            while (xml?.Read() == true)
                switch (xml.NodeType, xml.LocalName)
                {
                    case (XmlNodeType.Element, "si"):
                        text.Clear();
                        if (xml.IsEmptyElement)
                            texts.Add("");
                        break;
                    case (XmlNodeType.EndElement, "si"):
                        texts.Add(Unescaped(text.ToString()));
                        break;
                    case (XmlNodeType.Element or XmlNodeType.EndElement, "t"):
                        inText = xml is { NodeType: XmlNodeType.Element, IsEmptyElement: false };
                        break;
                    case (XmlNodeType.Element or XmlNodeType.EndElement, "rPh"): // how a word is pronounced
                        inReading = xml is { NodeType: XmlNodeType.Element, IsEmptyElement: false };
                        break;
                    case (XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.Whitespace or XmlNodeType.SignificantWhitespace, _):
                        if (inText && !inReading)
                            text.Append(xml.Value);
                        break;
                }

        return texts;
    }

    /// <summary>Characters that XML cannot have are written as _x000B_, and what looks like that as _x005F_x000B_.</summary>
    public static string Unescaped(string text) => !text.Contains("_x", StringComparison.Ordinal) ? text : Escape().Replace(text, escape =>
        ((char)ushort.Parse(escape.ValueSpan[2..6], NumberStyles.HexNumber, CultureInfo.InvariantCulture)).ToString());

    public static string Escaped(string text) =>
        !text.Contains("_x", StringComparison.Ordinal) ? text : Escape().Replace(text, escape => "_x005F" + escape.Value);

    [GeneratedRegex("_x[0-9A-Fa-f]{4}_", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Escape();
}
