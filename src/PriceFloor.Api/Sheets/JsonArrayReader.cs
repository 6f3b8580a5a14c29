using System.Globalization;
using System.IO.Pipelines;
using System.Text.Json;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Sheets;

/// <summary>
/// Reads the elements of a body that is one JSON array, in constant memory, before its end has arrived. A fault of the array (not an array, bad JSON,
/// too many elements, text after the end) ends the reading: nothing after it can be split into elements.
/// </summary>
public sealed class JsonArrayReader(PipeReader pipe, int mostItems = JsonArrayReader.MostItems, int mostItemBytes = JsonArrayReader.MostItemBytes)
    : IDisposable
{
    public const int MostItems = 1000;
    public const int MostItemBytes = 64 * 1024;

    private enum Mode
    {
        Mark,
        Start,
        FirstItem,
        Item,
        AfterItem,
        AfterArray,
    }

    private static readonly JsonReaderOptions s_options = new() { MaxDepth = 32 };

    private readonly Window _window = new(pipe, mostItemBytes);
    private Mode _mode;
    private int _index;
    private int _worthTrying;
    private long _line = 1;
    private long _column = 1;

    /// <summary>Why reading ended early; if null, all elements were read.</summary>
    public InputError? Fault { get; private set; }

    /// <summary>Waits until there may be a next element. False at the end of the body or at a fault.</summary>
    public ValueTask<bool> WaitAsync(CancellationToken cancel) => _window.WaitAsync(cancel);

    /// <summary>The next element, or false if <see cref="WaitAsync"/> must be called first.</summary>
    public bool TryNext(out JsonArrayItem item)
    {
        item = default;
        if (_mode == Mode.Mark && _window.TakeMark() is null)
            return _window.Starve();
        _mode = _mode == Mode.Mark ? Mode.Start : _mode;
        while (Fault is null)
        {
            PassBlanks();
            if (_window.Unread.IsEmpty)
                return _window.Ended ? End() : _window.Starve();
            if (_mode is Mode.Item or Mode.FirstItem && !(_mode == Mode.FirstItem && _window.Unread[0] == ']'))
                return Item(out item);
            Step(_window.Unread[0]);
        }

        return false;
    }

    public void Dispose() => _window.Dispose();

    private bool End() => _mode switch
    {
        Mode.AfterArray => _window.Finish(),
        Mode.Start => Fail(InputCodes.Empty, "The body is empty; send a JSON array."),
        _ => Fail(InputCodes.Malformed, "The array is not closed; end it with a square bracket."),
    };

    private void Step(byte mark)
    {
        switch (_mode, (char)mark)
        {
            case (Mode.Start, '['):
                _mode = Mode.FirstItem;
                break;
            case (Mode.FirstItem or Mode.AfterItem, ']'):
                _mode = Mode.AfterArray;
                break;
            case (Mode.AfterItem, ','):
                _mode = Mode.Item;
                break;
            case (Mode.Start, _):
                Fail(InputCodes.NotAnArray, "The body must be one JSON array: a list in square brackets.");
                return;
            case (Mode.AfterArray, _):
                Fail(InputCodes.Malformed, "Text follows the end of the array; remove it.");
                return;
            default:
                Fail(InputCodes.Malformed, "The body is not JSON here: between two elements there must be a comma, after the last a square bracket.");
                return;
        }

        Pass(1);
    }

    private bool Item(out JsonArrayItem item)
    {
        item = default;
        if (_index == mostItems)
            return Fail(InputCodes.TooMany, string.Create(CultureInfo.InvariantCulture,
                $"The array has more than {mostItems} elements; send them in parts, or stream them as NDJSON or CSV."));
        var bytes = _window.Unread;
        var isCut = bytes.Length > mostItemBytes + 1;
        bytes = isCut ? bytes[..(mostItemBytes + 1)] : bytes;
        if (!_window.Ended && bytes.Length < _worthTrying)
            return _window.Starve();

        if (Length(bytes, isFinal: _window.Ended && !isCut) is { } length && length <= mostItemBytes)
        {
            item = new(bytes[..length], _index++, _line, _column);
            (_mode, _worthTrying) = (Mode.AfterItem, 0);
            Pass(length);
            return true;
        }

        if (Fault is not null)
            return false;
        if (bytes.Length > mostItemBytes)
            return Fail(InputCodes.TooLong,
                string.Create(CultureInfo.InvariantCulture, $"The element is longer than {mostItemBytes} bytes; shorten it."));

        // Trying again at every single byte that arrives would be quadratic.
        _worthTrying = Math.Min(2 * bytes.Length, mostItemBytes + 1);
        return _window.Starve();
    }

    /// <summary>The length of the element, or null if its end has not arrived, or if it has a fault.</summary>
    private int? Length(ReadOnlySpan<byte> bytes, bool isFinal)
    {
        var json = new Utf8JsonReader(bytes, isFinal, new JsonReaderState(s_options));
        try
        {
            return json.Read() && json.TrySkip() ? (int)json.BytesConsumed : null;
        }
        catch (JsonException e)
        {
            var (lines, column) = (e.LineNumber ?? 0, e.BytePositionInLine ?? 0);
            (_line, _column) = (_line + lines, lines == 0 ? _column + column : column + 1);
            Fail(InputCodes.Malformed, "The body is not JSON here: check for a missing or extra comma, quote or bracket, or a comment.");
            return null;
        }
    }

    private void PassBlanks()
    {
        var bytes = _window.Unread;
        var blanks = bytes.IndexOfAnyExcept(" \t\r\n"u8);
        Pass(blanks < 0 ? bytes.Length : blanks);
    }

    private void Pass(int count)
    {
        var bytes = _window.Unread[..count];
        var lastBreak = bytes.LastIndexOf((byte)'\n');
        _line += bytes.Count((byte)'\n');
        _column = lastBreak < 0 ? _column + count : count - lastBreak;
        _window.Take(count);
    }

    private bool Fail(Code code, string detail)
    {
        Fault = new InputError
        {
            Pointer = _mode is Mode.Item or Mode.FirstItem ? string.Create(CultureInfo.InvariantCulture, $"#/{_index}") : "#",
            Code = code,
            Detail = detail,
            Line = _line,
            Column = _column,
        };
        return _window.Finish();
    }
}

/// <summary>One element of a JSON array; its bytes are valid until the next element is asked for.</summary>
public readonly ref struct JsonArrayItem(ReadOnlySpan<byte> bytes, int index, long line, long column)
{
    public ReadOnlySpan<byte> Bytes { get; } = bytes;

    /// <summary>From 0, as in a JSON pointer.</summary>
    public int Index { get; } = index;

    /// <summary>The line in the body where it begins, from 1.</summary>
    public long Line { get; } = line;

    /// <summary>The byte in that line, from 1.</summary>
    public long Column { get; } = column;
}
