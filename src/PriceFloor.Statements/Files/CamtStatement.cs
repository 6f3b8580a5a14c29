namespace PriceFloor.Statements.Files;

/// <summary>One Stmt while it is read.</summary>
internal sealed class CamtStatement
{
    private readonly List<Transaction> _transactions = [];
    private string? _account;
    private DateOnly? _from, _to;

    /// <summary>The account's currency, for entries without one.</summary>
    public string? Currency { get; private set; }

    public void Say(string path, string value)
    {
        switch (path)
        {
            case "Acct/Id/IBAN" or "Acct/Id/Othr/Id":
                _account ??= value;
                break;
            case "Acct/Ccy":
                Currency = PlainText.Currency(value);
                break;
            case "FrToDt/FrDtTm" or "FrToDt/FrDt":
                _from = CamtValue.Day(value);
                break;
            case "FrToDt/ToDtTm" or "FrToDt/ToDt":
                _to = CamtValue.Day(value);
                break;
        }
    }

    public void Add(Transaction transaction) => _transactions.Add(transaction);

    public AccountStatement As(string account) => new(PlainText.Account(_account) ?? account, _from, _to, _transactions);
}
