using System.Globalization;
using System.Security;
using System.Text;

namespace PriceFloor.Api.Tests.Workbooks;

/// <summary>
/// A workbook written anew as spreadsheet programs save it, by the parts and elements that ECMA-376 (Office Open XML, part 1, SpreadsheetML) has:
/// texts shared, numbers as binary, days as numbers with a format, styles, names, a theme, views, empty cells that only have a look.
/// </summary>
internal sealed class OfficeBook
{
    private const string Links = "http://schemas.openxmlformats.org/package/2006/relationships";
    private const string Transitional = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Sheets = "application/vnd.openxmlformats-officedocument.spreadsheetml";
    private const string Strict = "http://purl.oclc.org/ooxml/spreadsheetml/main";

    private readonly List<(string Name, List<List<Cell>> Rows)> _sheets;
    private readonly List<string> _texts = [];
    private readonly bool _isStrict, _isInline;

    /// <param name="file">The workbook as the service answers it.</param>
    /// <param name="isStrict">In the namespaces of the strict form of the standard.</param>
    /// <param name="isInline">With each text in its cell, as programs write that stream their files.</param>
    public OfficeBook(byte[] file, bool isStrict = false, bool isInline = false)
    {
        (_isStrict, _isInline) = (isStrict, isInline);
        _sheets = [.. Book.Read(file).Select(sheet => (sheet.Key, sheet.Value.ConvertAll(row => row.Select(Cell.Of).ToList())))];
    }

    private string Main => _isStrict ? Strict : Transitional;

    private string Office => _isStrict ? "http://purl.oclc.org/ooxml/officeDocument/relationships"
        : "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    /// <summary>Puts a formula with its result into the cells of a column.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="column">The heading of the column.</param>
    /// <param name="factor">What the formula multiplies by.</param>
    public void Multiply(string sheet, string column, double factor)
    {
        var rows = _sheets.Find(one => one.Name == sheet).Rows;
        var at = rows[0].FindIndex(cell => cell.Text == column);
        foreach (var row in rows.Skip(1).Where(row => row[at].Number is not null))
            row[at] = row[at] with
            {
                Formula = string.Create(CultureInfo.InvariantCulture, $"{row[at].Number:R}*{factor:R}"),
                Number = row[at].Number * factor,
            };
    }

    /// <summary>The sheets in the opposite order, and every other part that such a file has.</summary>
    public byte[] Saved()
    {
        _sheets.Reverse();
        var parts = new Dictionary<string, string> { ["[Content_Types].xml"] = Types() };
        foreach (var (index, sheet) in _sheets.Index())
            parts[PartOf(index)] = SheetXml(sheet.Rows, index == 0);
        parts["_rels/.rels"] = Relations(("rId3", $"{Office}/extended-properties", "docProps/app.xml"),
            ("rId2", "http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties", "docProps/core.xml"),
            ("rId1", $"{Office}/officeDocument", "xl/workbook.xml"));
        parts["docProps/core.xml"] = Head
            + """<cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties"/>""";
        parts["docProps/app.xml"] = Head + """<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"/>""";
        parts["xl/workbook.xml"] = WorkbookXml();
        parts["xl/_rels/workbook.xml.rels"] = Relations([.. _sheets.Select((_, index) =>
                ($"rId{100 - index}", $"{Office}/worksheet", index % 2 == 0 ? PartOf(index)["xl/".Length..] : $"/{PartOf(index)}")),
            ("rId1", $"{Office}/theme", "theme/theme1.xml"), ("rId2", $"{Office}/styles", "styles.xml"),
            ("rId3", $"{Office}/sharedStrings", "sharedStrings.xml")]);
        parts["xl/theme/theme1.xml"] = Head + """
            <a:theme xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" name="Plain"><a:themeElements><a:clrScheme name="Plain">
            <a:dk1><a:sysClr val="windowText" lastClr="000000"/></a:dk1></a:clrScheme></a:themeElements></a:theme>
            """;
        parts["xl/styles.xml"] = StylesXml();
        parts["xl/sharedStrings.xml"] = Head + $"""<sst xmlns="{Main}" count="{_texts.Count * 2}" uniqueCount="{_texts.Count}">"""
            + string.Concat(_texts.Select(SharedXml)) + "</sst>";
        return Book.Zip(parts);
    }

