using System.Globalization;
using System.Text;
using System.Xml;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Workbooks.Files;

/// <summary>Reads the rows of a sheet of a workbook.</summary>
internal sealed class SheetPart(List<string> texts, List<bool> dates)
{
    private const int MostColumns = 16_384;
    private const int MostRows = 1_048_576;
    private const int MostCells = 1_000_000;

    /// <summary>How a day is written that is no number: 2027-07-01 and one of these.</summary>
    private static readonly string[] s_midnights = ["T00:00:00", "T00:00:00Z", "T00:00:00.000", "T00:00:00.000Z"];

    private int _cells;

    /// <summary>The rows that have anything, with the numbers that the spreadsheet shows.</summary>
    public List<WorkbookRow> Read(XmlReader xml)
    {
        var (rows, cells, number) = (new List<WorkbookRow>(), new List<WorkbookCell>(), 0);
        while (xml.Read())
            if (xml is { NodeType: XmlNodeType.Element, LocalName: "row" })
            {
                number = NumberOf(xml.GetAttribute("r"), number);
                cells = [];
            }
            else if (xml is { NodeType: XmlNodeType.Element, LocalName: "c" })
            {
                var column = ColumnOf(xml.GetAttribute("r"), cells.Count == 0 ? 0 : cells[^1].Column + 1);
                if (++_cells > MostCells)
                    throw new WorkbookException(null, $"The workbook has more than {MostCells} cells.");
                if (CellOf(xml, column) is var (kind, text))
                    cells.Add(new WorkbookCell(column, kind, text));
            }
            else if (xml is { NodeType: XmlNodeType.EndElement, LocalName: "row" } && cells.Exists(cell => !string.IsNullOrWhiteSpace(cell.Text)))
                rows.Add(new WorkbookRow(number, cells));
        return rows;
    }

    /// <summary>What a cell has; blank cells keep their places.</summary>
    private (WorkbookCellKind Kind, string Text) CellOf(XmlReader xml, int column)
    {
        var (type, style, isEmpty) = (xml.GetAttribute("t") ?? "n", xml.GetAttribute("s"), xml.IsEmptyElement);
        var (value, isFormula) = isEmpty ? (null, false) : Content(xml);
        if (value is null)
            return isFormula ? (WorkbookCellKind.NoResult, "=") : (WorkbookCellKind.Text, "");
        return type switch
        {
            "s" => (WorkbookCellKind.Text, int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var at) && at < texts.Count
                ? texts[at]
                : throw new WorkbookException(InputCodes.Malformed,
                    FormattableString.Invariant($"A cell of column {column + 1} names a text that the file does not have."))),
            "inlineStr" or "str" => (WorkbookCellKind.Text, SharedTexts.Unescaped(value)),
            "b" => (WorkbookCellKind.Flag, value is "1" or "true" ? "true" : "false"),
            "e" => (WorkbookCellKind.Error, value),
            "d" => (WorkbookCellKind.Text, s_midnights.FirstOrDefault(end => value.EndsWith(end, StringComparison.Ordinal)) is { } end
                ? value[..^end.Length] : value),
            _ when value.Length == 0 => isFormula ? (WorkbookCellKind.NoResult, "=") : (WorkbookCellKind.Text, ""),
            _ => (int.TryParse(style, NumberStyles.None, CultureInfo.InvariantCulture, out var look) && look < dates.Count && dates[look]
                ? WorkbookCellKind.Date : WorkbookCellKind.Number, value),
        };
    }

    private static (string? Value, bool IsFormula) Content(XmlReader xml)
    {
        var (text, has, inText, inReading, isFormula, depth) = (new StringBuilder(), false, false, false, false, xml.Depth);
        while (xml.Read() && xml.Depth > depth)
            switch (xml.NodeType, xml.LocalName)
            {
                case (XmlNodeType.Element or XmlNodeType.EndElement, "v" or "t"):
                    inText = xml is { NodeType: XmlNodeType.Element, IsEmptyElement: false };
                    has |= xml.NodeType == XmlNodeType.Element;
                    break;
                case (XmlNodeType.Element or XmlNodeType.EndElement, "rPh"):
                    inReading = xml is { NodeType: XmlNodeType.Element, IsEmptyElement: false };
                    break;
                case (XmlNodeType.Element, "f"):
                    isFormula = true;
                    break;
                case (XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.Whitespace or XmlNodeType.SignificantWhitespace, _):
                    if (inText && !inReading)
                        text.Append(xml.Value);
                    break;
            }

        return (has ? text.ToString() : null, isFormula);
    }

    private static int NumberOf(string? text, int before) => text is null ? before + 1
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > before && number <= MostRows ? number
        : throw new WorkbookException(InputCodes.Malformed, "The rows of a sheet are not in order; save the workbook again in the spreadsheet.");

    /// <summary>AB12 is column 27, from 0.</summary>
    private static int ColumnOf(string? place, int next)
    {
        if (place is null)
            return next;
        var column = 0;
        foreach (var letter in place.TakeWhile(char.IsAsciiLetterUpper).Take(4))
            column = 26 * column + letter - 'A' + 1;
        return column - 1 >= next && column <= MostColumns ? column - 1
            : throw new WorkbookException(InputCodes.Malformed, "The cells of a row are not in order; save the workbook again in the spreadsheet.");
    }
}
