using PriceFloor.Evidence.Lines;
using PriceFloor.Statements;
using PriceFloor.Statements.Files;

namespace PriceFloor.Evidence.Sheets;

/// <summary>
/// Reads the sheet of any shop into movements, line by line: a line that cannot be read keeps only its number, its code and the money that can be
/// read of it. Columns that have no field are never looked at.
/// </summary>
public sealed class MovementSheet
{
    private static readonly LogField[] s_money = [LogField.Price, LogField.LineTotal];

    private readonly LogTable _table;
    private readonly LogSheet _sheet;
    private readonly LogCells _cells;
    private readonly SheetDates _dates;

    private MovementSheet(LogTable table, LogSheet sheet)
    {
        (_table, _sheet, _cells) = (table, sheet, new LogCells(table, sheet.Semicolon));
        _dates = table.Dates(sheet.DateOrder);
    }

    /// <summary>The lines, or what is wrong with the sheet as a whole: its heading, or more than 200,000 lines.</summary>
    public static Outcome<List<SentMovement>> Read(ReadOnlySpan<byte> bytes, LogSheet sheet)
    {
        var table = LogTable.Of(DecodedText.Of(bytes), sheet, LogFields.OfMovements, found => Needed(found, sheet));
        return table.Found is { } found ? SheetLines.All(new MovementSheet(found, sheet).Lines()) : table.Faults.ToList();
    }

    private static IEnumerable<LogField[]> Needed(LogTable table, LogSheet sheet)
    {
        yield return [LogField.On];
        yield return [LogField.Sku];
        yield return [LogField.Pieces];
        if (sheet.What == MovementKind.Sold && !table.Has(LogField.What))
            yield return s_money;
        if (sheet.Channel is null && sheet.What is MovementKind.Sold or MovementKind.Sent or MovementKind.Back && !table.Has(LogField.What))
            yield return [LogField.Channel];
    }

    private IEnumerable<SentMovement> Lines()
    {
        foreach (var row in _table.Rows)
        {
            _cells.Begin(row);
            var line = _cells.Fault is null ? Line(row.Line) : new SentMovement { Line = row.Line };
            yield return _cells.Fault is { } fault ? line with { Fault = fault } : line;
        }
    }

    private SentMovement Line(int number)
    {
        var currency = PlainText.Currency(_cells.Text(LogField.Currency));
        if (currency is "")
            _cells.Refuse(LineCodes.BadCurrency);
        var (what, pieces, value) = Signed(currency);
        var listed = _cells.Amount(LogField.Listed, currency);
        var (discount, fees) = (OfOrder(LogField.Discount, currency), OfOrder(LogField.Fees, currency));
        var (charged, cost) = (OfOrder(LogField.ShippingCharged, currency), OfOrder(LogField.ShippingCost, currency));
        if (currency is not null && _cells.Currency is { } beside && beside != currency)
            _cells.Refuse(LineCodes.BadCurrency);
        return MovementRules.Checked(new SentMovement
        {
            Line = number,
            What = what,
            Pieces = pieces,
            Value = value,
            On = _cells.Day(_dates),
            Sku = _cells.Text(LogField.Sku) ?? "",
            Channel = _cells.Text(LogField.Channel) ?? _sheet.Channel,
            Listed = listed,
            Order = _cells.Text(LogField.Order),
            Discount = discount,
            Fees = fees,
            ShippingCharged = charged,
            ShippingCost = cost,
            Currency = currency ?? _cells.Currency,
            Ref = _cells.Text(LogField.Ref),
            Grade = _cells.Word(LogField.Grade, Grade.Good),
            Resale = _cells.Choice(LogField.Resale, usual: true),
            Stall = _cells.Text(LogField.Stall),
            Piece = _cells.Text(LogField.Piece),
            IsCancelled = _sheet.IsCancelled(_cells.Text(LogField.Status) ?? ""),
        });
    }

    /// <summary>What happened, to how many, for how much: negative pieces and negative amounts came back, once even if both are.</summary>
    private (MovementKind What, int Pieces, decimal? Value) Signed(string? currency)
    {
        var what = _cells.Word(LogField.What, _sheet.What);
        var pieces = _cells.Count(LogField.Pieces) ?? 0;
        var (price, total) = (_cells.Amount(LogField.Price, currency), _cells.Amount(LogField.LineTotal, currency));
        var value = total ?? (price is { } each ? each * decimal.Abs(pieces) : null);
        if (what == MovementKind.Sold && (pieces < 0 || value < 0))
            what = MovementKind.Returned;
        var isMoney = what is MovementKind.Sold or MovementKind.Returned;
        return (what, isMoney ? int.Abs(pieces) : pieces, isMoney && value is { } paid ? decimal.Abs(paid) : null);
    }

    /// <summary>An amount of the order, which shops write with or without a minus. Nothing is not an amount.</summary>
    private decimal? OfOrder(LogField field, string? currency) => _cells.Amount(field, currency) is { } amount and not 0 ? decimal.Abs(amount) : null;
}
