namespace PriceFloor.Statements.Files;

/// <summary>The values of an entry, or of one payment in it, by path.</summary>
internal sealed class CamtPart
{
    /// <summary>More than any bank writes for one payment.</summary>
    private const int MostValues = 500;

    private readonly Dictionary<string, string> _values = [];
    private readonly List<string> _words = [];
    private int _length;

    public string? this[string path] => _values.GetValueOrDefault(path);

    /// <summary>1 came in, -1 went out, null if the file does not say.</summary>
    public int? Sign => this["CdtDbtInd"]?.Trim() switch { "CRDT" => 1, "DBIT" => -1, _ => null };

    /// <summary>A path that comes twice keeps its first value, except for remittance lines, which all count.</summary>
    public void Say(string path, string value)
    {
        if (path is not ("RmtInf/Ustrd" or "RmtInf/Strd/CdtrRefInf/Ref" or "RmtInf/Strd/AddtlRmtInf" or "AddtlTxInf"))
        {
            if (_values.Count < MostValues)
                _values.TryAdd(path, value);
        }
        else if (_length < PlainText.LongestText)
        {
            _words.Add(value);
            _length += value.Length;
        }
    }

    /// <summary>
    /// The name of the other side (in version 02 beside its role, later below Pty), else of the side that is named, and the remittance lines.
    /// </summary>
    public IEnumerable<string?> Words(string role) => [Name(role) ?? Name(role == "Dbtr" ? "Cdtr" : "Dbtr"), .. _words];

    /// <summary>
    /// In the entry's currency, with its sign if the payment has none of its own; null if it has no amount, or one in another currency.
    /// </summary>
    public decimal? Amount(Transaction entry)
    {
        // Its own element since version 04, below the details of the amount before.
        var path = this["Amt"] is not null ? "Amt" : "AmtDtls/TxAmt/Amt";
        var amount = CamtValue.Amount(this[path]);
        if (amount is null || (PlainText.Currency(this[$"{path}@Ccy"]) is { } currency && currency != entry.Currency))
            return null;
        return amount * (Sign ?? decimal.Sign(entry.Amount));
    }

    private string? Name(string role) =>
        this[$"RltdPties/{role}/Nm"] ?? this[$"RltdPties/{role}/Pty/Nm"] ?? this[$"RltdPties/Ultmt{role}/Nm"]
        ?? this[$"RltdPties/Ultmt{role}/Pty/Nm"];
}
