using System.Xml;

namespace PriceFloor.Statements.Files;

/// <summary>Reads OFX 2.x.</summary>
internal static class OfxXml
{
    public static Outcome<StatementFile> Read(XmlReader reader, string account, CancellationToken cancel)
    {
        var statements = new OfxStatements(account);
        do
        {
            cancel.ThrowIfCancellationRequested();
            if (reader.Depth > XmlFile.Deepest)
                return XmlFile.TooDeep;
            Give(reader, statements);
            if (statements.IsFull)
                return ParseResult.TooMany;
        }
        while (reader.Read());
        return statements.As(StatementFormat.OfxXml);
    }

    private static void Give(XmlReader reader, OfxStatements statements)
    {
        switch (reader.NodeType)
        {
            case XmlNodeType.Element:
                var (name, isEmpty) = (reader.LocalName.ToUpperInvariant(), reader.IsEmptyElement);
                statements.Take(new OfxToken(OfxTokenKind.Open, name, 0));
                if (isEmpty)
                    statements.Take(new OfxToken(OfxTokenKind.Close, name, 0));
                break;
            case XmlNodeType.EndElement:
                statements.Take(new OfxToken(OfxTokenKind.Close, reader.LocalName.ToUpperInvariant(), 0));
                break;
            case XmlNodeType.Text or XmlNodeType.CDATA:
                statements.Take(new OfxToken(OfxTokenKind.Text, reader.Value, 0));
                break;
        }
    }
}