    private const string Head = "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\r\n";

    private const string Below = """
        </sheetData><conditionalFormatting sqref="C2:C9"><cfRule type="cellIs" dxfId="0" priority="1" operator="lessThan"><formula>0</formula></cfRule>
        </conditionalFormatting><pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" footer="0.3"/>
        <pageSetup paperSize="9" orientation="portrait"/><extLst><ext uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}"/></extLst></worksheet>
        """;

    private static string PartOf(int index) => $"xl/worksheets/sheet{40 - index}.xml"; // in no order either

    private string SheetXml(List<List<Cell>> rows, bool isFirst)
    {
        var width = rows.Max(row => row.Count) + 2;
        var xml = new StringBuilder(Head).Append(CultureInfo.InvariantCulture, $"""
            <worksheet xmlns="{Main}" xmlns:r="{Office}" xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" mc:Ignorable="x14ac"
             xmlns:x14ac="http://schemas.microsoft.com/office/spreadsheetml/2009/9/ac"><sheetPr><tabColor rgb="FF1F4E79"/></sheetPr>
            <dimension ref="A1:{ColumnOf(width - 1)}{rows.Count + 1}"/><sheetViews><sheetView {(isFirst ? "tabSelected=\"1\" " : "")}workbookViewId="0">
            <pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><sheetFormatPr defaultRowHeight="15" x14ac:dyDescent="0.25"/>
            <cols><col min="1" max="{width}" width="18.7109375" style="3" customWidth="1"/></cols><sheetData>
            """);
        foreach (var (number, row) in rows.Append([]).Index()) // below the last one a row of cells that only have a look
        {
            xml.Append(CultureInfo.InvariantCulture,
                $"""<row r="{number + 1}" spans="1:{width}" s="3" customFormat="1" ht="15.75" customHeight="1" x14ac:dyDescent="0.25">""");
            foreach (var (column, cell) in row.Concat(Enumerable.Repeat(Cell.Empty, width - row.Count)).Index())
                xml.Append(CellXml(cell, $"{ColumnOf(column)}{number + 1}"));
            xml.Append("</row>");
        }

        return xml.Append(Below).ToString();
    }

    private string CellXml(Cell cell, string at) => cell switch
    {
        { Formula: { } formula, Number: { } number } => string.Create(CultureInfo.InvariantCulture,
            $"""<c r="{at}" s="4"><f>{formula}</f><v>{number:G17}</v></c>"""),
        { Number: { } number } => string.Create(CultureInfo.InvariantCulture, $"""<c r="{at}" s="4"><v>{number:G17}</v></c>"""),
        { Day: { } day } => string.Create(CultureInfo.InvariantCulture,
            $"""<c r="{at}" s="{1 + day.Day % 2}"><v>{(day - new DateTime(1899, 12, 30)).Days}</v></c>"""),
        { Flag: { } flag } => $"""<c r="{at}" s="3" t="b"><v>{(flag ? 1 : 0)}</v></c>""",
        { Text: { Length: > 0 } text } when _isInline =>
            $"""<c r="{at}" s="3" t="inlineStr"><is>{T(text)}</is></c>""",
        { Text: { Length: > 0 } text } => $"""<c r="{at}" s="3" t="s"><v>{PlaceOf(text)}</v></c>""",
        _ => $"""<c r="{at}" s="3"/>""",
    };

    private int PlaceOf(string text)
    {
        if (!_texts.Contains(text))
            _texts.Add(text);
        return _texts.IndexOf(text);
    }

