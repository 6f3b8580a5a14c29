using System.Globalization;
using System.Xml;

namespace PriceFloor.Api.Workbooks.Files;

/// <summary>Which styles of cells show a number as a date: only so does a workbook say that a cell is one.</summary>
internal static class DateStyles
{
    public static List<bool> Of(XmlReader? xml)
    {
        var (formats, styles, inCells) = (new Dictionary<string, bool>(), new List<bool>(), false);
        using (xml)
            while (xml?.Read() == true)
                switch (xml.NodeType, xml.LocalName)
                {
                    case (XmlNodeType.Element, "numFmt"):
                        formats[xml.GetAttribute("numFmtId") ?? ""] = IsOfDates(xml.GetAttribute("formatCode") ?? "");
                        break;
                    case (XmlNodeType.Element or XmlNodeType.EndElement, "cellXfs"):
                        inCells = xml is { NodeType: XmlNodeType.Element, IsEmptyElement: false };
                        break;
                    case (XmlNodeType.Element, "xf") when inCells:
                        var id = xml.GetAttribute("numFmtId") ?? "";
                        styles.Add(formats.TryGetValue(id, out var isDate) ? isDate : IsBuiltIn(id));
                        break;
                }

        return styles;
    }

    private static bool IsBuiltIn(string id) => int.TryParse(id, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && number is (>= 14 and <= 22) or (>= 27 and <= 36) or (>= 45 and <= 47) or (>= 50 and <= 58);

    /// <summary>Letters of days and times, outside quotes and brackets.</summary>
    private static bool IsOfDates(string format)
    {
        var (quoted, bracketed, escaped) = (false, false, false);
        foreach (var one in format)
        {
            if (escaped)
                escaped = false;
            else if (one == '\\')
                escaped = true;
            else if (one == '"')
                quoted = !quoted;
            else if (!quoted && one is '[' or ']')
                bracketed = one == '[';
            else if (!quoted && !bracketed && one is 'y' or 'Y' or 'd' or 'D' or 'h' or 'H' or 's' or 'S' or 'm' or 'M')
                return !quoted && !bracketed;
        }

        return false;
    }
}
