using System.Globalization;
using System.IO.Pipelines;

namespace PriceFloor.Api.Sheets;

/// <summary>
/// Writes a new sheet, cell by cell: RFC 4180, CRLF after every row, text defused, numbers plain.
/// <c>list.Text("RB-014").Number(58.00m).Empty().EndRow()</c>.
/// </summary>
public sealed class SheetDocument : ISheetCells, IDisposable
{
    private readonly SheetOutput _output;
    private readonly int _width;
    private int _column;

    public SheetDocument(PipeWriter pipe, SheetDialect dialect, params ReadOnlySpan<string> header)
    {
        (_output, _width) = (new SheetOutput(pipe, dialect), header.Length);
        foreach (var name in header)
            Text(name);
        EndRow();
    }

    /// <summary>The size at which to flush; a larger sheet is still taken.</summary>
    public bool IsFull => _output.IsFull;

    public ValueTask FlushAsync(CancellationToken cancel) => _output.FlushAsync(cancel);

    public SheetDocument Text(string? text)
    {
        Next();
        _output.Text(text ?? "");
        return this;
    }

    public SheetDocument Number(decimal? number)
    {
        Next();
        if (number is { } value)
            _output.Number(value);
        return this;
    }

    public SheetDocument Empty() => Text(null);

    void ISheetCells.Text(string? text) => Text(text);

    void ISheetCells.Number(decimal? number) => Number(number);

    void ISheetCells.Day(DateOnly day) => Text(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));

    void ISheetCells.Flag(bool flag) => Text(flag ? "true" : "false");

    void ISheetCells.Empty() => Empty();

    public void EndRow()
    {
        if (_column != _width)
            throw new InvalidOperationException("A row must have a cell for every column.");
        _output.Raw("\r\n"u8);
        _column = 0;
    }

    public void Dispose() => _output.Dispose();

    private void Next()
    {
        if (_column++ > 0)
            _output.Separator();
    }
}