    /// <summary>Every third text in two runs of its own looks.</summary>
    private string SharedXml(string text, int place) => place % 3 > 0 || text.Length < 4 || text.Contains("_x", StringComparison.Ordinal)
        ? $"""<si>{T(text)}</si>"""
        : $"""<si><r>{T(text[..2])}</r><r><rPr><b/><sz val="11"/><color theme="1"/></rPr>{T(text[2..])}</r></si>""";

    private static string T(string text) => $"""<t xml:space="preserve">{Escaped(text)}</t>""";

    private string WorkbookXml() => Head + $"""
        <workbook xmlns="{Main}" xmlns:r="{Office}"{(_isStrict ? " conformance=\"strict\"" : "")}><fileVersion appName="xl" lastEdited="7" lowestEdited="7" rupBuild="1"/>
        <workbookPr defaultThemeVersion="166925"/><bookViews><workbookView xWindow="0" yWindow="0" windowWidth="24000" windowHeight="9000" activeTab="0"/></bookViews>
        <sheets>{string.Concat(_sheets.Select((sheet, index) => $"""<sheet name="{Escaped(sheet.Name)}" sheetId="{7 + index * 3}" r:id="rId{100 - index}"/>"""))}</sheets>
        <definedNames><definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">'{Escaped(_sheets[0].Name)}'!$A$1:$C$9</definedName>
        <definedName name="_xlnm.Print_Titles" localSheetId="1">'{Escaped(_sheets[1].Name)}'!$1:$1</definedName><definedName name="Glass">stock!$D$2</definedName></definedNames>
        <calcPr calcId="191029"/></workbook>
        """;

    private string StylesXml() => Head + $"""
        <styleSheet xmlns="{Main}"><numFmts count="2"><numFmt numFmtId="164" formatCode="yyyy\-mm\-dd;@"/><numFmt numFmtId="165" formatCode="#,##0.00\ [$USD]"/></numFmts>
        <fonts count="1"><font><sz val="11"/><color theme="1"/><name val="Sans"/><family val="2"/><scheme val="minor"/></font></fonts>
        <fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>
        <borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders>
        <cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>
        <cellXfs count="5"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="14" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>
        <xf numFmtId="164" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/><xf numFmtId="49" fontId="0" fillId="1" borderId="0" xfId="0" applyAlignment="1"><alignment wrapText="1"/></xf>
        <xf numFmtId="165" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/></cellXfs>
        <cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles><dxfs count="1"><dxf><font><color rgb="FF9C0006"/></font></dxf></dxfs></styleSheet>
        """;

    private string Types() => Head + """<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">"""
        + """<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>"""
        + """<Default Extension="xml" ContentType="application/xml"/>"""
        + $"""<Override PartName="/xl/workbook.xml" ContentType="{Sheets}.sheet.main+xml"/>"""
        + string.Concat(_sheets.Select((_, index) => $"""<Override PartName="/{PartOf(index)}" ContentType="{Sheets}.worksheet+xml"/>"""))
        + "</Types>";

    private static string Relations(params IEnumerable<(string Id, string Type, string Target)> links) => Head
        + $"""<Relationships xmlns="{Links}">""" + string.Concat(links.Select(link => $"""<Relationship Id="{link.Id}" Type="{link.Type}" Target="{link.Target}"/>""")) + "</Relationships>";

    public static string ColumnOf(int column) =>
        $"{(column < 26 ? "" : ColumnOf(column / 26 - 1))}{(char)('A' + column % 26)}";

    /// <summary>What looks like an escape of the format is escaped itself, by its own rule.</summary>
    private static string Escaped(string text) => SecurityElement.Escape(text.Replace("_x", "_x005F_x", StringComparison.Ordinal));

    private sealed record Cell(string? Text, double? Number, DateTime? Day, bool? Flag)
    {
        public static readonly Cell Empty = new(null, null, null, null);

        public string? Formula { get; init; }

        public static Cell Of(object? value) => value switch
        {
            double number => Empty with { Number = number },
            DateTime day => Empty with { Day = day },
            bool flag => Empty with { Flag = flag },
            string text => Empty with { Text = text },
            _ => Empty,
        };
    }
}
