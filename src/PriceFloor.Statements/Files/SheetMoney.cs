namespace PriceFloor.Statements.Files;

/// <summary>The amount of a line of a sheet, positive if it came in, from one column or from two.</summary>
internal sealed class SheetMoney(SheetColumns columns, SheetReading sheet)
{
    private readonly SheetAmount _amounts = new(sheet.Semicolon ? ',' : '.');
    private bool _hasMinus, _hasOther, _hasWords;

    /// <summary>
    /// The amounts have no sign, since another column has their direction and they do not follow it: read alone, they would all have come in.
    /// </summary>
    public bool IsUnsigned { get; private set; }

    /// <summary>All lines are read: amounts beside a direction in unknown words are signed only if one of them has a minus.</summary>
    public void End() => IsUnsigned |= columns.Beside >= 0 && _hasOther && !_hasMinus && !_hasWords;

    /// <returns>Null if the amount was read, else why not.</returns>
    public LineFault? Read(IReadOnlyList<string> cells, string? own, out decimal amount, out string? code)
    {
        own ??= sheet.Currency;
        if (columns.Amount < 0)
            return OfTwo(Cell(cells, columns.In).Trim(), Cell(cells, columns.Out).Trim(), own, out amount, out code);
        if (_amounts.Read(Cell(cells, columns.Amount), own, out amount, out code) is { } fault)
            return fault;
        if (sheet.PositiveIsOut)
            amount = -amount;
        if (columns.Direction >= 0)
            return Directed(Direction.Of(Cell(cells, columns.Direction)), ref amount);
        if (columns.Beside >= 0)
            Compare(Direction.Of(Cell(cells, columns.Beside)), amount);
        return amount == 0 ? LineFault.Zero : null;
    }

    private static LineFault? Directed(Paid? direction, ref decimal amount)
    {
        if (amount == 0)
            return LineFault.Zero;
        if (direction is not { } paid)
            return LineFault.UnknownDirection;
        if (paid == Paid.In && amount < 0)
            return LineFault.MinusIn;
        amount = paid == Paid.In ? amount : -decimal.Abs(amount);
        return null;
    }

    private void Compare(Paid? direction, decimal amount)
    {
        _hasMinus |= amount < 0;
        _hasOther |= amount > 0;
        _hasWords |= direction is not null;
        IsUnsigned |= direction == Paid.Out && amount > 0;
    }

    private LineFault? OfTwo(string inCell, string outCell, string? own, out decimal amount, out string? code)
    {
        (amount, code) = (0, null);
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
}
