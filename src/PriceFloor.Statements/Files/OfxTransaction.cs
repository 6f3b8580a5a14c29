namespace PriceFloor.Statements.Files;

/// <summary>The values of one STMTTRN while it is read.</summary>
internal sealed class OfxTransaction(int line)
{
    /// <summary>More than any bank writes for one line.</summary>
    private const int MostValues = 500;

    private readonly Dictionary<string, string> _values = [];

    public int Line => line;

    public string? CorrectedId => PlainText.Id(Value("CORRECTFITID"));

    public bool IsDeletion => Value("CORRECTACTION").Trim().Equals("DELETE", StringComparison.OrdinalIgnoreCase);

    public void Say(string inside, string field, string value)
    {
        var key = inside == "STMTTRN" ? field : $"{inside}/{field}";
        // XML may give one value in pieces; more than a text can use is dropped.
        if (!_values.TryGetValue(key, out var before))
        {
            if (_values.Count < MostValues)
                _values[key] = value;
        }
        else if (before.Length < PlainText.LongestText)
            _values[key] = before + value;
    }

    /// <param name="currency">The statement's, if the transaction has none of its own.</param>
    /// <param name="transaction">The transaction read.</param>
    /// <returns>Null if <paramref name="transaction"/> was read, else why not.</returns>
    public LineFault? Read(string? currency, out Transaction? transaction)
    {
        transaction = null;
        if (Value("TRNTYPE").Trim().Equals("HOLD", StringComparison.OrdinalIgnoreCase))
            return LineFault.NotBooked;
        if (OfxValue.Day(Value("DTPOSTED")) is not { } date)
            return LineFault.BadDate;
        if (OfxValue.Amount(Value("TRNAMT")) is not { } amount)
            return LineFault.BadAmount;
        if (amount == 0)
            return LineFault.Zero;
        // CURRENCY says that the amount is in another currency; ORIGCURRENCY only that it once was, before the bank converted it.
        currency = PlainText.Currency(Value("CURRENCY/CURSYM")) ?? currency;
        if (currency is "")
            return LineFault.BadCurrency;
        transaction = new Transaction
        {
            Line = line,
            Date = date,
            Amount = amount,
            Currency = currency,
            BankId = PlainText.Id(Value("FITID")),
            Text = PlainText.Of(Value("NAME"), Value("PAYEE/NAME"), Value("EXTDNAME"), Value("MEMO")),
        };
        return null;
    }

    private string Value(string key) => _values.GetValueOrDefault(key, "");
}
