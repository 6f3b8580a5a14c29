namespace PriceFloor.Statements.Files;

/// <summary>The general words that identify the columns of a sheet, best first; a caller names any other.</summary>
internal static class SheetWords
{
    public static readonly string[] Date =
        ["booking date", "date booked", "transaction date", "date", "posted", "posted date", "posting date", "date posted", "value date"];

    public static readonly string[] Amount = ["amount", "transaction amount"];

    public static readonly string[] In = ["money in", "paid in", "in", "credit", "credits", "credit amount", "deposit", "deposits"];

    public static readonly string[] Out = ["money out", "paid out", "out", "debit", "debits", "debit amount", "withdrawal", "withdrawals"];

    /// <summary>
    /// A bare "reference" is read as text: on many sheets it is what the payer wrote, and comes again every month. A caller who knows better names it
    /// as the id.
    /// </summary>
    public static readonly string[] Text =
    [
        "payee", "name", "counterparty", "description", "text", "details", "memo", "narrative", "particulars", "purpose",
        "reference", "reference text", "payment reference", "remittance information",
    ];

    public static readonly string[] Id = ["transaction id", "id", "transaction reference", "bank reference", "entry reference", "fitid"];

    public static readonly string[] Currency = ["currency", "currency code", "ccy"];

    public static readonly string[] Account = ["account", "iban", "account number", "account id"];

    /// <summary>If a sheet has one of these columns, it has the direction, and the amounts have no sign.</summary>
    public static readonly string[] Direction = ["debit/credit", "credit/debit", "dr/cr", "cr/dr", "d/c", "c/d",
        "credit debit indicator", "direction"];

    /// <summary>The form in which words are compared: small letters, single spaces, no underscores, no "(EUR)" at the end.</summary>
    public static string Plain(string header)
    {
        var word = PlainText.Of(header.Replace('_', ' ')).TrimEnd(':').ToLowerInvariant();
        var open = word.IndexOf('(', StringComparison.Ordinal);
        return open > 0 && word.EndsWith(')') ? word[..open].TrimEnd() : word;
    }
}
