using System.Xml;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Workbooks.Files;

/// <summary>
/// Reads a workbook (.xlsx) as spreadsheets save it: exact numbers as the file has them, texts, dates. It runs no formula; of one it takes the
/// result that the spreadsheet stored.
/// </summary>
internal static class WorkbookFile
{
    private const int MostSheets = 255;

    /// <summary>The sheets, or why the file cannot be read.</summary>
    /// <param name="file">The file.</param>
    /// <param name="mostBytes">The most that its parts may be when they are unpacked.</param>
    /// <param name="isWanted">Whether a sheet is to be read; of others only the name is given.</param>
    public static Outcome<IReadOnlyList<WorkbookSheet>> Read(byte[] file, long mostBytes, Func<string, bool> isWanted)
    {
        try
        {
            using var parts = new PackedParts(file, mostBytes);
            return Read(parts, isWanted).ToList();
        }
        catch (WorkbookException e)
        {
            return e.Code is { } code ? Unreadable(code, e.Message) : RequestFault.Of(ProblemTypes.TooLarge, e.Message);
        }
        catch (XmlException e)
        {
            return Unreadable(InputCodes.Malformed, "A part of the workbook is not the XML of a workbook"
                + FormattableString.Invariant($" (line {e.LineNumber}, column {e.LinePosition}); save it again in the spreadsheet."));
        }
        catch (Exception e) when (e is InvalidDataException or IOException or NotSupportedException or ArgumentException or OverflowException)
        {
            return Unreadable(InputCodes.Malformed, "The workbook is damaged or incomplete; save it again in the spreadsheet, without a password.");
        }
    }

    private static RequestFault Unreadable(Code code, string detail) =>
        RequestFault.Unreadable(new InputError { Code = code, Detail = detail });

    private static IEnumerable<WorkbookSheet> Read(PackedParts parts, Func<string, bool> isWanted)
    {
        var book = parts.Links("").Values.FirstOrDefault(link => link.Kind == "officeDocument").Part ?? "xl/workbook.xml";
        var (names, from1904) = SheetsIn(parts, book);
        var links = parts.Links(book);
        string? PartOf(string kind) => links.Values.FirstOrDefault(link => link.Kind == kind).Part;
        var texts = SharedTexts.Of(PartOf("sharedStrings") is { } shared ? parts.Open(shared) : null);
        var dates = DateStyles.Of(PartOf("styles") is { } styles ? parts.Open(styles) : null);
        var reader = new SheetPart(texts, dates);
        foreach (var (name, id) in names)
        {
            if (!links.TryGetValue(id, out var link))
                throw new WorkbookException(InputCodes.Malformed,
                    $"The sheet \"{Short(name)}\" is not in the file; save it again in the spreadsheet.");
            using var xml = isWanted(name) && link.Kind == "worksheet" ? parts.Open(link.Part) : null;
            yield return new WorkbookSheet(name, xml is null ? [] : reader.Read(xml), from1904);
        }
    }

    private static (List<(string Name, string Id)> Names, bool From1904) SheetsIn(PackedParts parts, string book)
    {
        using var xml = parts.Open(book)
            ?? throw new WorkbookException(InputCodes.Malformed, "There is no workbook in this file; save it as .xlsx and send that file.");
        var (names, from1904) = (new List<(string, string)>(), false);
        while (xml.Read())
            if (xml is { NodeType: XmlNodeType.Element, LocalName: "workbookPr" })
                from1904 = xml.GetAttribute("date1904") is "1" or "true";
            else if (xml is { NodeType: XmlNodeType.Element, LocalName: "sheet" } && xml.GetAttribute("name") is { } name)
                names.Add((name.Trim(), IdOf(xml)));
        if (names.Count is 0 or > MostSheets)
            throw new WorkbookException(InputCodes.Malformed, $"The file has no sheets, or more than {MostSheets}.");
        return (names, from1904);
    }

    /// <summary>The id is in another namespace in each of the two flavours of the format.</summary>
    private static string IdOf(XmlReader xml)
    {
        var id = "";
        while (xml.MoveToNextAttribute())
            id = xml is { LocalName: "id", Prefix.Length: > 0 } ? xml.Value : id;
        xml.MoveToElement();
        return id;
    }

    internal static string Short(string text) => text.Length <= 40 ? text : text[..40] + "...";
}
