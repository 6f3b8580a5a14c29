using System.Text;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Sheets;

/// <summary>
/// One row of a sheet, as its original bytes. The same object is used for every row: its values are valid until the next row is asked for.
/// </summary>
public sealed class SheetRow
{
    private ReadOnlyMemory<byte> _bytes;
    private ReadOnlyMemory<byte> _lineEnd;
    private int[] _ends = new int[16];
    private byte[] _unquoted = [];
    private int _unquotedLength;

    private bool _isOfCells;

    internal SheetRow()
    {
    }

    /// <summary>A row of a workbook, whose places are counted in cells.</summary>
    /// <param name="cells">The text of each cell.</param>
    /// <param name="number">The number of the row, from 1.</param>
    internal static SheetRow OfCells(IReadOnlyList<string> cells, int number)
    {
        var row = new SheetRow { _isOfCells = true };
        using var bytes = new MemoryStream();
        foreach (var (index, cell) in cells.Index())
        {
            if (index > 0)
                bytes.WriteByte((byte)',');
            if (cell.Length > 0)
                bytes.Write(Encoding.UTF8.GetBytes($"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\""));
            row.EndField((int)bytes.Length);
        }

        row.End(bytes.ToArray(), 0, number);
        return row;
    }

    /// <summary>The row without its line end; empty if it was too long to be kept.</summary>
    public ReadOnlySpan<byte> Raw => _bytes.Span;

    /// <summary>The row's own line end: LF, CRLF, CR, or nothing at the end of the sheet.</summary>
    public ReadOnlySpan<byte> LineEnd => _lineEnd.Span;

    /// <summary>The line on which the row begins, from 1; line breaks inside quotes count.</summary>
    public long Line { get; private set; }

    /// <summary>The number of fields; 0 if the row's bytes are not a row.</summary>
    public int Count { get; private set; }

    /// <summary>Why the row cannot be used, with line and column (in characters).</summary>
    public InputError? Fault { get; internal set; }

    /// <summary>An empty line, or one whose cells are all empty, as spreadsheets leave them below a table.</summary>
    public bool IsBlank => Fault is null && Count > 0 && (Count == 1 ? _bytes.IsEmpty : HasNoCells);

    /// <summary>True for a row that has a field for every header.</summary>
    public bool IsSound => Fault is null && !IsBlank;

    /// <summary>A field's original bytes, with its quotes.</summary>
    public ReadOnlySpan<byte> Field(int index)
    {
        var start = StartOf(index);
        return _bytes.Span[start.._ends[index]];
    }

    /// <summary>A field's value: without its quotes, doubled quotes read as one.</summary>
    public ReadOnlySpan<byte> Value(int index)
    {
        var field = Field(index);
        if (field.IsEmpty || field[0] != '"')
            return field;
        var inner = field[1..^1];
        return inner.Contains((byte)'"') ? Unquote(inner) : inner;
    }

    /// <summary>
    /// The value of a cell with a key or a number: the plain spaces around it do not count (no key or number has any), and neither does the quote
    /// that defused it in a sheet which this service wrote.
    /// </summary>
    public ReadOnlySpan<byte> Cell(int index) => Fused(Value(index).Trim((byte)' '));

    /// <summary>The value of a cell with a text for people: spaces around it are part of it.</summary>
    public ReadOnlySpan<byte> Text(int index) => Fused(Value(index));

    /// <summary>A field with something in it is mostly the first, so a full row is known by that one.</summary>
    private bool HasNoCells
    {
        get
        {
            for (var index = 0; index < Count; index++)
                if (Field(index) is var cell && cell is not [(byte)'"', (byte)'"'] && cell.ContainsAnyExcept((byte)' ', (byte)'\t'))
                    return false;
            return true;
        }
    }

    private static ReadOnlySpan<byte> Fused(ReadOnlySpan<byte> value) => value is [(byte)'\'', ..] && SheetText.IsDefused(value) ? value[1..] : value;

    /// <summary>Line and column (in characters, from 1) at which a field begins; of a workbook its row and column.</summary>
    public (long Line, long Column) PlaceOf(int index) => _isOfCells ? (Line, index + 1) : SheetText.Place(Raw, StartOf(index), Line);

    internal int StartOf(int index)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Count);
        return index == 0 ? 0 : _ends[index - 1] + 1;
    }

    internal void Begin() => (Count, Fault, _unquotedLength) = (0, null, 0);

    internal void EndField(int at)
    {
        if (Count == _ends.Length)
            Array.Resize(ref _ends, 2 * Count);
        _ends[Count++] = at;
    }

    internal int StartOfOpenField => Count == 0 ? 0 : _ends[Count - 1] + 1;

    internal void Break(InputError fault) => (Fault, Count) = (fault, 0);

    internal void End(ReadOnlyMemory<byte> bytes, int lineEnd, long line) =>
        (_bytes, _lineEnd, Line) = (bytes[..^lineEnd], bytes[^lineEnd..], line);

    /// <summary>Unquoted values of one row are stored one after the other, so several can be used at once.</summary>
    private Span<byte> Unquote(ReadOnlySpan<byte> inner)
    {
        if (_unquoted.Length - _unquotedLength < inner.Length)
            (_unquoted, _unquotedLength) = (new byte[Math.Max(1024, 2 * Math.Max(Raw.Length, inner.Length))], 0);
        var room = _unquoted.AsSpan(_unquotedLength);
        var length = 0;
        for (var at = 0; at < inner.Length; at++)
        {
            room[length++] = inner[at];
            if (inner[at] == '"')
                at++;
        }

        _unquotedLength += length;
        return room[..length];
    }

    public override string ToString() => Encoding.UTF8.GetString(Raw);
}
