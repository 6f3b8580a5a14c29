namespace PriceFloor.Statements.Files;

/// <summary>Reads a sheet with named columns, line by line; a line that cannot be read costs only itself.</summary>
internal sealed class SheetFile
{
    private readonly SheetHeader _header;
    private readonly SheetReading _sheet;
    private readonly SheetAmount _amounts;
    private readonly string _account;
    private readonly ParseResult _gathered = new();
    private readonly SheetDates _dates;
    private readonly Dictionary<string, List<Transaction>> _accounts = [];
    private readonly List<string> _order = [];

    private SheetFile(string text, SheetHeader header, string account, SheetReading sheet)
    {
        (_header, _account, _sheet, _amounts) = (header, account, sheet, new SheetAmount(sheet.Semicolon ? ',' : '.'));
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
        if (_order.Count == 0)
            Of(_account);
        foreach (var name in _order)
            _gathered.Add(new AccountStatement(name, null, null, _accounts[name]));
        return _gathered.As(StatementFormat.Csv);
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
            return badDate;
        var currency = PlainText.Currency(Cell(cells, columns.Currency));
        if (Amount(cells, currency is "" ? null : currency, out var amount, out var code) is { } badAmount)
            return badAmount;
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
            Text = PlainText.Of(columns.Texts.Select(column => Cell(cells, column))),
        });
        _gathered.Take();
        return null;
    }

    private LineFault? Amount(IReadOnlyList<string> cells, string? own, out decimal amount, out string? code)
    {
        var columns = _header.Columns;
        own ??= _sheet.Currency;
        if (columns.Amount >= 0)
            return _amounts.Read(Cell(cells, columns.Amount), own, out amount, out code) ?? (amount == 0 ? LineFault.Zero : null);
        (amount, code) = (0, null);
        var (inCell, outCell) = (Cell(cells, columns.In).Trim(), Cell(cells, columns.Out).Trim());
        if (inCell.Length + outCell.Length == 0)
            return LineFault.NoDirection;
        decimal inAmount = 0, outAmount = 0;
        string? inCode = null, outCode = null;
        if (inCell.Length > 0 && _amounts.Read(inCell, own, out inAmount, out inCode) is { } badIn)
            return badIn;
        if (outCell.Length > 0 && _amounts.Read(outCell, own, out outAmount, out outCode) is { } badOut)
            return badOut;
        // A minus in the column for money out is the bank's habit; one in the column for money in reverses a receipt.
        (amount, code) = inAmount != 0 ? (inAmount, inCode) : (-decimal.Abs(outAmount), outCode);
        return inAmount != 0 && outAmount != 0 ? LineFault.BothDirections : amount == 0 ? LineFault.Zero : null;
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
