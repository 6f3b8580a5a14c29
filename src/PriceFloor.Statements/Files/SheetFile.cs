namespace PriceFloor.Statements.Files;

/// <summary>Reads a sheet with named columns, line by line; a line that cannot be read costs only itself.</summary>
internal sealed class SheetFile
{
    private readonly SheetHeader _header;
    private readonly SheetReading _sheet;
    private readonly SheetAmount _amounts;
    private readonly string _account;
    private readonly ParseResult _gathered = new();
    private readonly Dictionary<string, List<Transaction>> _accounts = [];
    private readonly List<string> _order = [];

    private SheetFile(SheetHeader header, string account, SheetReading sheet) =>
        (_header, _account, _sheet, _amounts) = (header, account, sheet, new SheetAmount(sheet.Semicolon ? ',' : '.'));

    public static Outcome<StatementFile> Read(string text, string account, SheetReading sheet)
    {
        var header = SheetHeader.Of(text, sheet);
        return header.Found is null ? header.Faults.ToList() : new SheetFile(header.Value, account, sheet).Rows(text);
    }

    private Outcome<StatementFile> Rows(string text)
    {
        foreach (var row in new SheetRows(text, _header.Separator).Read())
        {
            if (row.Line <= _header.Line || row.IsEmpty)
                continue;
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

    private LineFault? Take(SheetRow row)
    {
        if (row.Cells is not { } cells)
            return LineFault.Quotes;
        var columns = _header.Columns;
        if (cells.Skip(columns.Count).Any(cell => !string.IsNullOrWhiteSpace(cell)))
            return LineFault.TooManyCells;
        if (SheetDate.Read(Cell(cells, columns.Date), _sheet.DateOrder, out var date) is { } badDate)
            return badDate;
        if (Amount(cells, out var amount) is { } badAmount)
            return badAmount;
        var currency = PlainText.Currency(Cell(cells, columns.Currency));
        if (currency is "")
            return LineFault.BadCurrency;
        Of(PlainText.Account(Cell(cells, columns.Account)) ?? _account).Add(new Transaction
        {
            Line = row.Line,
            Date = date,
            Amount = amount,
            Currency = currency,
            BankId = PlainText.Id(Cell(cells, columns.Id)),
            Text = PlainText.Of(columns.Texts.Select(column => Cell(cells, column))),
        });
        _gathered.Take();
        return null;
    }

    private LineFault? Amount(IReadOnlyList<string> cells, out decimal amount)
    {
        var columns = _header.Columns;
        amount = 0;
        if (columns.Amount >= 0)
        {
            if (!_amounts.TryRead(Cell(cells, columns.Amount), out amount))
                return LineFault.BadAmount;
            return amount == 0 ? LineFault.Zero : null;
        }
        var (inCell, outCell) = (Cell(cells, columns.In).Trim(), Cell(cells, columns.Out).Trim());
        if (inCell.Length + outCell.Length == 0)
            return LineFault.NoDirection;
        decimal inAmount = 0, outAmount = 0;
        if ((inCell.Length > 0 && !_amounts.TryRead(inCell, out inAmount)) || (outCell.Length > 0 && !_amounts.TryRead(outCell, out outAmount)))
            return LineFault.BadAmount;
        // A minus in the column for money out is the bank's habit; one in the column for money in reverses a receipt.
        amount = inAmount != 0 ? inAmount : -decimal.Abs(outAmount);
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
