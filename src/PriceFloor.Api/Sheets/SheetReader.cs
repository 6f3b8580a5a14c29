using System.Globalization;
using System.IO.Pipelines;
using System.Text.Unicode;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Sheets;

/// <summary>
/// Reads a sheet (RFC 4180, UTF-8) row by row from a stream, in constant memory, each row as its original bytes. A row that cannot be read is a fault
/// in its place and never stops the rest. If quotes are wrong or a row never ends, the fault has only the row's first line, and reading starts again
/// at the next line, so one forgotten quote costs one row. Blank lines are rows of their own (<see cref="SheetRow.IsBlank"/>).
/// </summary>
public sealed class SheetReader(PipeReader pipe, SheetDialect dialect, int mostRowBytes = SheetReader.MostRowBytes) : IDisposable
{
    /// <summary>The longest row that is read, not counting its line end.</summary>
    public const int MostRowBytes = 64 * 1024;

    private enum Mode
    {
        StartOfSheet,
        StartOfField,
        Plain,
        Quoted,
        AfterQuote,
        Broken,
        Dropping,
    }

    private readonly Window _window = new(pipe, mostRowBytes);
    private readonly SheetRow _row = new();
    private readonly SheetDialect _dialect = dialect;
    private Mode _mode;
    private int _at;
    private long _line = 1;
    private int _width = -1;
    private bool _hasMark;

    public SheetDialect Dialect => _dialect;

    /// <summary>
    /// Reads the header, the first line that is not blank; it comes before any row. A fault means that this is not a sheet at all.
    /// </summary>
    public async ValueTask<(SheetHeader? Header, InputError? Fault)> ReadHeaderAsync(CancellationToken cancel)
    {
        while (await WaitAsync(cancel))
            while (TryNext(out var row))
                if (!row.IsBlank)
                {
                    _width = row.Count;
                    return row.Fault is null ? (SheetHeader.Of(row, _hasMark), null) : (null, row.Fault);
                }

        return (null,
            new InputError { Code = InputCodes.Empty, Detail = "The sheet is empty; its first row must name its columns.", Line = 1, Column = 1 });
    }

    /// <summary>Waits until there may be a next row. False at the end of the sheet.</summary>
    public ValueTask<bool> WaitAsync(CancellationToken cancel) => _window.WaitAsync(cancel);

    /// <summary>The next row, or false if <see cref="WaitAsync"/> must be called first.</summary>
    public bool TryNext(out SheetRow row)
    {
        row = _row;
        if (_mode == Mode.StartOfSheet && !PassMark())
            return Starve(0);
        if (_mode >= Mode.Broken)
            return EndBroken();
        if (_at == 0)
            _row.Begin();
        return Scan();
    }

    public void Dispose() => _window.Dispose();

    private bool PassMark()
    {
        if (_window.TakeMark() is not { } hasMark)
            return false;
        (_hasMark, _mode) = (hasMark, Mode.StartOfField);
        return true;
    }

    /// <summary>Continues the row at the place and in the mode where the bytes ran out.</summary>
    private bool Scan()
    {
        var bytes = _window.Unread;
        var (at, mode) = (_at, _mode);
        while (true)
        {
            if (mode == Mode.StartOfField && at < bytes.Length)
                (mode, at) = bytes[at] == '"' ? (Mode.Quoted, at + 1) : (Mode.Plain, at);
            if (mode == Mode.Plain)
            {
                var hop = bytes[at..].IndexOfAny(_dialect.EndsOfPlainField);
                at = hop < 0 ? bytes.Length : at + hop;
            }

            // A quote right after a quote was a doubled one: the field continues after it.
            while (at < bytes.Length && (mode == Mode.Quoted || (mode == Mode.AfterQuote && bytes[at] == '"')))
            {
                at += mode == Mode.Quoted ? 0 : 1;
                var hop = bytes[at..].IndexOf((byte)'"');
                (mode, at) = hop < 0 ? (Mode.Quoted, bytes.Length) : (Mode.AfterQuote, at + hop + 1);
            }

            if (at == bytes.Length || bytes[at] != _dialect.Separator)
            {
                _mode = mode;
                return at > mostRowBytes ? Break(TooLong(bytes)) : at < bytes.Length ? AtEndOfRow(bytes, at) : AtEndOfBytes(bytes, at);
            }

            _row.EndField(at++);
            mode = Mode.StartOfField;
        }
    }

    private bool AtEndOfBytes(ReadOnlySpan<byte> bytes, int at)
    {
        if (!_window.Ended)
            return Starve(at);
        if (_mode == Mode.Quoted)
            return Break(Fault(bytes, _row.StartOfOpenField, InputCodes.Malformed,
                "A quote is opened here and never closed; close the cell with a quote, and double the quotes inside it."));
        if (at == 0)
            return _window.Finish();
        _row.EndField(at);
        return Deliver(at, 0);
    }

