namespace PriceFloor.Statements.Files;

/// <summary>
/// Collects bank and card statements from the tags of OFX. It keeps track only of aggregates that change the meaning of a value, so neither depth nor
/// unknown tags matter.
/// </summary>
internal sealed class OfxStatements(string account)
{
    private static readonly HashSet<string> s_statements = ["STMTRS", "CCSTMTRS"];

    /// <summary>Inside these a value has its own meaning: CURRENCY and ORIGCURRENCY both have a CURSYM.</summary>
    private static readonly HashSet<string> s_aggregates =
        ["STMTRS", "CCSTMTRS", "BANKACCTFROM", "CCACCTFROM", "BANKTRANLIST", "STMTTRN", "PAYEE", "CURRENCY", "ORIGCURRENCY"];

    private readonly ParseResult _gathered = new();
    private readonly List<string> _inside = [];
    private OfxStatement? _statement;
    private OfxTransaction? _transaction;
    private string _field = "";
    private int _count;

    public bool IsFull => _gathered.IsFull || _count > ParseResult.MostLines;

    public void Take(OfxToken token)
    {
        switch (token.Kind)
        {
            case OfxTokenKind.Open:
                Open(token);
                break;
            case OfxTokenKind.Text:
                Value(token.Text);
                break;
            default:
                Close(token.Text);
                break;
        }
    }

    public Outcome<StatementFile> As(StatementFormat format)
    {
        EndStatement();
        return _gathered.IsEmpty
            ? new Fault("", FileCodes.NoStatement, "The file is OFX, but has no bank or card statement in it.")
            : _gathered.As(format);
    }

    private void Open(OfxToken tag)
    {
        _field = tag.Text;
        if (!s_aggregates.Contains(tag.Text))
            return;
        if (s_statements.Contains(tag.Text))
        {
            EndStatement();
            _statement = new OfxStatement();
        }
        else if (tag.Text == "STMTTRN")
        {
            EndTransaction();
            Leave("STMTTRN");
            _count++;
            _transaction = _statement is null ? null : new OfxTransaction(tag.Line > 0 ? tag.Line : _count);
        }
        // At most one of each kind is open: SGML that forgets its end tags must not nest without end.
        Leave(tag.Text);
        _inside.Add(tag.Text);
    }

    private void Value(string value)
    {
        if (_field.Length == 0 || _statement is null)
            return;
        var inside = _inside.Count == 0 ? "" : _inside[^1];
        if (_transaction is not null)
            _transaction.Say(inside, _field, value);
        else
            _statement.Say(inside, _field, value);
    }

    private void Close(string name)
    {
        _field = "";
        if (!s_aggregates.Contains(name))
            return;
        if (name is "STMTTRN" or "BANKTRANLIST")
            EndTransaction();
        else if (s_statements.Contains(name))
            EndStatement();
        Leave(name);
    }

    private void Leave(string name)
    {
        if (_inside.LastIndexOf(name) is >= 0 and var at)
            _inside.RemoveRange(at, _inside.Count - at);
    }

    private void EndTransaction()
    {
        if (_transaction is not null)
            _statement?.Add(_transaction, _gathered);
        _transaction = null;
    }

    private void EndStatement()
    {
        EndTransaction();
        if (_statement is not null)
            _gathered.Add(_statement.End(account, _gathered));
        _statement = null;
        _inside.Clear();
    }
}
