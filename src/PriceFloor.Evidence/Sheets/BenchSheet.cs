using PriceFloor.Statements.Files;

namespace PriceFloor.Evidence.Sheets;

/// <summary>Reads a sheet of bench entries, line by line; columns that have no field are never looked at.</summary>
public sealed class BenchSheet
{
    private readonly LogTable _table;
    private readonly LogSheet _sheet;
    private readonly LogCells _cells;
    private readonly SheetDates _dates;

    private BenchSheet(LogTable table, LogSheet sheet)
    {
        (_table, _sheet, _cells) = (table, sheet, new LogCells(table, sheet.Semicolon));
        _dates = table.Dates(sheet.DateOrder);
    }

    /// <summary>The lines, or what is wrong with the sheet as a whole: its heading, or more than 200,000 lines.</summary>
    public static Outcome<List<SentBenchEntry>> Read(ReadOnlySpan<byte> bytes, LogSheet sheet)
    {
        var table = LogTable.Of(DecodedText.Of(bytes), sheet, LogFields.OfBench, Needed);
        return table.Found is { } found ? SheetLines.All(new BenchSheet(found, sheet).Lines()) : table.Faults.ToList();
    }

    private static IEnumerable<LogField[]> Needed(LogTable table) => [[LogField.On], [LogField.Minutes, LogField.Started]];

    private IEnumerable<SentBenchEntry> Lines()
    {
        foreach (var row in _table.Rows)
        {
            _cells.Begin(row);
            var line = _cells.Fault is null ? Line(row.Line) : new SentBenchEntry { Line = row.Line };
            yield return line with { Fault = _cells.Fault ?? line.Fault };
        }
    }

    private SentBenchEntry Line(int number) => BenchRules.Checked(new SentBenchEntry
    {
        Line = number,
        On = _cells.Day(_dates),
        Ref = _cells.Text(LogField.Ref),
        Sku = _cells.Text(LogField.Sku),
        Step = _cells.Text(LogField.Step),
        Started = _cells.Count(LogField.Started),
        Good = _cells.Count(LogField.Good),
        Minutes = _cells.Amount(LogField.Minutes, null),
        IsCancelled = _sheet.IsCancelled(_cells.Text(LogField.Status) ?? ""),
    });
}