    private bool AtEndOfRow(ReadOnlySpan<byte> bytes, int at)
    {
        if (bytes[at] is not ((byte)'\r' or (byte)'\n'))
            return Break(_mode == Mode.AfterQuote ? TextAfterQuote(bytes, at)
                : Fault(bytes, at, InputCodes.Malformed,
                    "A quote is inside a cell that does not begin with one; put the cell into quotes and double the quotes inside it."));
        if (LineEndAt(bytes, at) is not { } lineEnd)
            return Starve(at);
        _row.EndField(at);
        return Deliver(at + lineEnd, lineEnd);
    }

    private bool Deliver(int length, int lineEnd)
    {
        _row.End(_window.Take(length), lineEnd, _line);
        var raw = _row.Raw;
        if (!Utf8.IsValid(raw))
            _row.Fault = Fault(raw, SheetText.FirstInvalid(raw), InputCodes.NotUtf8,
                "A character here is not UTF-8; save the sheet as CSV in UTF-8.");
        else if (_width >= 0 && _row.Count != _width && !_row.IsBlank)
            _row.Fault = WrongWidth(raw);
        _line += 1 + (raw.ContainsAny((byte)'\r', (byte)'\n') ? SheetText.CountBreaks(raw) : 0);
        (_mode, _at) = (Mode.StartOfField, 0);
        return true;
    }

    private bool Break(InputError fault)
    {
        _row.Break(fault);
        (_mode, _at) = (Mode.Broken, 0);
        return EndBroken();
    }

    /// <summary>The broken row is its first line; of a line that is too long, only the end is kept.</summary>
    private bool EndBroken()
    {
        var bytes = _window.Unread;
        var hop = bytes[_at..].IndexOfAny((byte)'\r', (byte)'\n');
        var at = hop < 0 ? bytes.Length : _at + hop;
        if (at > mostRowBytes)
        {
            _mode = Mode.Dropping;
            _window.Take(at);
            bytes = bytes[at..];
            at = 0;
        }

        if (LineEndAt(bytes, at) is not { } lineEnd)
            return Starve(at);
        var taken = _window.Take(at + lineEnd);
        _row.End(_mode == Mode.Dropping ? taken[at..] : taken, lineEnd, _line++);
        (_mode, _at) = (Mode.StartOfField, 0);
        return true;
    }

    /// <summary>Null if the next byte has not arrived; 0 at the end of the sheet.</summary>
    private int? LineEndAt(ReadOnlySpan<byte> bytes, int at) =>
        at + 1 < bytes.Length ? bytes[at] == '\r' && bytes[at + 1] == '\n' ? 2 : 1
        : at < bytes.Length && bytes[at] == '\n' ? 1
        : _window.Ended ? bytes.Length - at : null;

    private bool Starve(int at)
    {
        _at = at;
        return _window.Starve();
    }

    private InputError TooLong(ReadOnlySpan<byte> bytes)
    {
        var opened = SheetText.Place(bytes, _row.StartOfOpenField, _line);
        return Fault(bytes, 0, InputCodes.TooLong, string.Create(CultureInfo.InvariantCulture, $"The row is longer than {mostRowBytes} bytes; ")
            + (_mode is Mode.Quoted or Mode.AfterQuote
                ? string.Create(CultureInfo.InvariantCulture, $"close the quote that is opened in line {opened.Line}, column {opened.Column}.")
                : "shorten it."));
    }

    /// <summary>Reported at the start of the field if that is on another line: a quote was forgotten there.</summary>
    private InputError TextAfterQuote(ReadOnlySpan<byte> bytes, int at)
    {
        var (opened, closed) = (SheetText.Place(bytes, _row.StartOfOpenField, _line), SheetText.Place(bytes, at, _line));
        return opened.Line == closed.Line
            ? Fault(bytes, at, InputCodes.Malformed,
                "Text follows the closing quote of a cell here; double the quotes inside a cell, and end it with one.")
            : Fault(bytes, _row.StartOfOpenField, InputCodes.Malformed, string.Create(CultureInfo.InvariantCulture, $"The next quote after the one "
                + $"opened here is in line {closed.Line}, and text follows it; close the cell where it ends, and double the quotes inside it."));
    }

    private InputError WrongWidth(ReadOnlySpan<byte> raw)
    {
        var (isLong, count) = (_row.Count > _width, _row.Count);
        var at = isLong ? _row.StartOf(_width) : raw.Length;
        return Fault(raw, at, isLong ? InputCodes.LongRow : InputCodes.ShortRow, string.Create(CultureInfo.InvariantCulture,
            $"The row has {count} {(count == 1 ? "cell" : "cells")}, the first row {_width}; "
            + $"{(isLong ? "put a cell that has a separator into quotes" : "give each column its cell, if only an empty one")}."));
    }

    private InputError Fault(ReadOnlySpan<byte> bytes, int at, Code code, string detail)
    {
        var (line, column) = SheetText.Place(bytes, at, _line);
        return new InputError { Code = code, Detail = detail, Line = line, Column = column };
    }
}
