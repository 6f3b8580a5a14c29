namespace PriceFloor.Statements.Files;

/// <summary>Reads a sheet with named columns, line by line; a line that cannot be read costs only itself.</summary>
internal sealed class SheetFile
{
    private readonly SheetHeader _header;
    private readonly SheetMoney _money;
    private readonly SheetTotals _totals;
    private readonly string _account;
    private readonly ParseResult _gathered = new();
    private readonly SheetDates _dates;
    private readonly Dictionary<string, List<Transaction>> _accounts = [];
    private readonly List<string> _order = [];

    private SheetFile(string text, SheetHeader header, string account, SheetReading sheet)
    {
        (_header, _account, _money, _totals) = (header, account, new SheetMoney(header.Columns, sheet), new SheetTotals(header.Columns));
        _dates = new SheetDates(sheet.DateOrder, () => RowsOf(text).Select(row => Cell(row.Cells ?? [], header.Columns.Date)));
    }

    public static Outcome<StatementFile> Read(string text, string account, SheetReading sheet)
    {
        var header = SheetHeader.Of(text, sheet);
        return header.Found is null ? header.Faults.ToList() : new SheetFile(text, header.Value, account, sheet).Rows(text);
    }

    private Outcome<StatementFile> Rows(string text)
    {
        foreach (var row in RowsOf(text))
        {
            if (Take(row) is { } fault)
                _gathered.Refuse(row.Line, fault.Code, fault.Detail);
            if (_gathered.IsFull)
                return ParseResult.TooMany;
        }
        _money.End();
        if (_money.IsUnsigned)
            return SheetHeader.Unsigned;
        if (_order.Count == 0)
            Of(_account);
        foreach (var name in _order)
            _gathered.Add(new AccountStatement(name, null, null, _accounts[name]) { IsCashBook = _header.Columns.CashBook is not null });
        return _gathered.As(StatementFormat.Csv) with { IsSigned = _header.Columns.IsSigned };
    }

    private IEnumerable<SheetRow> RowsOf(string text) =>
        new SheetRows(text, _header.Separator).Read().Where(row => row.Line > _header.Line && !row.IsEmpty);

    private LineFault? Take(SheetRow row)
    {
        if (row.Cells is not { } cells)
            return LineFault.Quotes;
        var columns = _header.Columns;
        if (cells.Skip(columns.Count).Any(cell => !string.IsNullOrWhiteSpace(cell)))
            return LineFault.TooManyCells;
        if (_dates.Read(Cell(cells, columns.Date), out var date) is { } badDate)
            return SheetTotals.IsUndated(cells) ? LineFault.Total : badDate;
        var text = PlainText.Of(columns.Texts.Select(column => Cell(cells, column)));
        var currency = PlainText.Currency(Cell(cells, columns.Currency));
        if (_money.Read(cells, currency is "" ? null : currency, out var amount, out var code) is { } badAmount)
            return _totals.IsOfBoth(text, badAmount) ? LineFault.Total : badAmount;
        if (_totals.IsDated(text, amount))
            return LineFault.Total;
        ReadingRule? says = null;
        if (columns.CashBook is { } book && book.Read(cells, out says) is { } badPlace)
            return badPlace;
        _totals.Add(amount);
        if (currency is "")
            return LineFault.BadCurrency;
        if (code is not null && currency is not null && code != currency)
            return LineFault.TwoCurrencies;
        Of(PlainText.Account(Cell(cells, columns.Account)) ?? _account).Add(new Transaction
        {
            Line = row.Line,
            Date = date,
            Amount = amount,
            Currency = currency ?? code,
            BankId = PlainText.Id(Cell(cells, columns.Id)),
            Text = text,
            Says = says,
        });
        _gathered.Take();
        return null;
    }

    private static string Cell(IReadOnlyList<string> cells, int column) => column >= 0 && column < cells.Count ? cells[column] : "";

    private List<Transaction> Of(string account)
    {
        if (_accounts.TryGetValue(account, out var found))
            return found;
        _order.Add(account);
        return _accounts[account] = [];
    }
}
