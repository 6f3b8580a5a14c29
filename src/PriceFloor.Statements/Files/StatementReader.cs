namespace PriceFloor.Statements.Files;

/// <summary>Reads a statement in whichever open format it is in.</summary>
public static class StatementReader
{
    /// <summary>Reads one file, or says why none of it can be read. Whatever the bytes are, it answers and never throws.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="account">What to call its account where it does not name one itself.</param>
    /// <param name="sheet">What the caller says about sheets.</param>
    /// <param name="cancel">Ends it, also inside one file.</param>
    public static Outcome<StatementFile> Read(ReadOnlyMemory<byte> bytes, string account, SheetReading sheet, CancellationToken cancel)
    {
        var text = DecodedText.Of(bytes.Span);
        return FormatOf.Text(text) switch
        {
            FileKind.Doctype => XmlFile.Doctype,
            FileKind.OfxSgml => OfxSgml.Read(text, account),
            FileKind.Xml => XmlFile.Read(text, account, cancel),
            _ => SheetFile.Read(text, account, sheet),
        };
    }
}
