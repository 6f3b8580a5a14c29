namespace PriceFloor.Statements.Files;

internal static class FormatOf
{
    public static Fault Unknown { get; } =
        new("", FileCodes.UnknownFormat, "The file is neither CSV with named columns, nor OFX, nor ISO 20022 camt.053.");

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
