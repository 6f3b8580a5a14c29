using System.Xml;

namespace PriceFloor.Statements.Files;

/// <summary>Reads ISO 20022 camt.053, statement by statement and entry by entry.</summary>
internal sealed class CamtFile(string account)
{
    /// <summary>
    /// No element of a statement has a longer name. A longer name that was cut is still not one of ours, and the paths to its values do not fill the
    /// memory.
    /// </summary>
    private const int LongestName = 40;

    private readonly ParseResult _gathered = new();
    private readonly List<string> _path = [];
    private CamtStatement? _statement;
    private CamtEntry? _entry;
    private int _count, _details;

    public static Outcome<StatementFile> Read(XmlReader reader, string account, CancellationToken cancel) =>
        new CamtFile(account).Nodes(reader, cancel);

    private Outcome<StatementFile> Nodes(XmlReader reader, CancellationToken cancel)
    {
        do
        {
            cancel.ThrowIfCancellationRequested();
            if (reader.Depth > XmlFile.Deepest)
                return XmlFile.TooDeep;
            if (reader.NodeType == XmlNodeType.Element)
                Open(reader);
            else if (reader.NodeType == XmlNodeType.EndElement)
                Close();
            else if (reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA)
                Value(reader.Value);
            if (_gathered.IsFull || _count > ParseResult.MostLines || _details > ParseResult.MostLines)
                return ParseResult.TooMany;
        }
        while (reader.Read());
        return _gathered.IsEmpty
            ? new Fault("", FileCodes.NoStatement, "The file is camt.053, but has no statement in it.")
            : _gathered.As(StatementFormat.Camt053);
    }

    private void Open(XmlReader reader)
    {
        var isEmpty = reader.IsEmptyElement;
        _path.Add(reader.LocalName is { Length: > LongestName } other ? other[..LongestName] : reader.LocalName);
        if (_path is ["Document", _, "Stmt"])
            _statement = new CamtStatement();
        else if (_path is ["Document", _, "Stmt", "Ntry"])
            _entry = new CamtEntry(++_count);
        else if (_entry is not null)
            _details += _entry.Open(Below(4), reader.GetAttribute("Ccy"));
        if (isEmpty)
            Close();
    }

    private void Close()
    {
        if (_path is ["Document", _, "Stmt", "Ntry"])
        {
            _entry!.End(_statement!, _gathered);
            _entry = null;
        }
        else if (_path is ["Document", _, "Stmt"])
        {
            _gathered.Add(_statement!.As(account));
            _statement = null;
        }
        _path.RemoveAt(_path.Count - 1);
    }

    private void Value(string value)
    {
        if (_entry is not null)
            _entry.Say(Below(4), value);
        else
            _statement?.Say(Below(3), value);
    }

    private string Below(int depth) => string.Join('/', _path.Skip(depth));
}
