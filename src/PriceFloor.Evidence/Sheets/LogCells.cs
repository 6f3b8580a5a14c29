using PriceFloor.Statements;
using PriceFloor.Statements.Files;

namespace PriceFloor.Evidence.Sheets;

/// <summary>Reads the cells of one row of a sheet; keeps the first fault, so the line can be refused by one code.</summary>
/// <param name="table">The sheet.</param>
/// <param name="semicolon">Whether decimals have commas.</param>
internal sealed class LogCells(LogTable table, bool semicolon)
{
    private readonly SheetAmount _amounts = new(semicolon ? ',' : '.');
    private IReadOnlyList<string> _cells = [];

    /// <summary>The first fault of the row; null if there is none.</summary>
    public Code? Fault { get; private set; }

    /// <summary>The code of a currency that is beside an amount; null if there is none.</summary>
    public string? Currency { get; private set; }

    public void Begin(SheetRow row)
    {
        (_cells, Fault, Currency) = (row.Cells ?? [], null, null);
        if (table.FaultOf(row) is { } fault)
            Refuse(fault.Code);
    }

    public void Refuse(Code code) => Fault ??= code;

    /// <summary>The text of a cell; null if it is empty.</summary>
    public string? Text(LogField field) => table.Cell(_cells, field) is { Length: > 0 } text ? PlainText.Of(text) : null;

    public DateOnly? Day(SheetDates dates)
    {
        if (dates.Read(table.Cell(_cells, LogField.On), out var day) is not { } fault)
            return day;
        Refuse(fault.Code);
        return null;
    }

    /// <summary>An amount; null if the cell is empty or cannot be read.</summary>
    /// <param name="field">Its field.</param>
    /// <param name="own">The currency of the line: its sign may be beside the amount.</param>
    public decimal? Amount(LogField field, string? own)
    {
        if (table.Cell(_cells, field) is not { Length: > 0 } cell)
            return null;
        if (_amounts.Read(cell, own, out var amount, out var code) is { } fault)
        {
            Refuse(fault.Code);
            return null;
        }

        if (code is not null && (Currency ??= code) != code)
            Refuse(LineCodes.BadCurrency);
        return amount;
    }

    /// <summary>A whole number, perhaps written as 2.00; null if the cell is empty or cannot be read.</summary>
    public int? Count(LogField field)
    {
        if (Amount(field, null) is not { } number)
            return null;
        if (number % 1 == 0 && decimal.Abs(number) <= LogRanges.MostPieces)
            return (int)number;
        Refuse(FaultCodes.OutOfRange);
        return null;
    }

    /// <summary>One of a list of words; the usual one if the cell is empty.</summary>
    public T Word<T>(LogField field, T usual) where T : struct, Enum
    {
        if (Text(field) is not { } text)
            return usual;
        if (Enum.TryParse<T>(text, ignoreCase: true, out var word) && Enum.IsDefined(word) && !char.IsAsciiDigit(text[0]))
            return word;
        Refuse(FaultCodes.OutOfRange);
        return usual;
    }

    /// <summary>True or false in words or figures; the usual one if the cell is empty.</summary>
    public bool Choice(LogField field, bool usual)
    {
        if (Text(field) is not { } text)
            return usual;
        if (text.ToLowerInvariant() is "true" or "yes" or "1")
            return true;
        if (text.ToLowerInvariant() is not ("false" or "no" or "0"))
            Refuse(FaultCodes.OutOfRange);
        return false;
    }
}
