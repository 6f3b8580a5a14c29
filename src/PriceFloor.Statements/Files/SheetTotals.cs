namespace PriceFloor.Statements.Files;

/// <summary>Recognises the rows of a sheet that are no transactions: totals, and balances at the beginning and the end.</summary>
/// <param name="columns">The columns.</param>
internal sealed class SheetTotals(SheetColumns columns)
{
    private static readonly HashSet<string> s_totals = ["total", "totals", "grand total", "sum", "subtotal", "sub total", "sub-total", "summe",
        "gesamt", "gesamtsumme", "somme", "totaal", "suma", "totale"];

    private static readonly HashSet<string> s_balances = ["opening balance", "closing balance", "starting balance", "ending balance", "start balance",
        "end balance", "balance brought forward", "balance carried forward", "brought forward", "carried forward", "anfangssaldo", "endsaldo",
        "solde initial", "solde final", "beginsaldo", "eindsaldo", "saldo inicial", "saldo final"];

    private decimal _in, _out;

    public void Add(decimal amount)
    {
        if (amount > 0)
            _in += amount;
        else
            _out -= amount;
    }

    /// <summary>A row without a day that calls itself a total or a balance in any cell.</summary>
    public static bool IsUndated(IReadOnlyList<string> cells) => cells.Select(SheetWords.Plain)
        .Any(word => s_totals.Contains(word) || s_balances.Contains(word) || word.StartsWith("total ", StringComparison.Ordinal));

    /// <summary>
    /// A row with a day whose whole text is the name of a balance; or that of a total, if its amount is the sum of the lines above it, so a payee
    /// whose name is Total is not one.
    /// </summary>
    public bool IsDated(string text, decimal amount)
    {
        var word = SheetWords.Plain(text);
        return s_balances.Contains(word)
            || (s_totals.Contains(word) && _in + _out > 0 && (amount == _in - _out || amount == _in || decimal.Abs(amount) == _out));
    }

    /// <summary>A row with a day that fills both columns of money, as only a total can.</summary>
    public bool IsOfBoth(string text, LineFault? fault) =>
        fault == LineFault.BothDirections && columns.Amount < 0 && s_totals.Contains(SheetWords.Plain(text));
}
