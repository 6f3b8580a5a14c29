namespace PriceFloor.Statements.Files;

internal static class FormatOf
{
    private const string NoFormat = "The file is neither CSV with named columns, nor OFX, nor ISO 20022 camt.053.";

    public static Fault Unknown { get; } = new("", FileCodes.UnknownFormat, NoFormat);

    /// <summary>
    /// What a sheet without a known heading lacks, with the headings that it has; its pointer is the dialect if that must be said too. Or that the
    /// file is no sheet.
    /// </summary>
    /// <param name="text">The file.</param>
    /// <param name="preamble">How many lines may be above its headings.</param>
    public static Fault UnknownSheet(string text, int preamble) =>
        text.StartsWith("PK\u0003\u0004", StringComparison.Ordinal) ? new("", FileCodes.UnknownFormat,
            $"{NoFormat} It is a workbook or another packed file; save its sheet as CSV and send that.")
        : FoundHeadings.First(text, preamble) is not { } found ? new("", FileCodes.UnknownFormat,
            $"{NoFormat} If it is a sheet, its first line must name the columns, such as Date, Amount and Description.")
        : !HasRows(text, found, preamble) ? new("", FileCodes.UnknownFormat, NoFormat)
        : new(found.Separator == ';' ? "dialect" : "", FileCodes.MissingColumn,
            $"None of the headings of the file is known: {FoundHeadings.In(found.Cells)}. Say which they are with {FoundHeadings.Parameters}"
            + $"{(found.Separator == ';' ? ", and add ?dialect=semicolon" : "")}.");

    /// <summary>A sheet has rows below its headings, with as many cells; a letter has not.</summary>
    private static bool HasRows(string text, (IReadOnlyList<string> Cells, char Separator) found, int preamble) =>
        new SheetRows(text, found.Separator).Read().Take(preamble + 2).Count(row => row.Cells?.Count == found.Cells.Count) > 1;

    public static FileKind Text(ReadOnlySpan<char> text)
    {
        text = text.TrimStart();
        if (text.StartsWith("OFXHEADER:", StringComparison.OrdinalIgnoreCase))
            return FileKind.OfxSgml;
        var bare = !text.StartsWith("<?");
        var root = AfterProlog(text);
        if (root.StartsWith("<!DOCTYPE", StringComparison.OrdinalIgnoreCase))
            return FileKind.Doctype;
        if (!root.StartsWith("<"))
            return FileKind.Sheet;
        // <OFX> without any header is read as SGML: its reader also reads end tags.
        return bare && root.StartsWith("<OFX>", StringComparison.OrdinalIgnoreCase) ? FileKind.OfxSgml : FileKind.Xml;
    }

    /// <summary>Skips declarations, instructions and comments, which cannot nest.</summary>
    private static ReadOnlySpan<char> AfterProlog(ReadOnlySpan<char> text)
    {
        while (true)
        {
            var end = text.StartsWith("<?") ? "?>" : text.StartsWith("<!--") ? "-->" : null;
            if (end is null)
                return text;
            var at = text.IndexOf(end);
            if (at < 0)
                return text;
            text = text[(at + end.Length)..].TrimStart();
        }
    }
}

/// <summary>The format of a file, by its beginning.</summary>
internal enum FileKind { Sheet, OfxSgml, Xml, Doctype }
