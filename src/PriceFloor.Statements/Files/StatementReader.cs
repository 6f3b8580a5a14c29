namespace PriceFloor.Statements.Files;

/// <summary>Reads a statement in any of the open formats.</summary>
public static class StatementReader
{
    /// <summary>Reads one file, or reports why none of it can be read. Whatever the bytes are, it returns and never throws.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="account">The account's name if the file does not have one.</param>
    /// <param name="sheet">What the caller says about sheets.</param>
    /// <param name="cancel">Cancels it, also inside one file.</param>
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
