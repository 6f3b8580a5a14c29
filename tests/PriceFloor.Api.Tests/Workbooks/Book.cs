using System.Globalization;
using System.IO.Compression;
using System.Security;
using System.Text;
using ExcelDataReader;

namespace PriceFloor.Api.Tests.Workbooks;

/// <summary>Workbooks as spreadsheets save them, and what another library reads in them.</summary>
internal static class Book
{
    public const string Type = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    public const string Path = "/v1/studio.xlsx";

    /// <summary>A stall at a market with its fee: what the contract's example of an answer is about.</summary>
    public static byte[] Example => Of(
        ("channels", ["channel|name|sells|currency", "market|Market, Saturdays|retail|USD"]),
        ("fees", ["channel|name|rate|of", "market|card|0.024|paid"]));

    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    /// <summary>Sends a workbook.</summary>
    public static Task<Answer> Send(this Studio studio, byte[] file, HttpClient? client = null, string query = "",
        params (string, string)[] headers) =>
        studio.SendBytes("POST", Path + query, file, Type, client, headers);

    /// <summary>The workbook as bytes.</summary>
    public static async Task<(byte[] File, string Tag)> Workbook(this Studio studio, HttpClient? client = null)
    {
        using var answer = await (client ?? studio.Client).GetAsync(Path, Studio.Cancellation);
        Xunit.Assert.Equal((200, Type), ((int)answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
        return (await answer.Content.ReadAsByteArrayAsync(Studio.Cancellation), answer.Headers.ETag!.Tag);
    }

    /// <summary>
    /// A workbook of sheets, each of rows whose cells have bars between; what looks like a number is one, and =x has a result after a colon.
    /// </summary>
    public static byte[] Of(params (string Name, string[] Rows)[] sheets) => Of(sheets, cell => Inline(cell));

    /// <summary>The same with cells written by the test: their XML between <c>&lt;c r="A1"</c> and <c>&lt;/c></c>.</summary>
    public static byte[] Of((string Name, string[] Rows)[] sheets, Func<string, string> cell, string? texts = null, string? styles = null,
        string properties = "")
    {
        var parts = new Dictionary<string, string>
        {
            ["_rels/.rels"] = Links(("officeDocument", "xl/workbook.xml")),
            ["xl/workbook.xml"] = $"""<workbook xmlns="{Main}" xmlns:r="{Office}">{properties}<sheets>"""
                + string.Concat(sheets.Select((sheet, index) => $"""<sheet name="{SecurityElement.Escape(sheet.Name)}" sheetId="{index + 1}" r:id="rId{index + 1}"/>"""))
                + "</sheets></workbook>",
            ["xl/_rels/workbook.xml.rels"] = Links([.. sheets.Select((_, index) => ("worksheet", $"worksheets/sheet{index + 1}.xml")),
                ("sharedStrings", "sharedStrings.xml"), ("styles", "/xl/styles.xml")]),
        };
        if (texts is not null)
            parts["xl/sharedStrings.xml"] = $"""<sst xmlns="{Main}">{texts}</sst>""";
        if (styles is not null)
            parts["xl/styles.xml"] = $"""<styleSheet xmlns="{Main}">{styles}</styleSheet>""";
        foreach (var (index, sheet) in sheets.Index())
            parts[$"xl/worksheets/sheet{index + 1}.xml"] = $"""<worksheet xmlns="{Main}"><sheetData>"""
                + string.Concat(sheet.Rows.Select((row, number) => row.Length == 0 ? "" : $"""<row r="{number + 1}">"""
                    + string.Concat(row.Split('|').Select((text, column) => text.Length == 0 ? ""
                        : $"""<c r="{OfficeBook.ColumnOf(column)}{number + 1}"{cell(text)}</c>""")) + "</row>"))
                + "</sheetData></worksheet>";
        return Zip(parts);
    }

    /// <summary>A cell with its text in it.</summary>
    public static string Inline(string text) =>
        decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? $"><v>{text}</v>"
        : text is "TRUE" or "FALSE" ? $""" t="b"><v>{(text == "TRUE" ? 1 : 0)}</v>"""
        : text[0] == '=' && text.Contains(':', StringComparison.Ordinal)
            ? $"><f>{SecurityElement.Escape(text[1..text.IndexOf(':', StringComparison.Ordinal)])}</f>"
                + $"<v>{text[(text.IndexOf(':', StringComparison.Ordinal) + 1)..]}</v>"
        : $""" t="inlineStr"><is><t xml:space="preserve">{SecurityElement.Escape(text)}</t></is>""";

    /// <summary>The parts of a file.</summary>
    public static Dictionary<string, string> Parts(byte[] file)
    {
        using var zip = new ZipArchive(new MemoryStream(file));
        return zip.Entries.ToDictionary(entry => entry.FullName, entry =>
        {
            using var text = new StreamReader(entry.Open(), Encoding.UTF8);
            return text.ReadToEnd();
        });
    }

    /// <summary>All that it says, as text in which something can be looked for.</summary>
    public static string Unpacked(byte[] file) => string.Join('\n', Parts(file).Values);

    public static byte[] Zip(IReadOnlyDictionary<string, string> parts)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
            foreach (var (name, text) in parts)
                using (var writer = new StreamWriter(zip.CreateEntry(name).Open(), new UTF8Encoding(false)))
                    writer.Write(text);
        return bytes.ToArray();
    }

    /// <summary>The same file with another text in the place of one that is there exactly once.</summary>
    public static byte[] With(byte[] file, string old, string now)
    {
        var parts = Parts(file);
        var (name, text) = parts.Single(part => part.Value.Contains(old, StringComparison.Ordinal));
        Xunit.Assert.Equal(text.IndexOf(old, StringComparison.Ordinal), text.LastIndexOf(old, StringComparison.Ordinal));
        parts[name] = text.Replace(old, now, StringComparison.Ordinal);
        return Zip(parts);
    }

    /// <summary>What another library reads: the rows of each sheet.</summary>
    public static Dictionary<string, List<object?[]>> Read(byte[] file)
    {
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        using var reader = ExcelReaderFactory.CreateOpenXmlReader(new MemoryStream(file));
        var sheets = new Dictionary<string, List<object?[]>>();
        do
        {
            var rows = sheets[reader.Name] = [];
            while (reader.Read())
                rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetValue)]);
        }
        while (reader.NextResult());
        return sheets;
    }

    private static string Links(params (string Kind, string Target)[] links) =>
        """<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">""" + string.Concat(links.Select((link, index) =>
            $"""<Relationship Id="rId{index + 1}" Type="{Office}/{link.Kind}" Target="{link.Target}"/>""")) + "</Relationships>";
}
