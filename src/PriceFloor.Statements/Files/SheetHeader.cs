namespace PriceFloor.Statements.Files;

/// <summary>The position of a sheet's header and the sheet's dialect.</summary>
internal sealed record SheetHeader(SheetColumns Columns, int Line, char Separator)
{
    /// <summary>Lines above the header, such as the bank's name and the period, that are skipped.</summary>
    private const int MostPreamble = 20;

    /// <summary>
    /// Finds the header in the dialect that the caller gives, else with tabs; never in the other dialect, whose decimals would be read wrongly.
    /// </summary>
    public static Outcome<SheetHeader> Of(string text, SheetReading sheet)
    {
        var separator = sheet.Semicolon ? ';' : ',';
        var other = sheet.Semicolon ? ',' : ';';
        var found = Best(text, separator, sheet);
        if (found is not { Columns.IsHeader: true } && Best(text, '\t', sheet) is { Columns.IsHeader: true } tabbed)
            found = tabbed;
        if (found is not { Columns.IsHeader: true } && Best(text, other, sheet) is { Columns.IsHeader: true })
            return OtherDialect(sheet.Semicolon);
        found ??= Best(text, '\t', sheet);
        if (found is null)
            return Best(text, other, sheet) is null ? FormatOf.UnknownSheet(text, MostPreamble) : OtherDialect(sheet.Semicolon);
        if (found.Columns.Missing.Count > 0)
            return MissingColumns(found.Columns);
        return found.Columns.IsUnsigned ? Unsigned : found;
    }

    public static Fault Unsigned { get; } = new("", FileCodes.UnsignedAmount,
        "One column has the amount and another its direction. Add ?directionColumn= with the name of the column that says which way the money went; "
        + "if the amounts have signs that agree with it, ?amountColumn= with the name of theirs is enough.");

    /// <summary>The first line that is a header, else the first that is nearly one.</summary>
    private static SheetHeader? Best(string text, char separator, SheetReading sheet)
    {
        SheetHeader? nearly = null;
        foreach (var row in new SheetRows(text, separator).Read().Take(MostPreamble + 1))
        {
            if (row.Cells is not { } cells)
                continue;
            var header = new SheetHeader(new SheetColumns(cells, sheet), row.Line, separator);
            if (header.Columns.IsHeader)
                return header;
            if (header.Columns.IsNearly)
                nearly ??= header;
        }
        return nearly;
    }

    public static Fault OtherDialect(bool semicolon) => new("", FileCodes.Dialect, semicolon
        ? "The columns are separated by commas; leave out ?dialect=semicolon."
        : "The columns are separated by semicolons; add ?dialect=semicolon, which also reads decimal commas.");

    private static Fault MissingColumns(SheetColumns columns) => new("", FileCodes.MissingColumn,
        $"No column of the header is the one for {string.Join(", ", columns.Missing)}; "
        + $"say {string.Join(" and ", columns.Missing.Select(Say))} with the column's name in the file. "
        + (columns.IsHeader || !FoundHeadings.HasDigits(columns.Headings)
            ? $"The headings of the file are {FoundHeadings.In(columns.Headings)}." : ""));

    private static string Say(string parameter) => parameter == "amountColumn" ? "?amountColumn= (or ?inColumn= and ?outColumn=)" : $"?{parameter}=";
}
