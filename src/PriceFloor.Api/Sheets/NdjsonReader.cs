using System.Globalization;
using System.IO.Pipelines;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Sheets;

/// <summary>
/// Reads newline-delimited JSON line by line from a stream, in constant memory. Blank lines are skipped; a line that is too long is a fault in its
/// place and never stops the rest. The reader of bodies checks whether a line is JSON.
/// </summary>
public sealed class NdjsonReader(PipeReader pipe, int mostLineBytes = NdjsonReader.MostLineBytes) : IDisposable
{
    public const int MostLineBytes = 64 * 1024;

    private readonly Window _window = new(pipe, mostLineBytes);
    private int _at;
    private long _line = 1;
    private bool _started;
    private bool _dropping;

    /// <summary>Waits until there may be a next line. False at the end.</summary>
    public ValueTask<bool> WaitAsync(CancellationToken cancel) => _window.WaitAsync(cancel);

    /// <summary>The next line that is not blank, or false if <see cref="WaitAsync"/> must be called first.</summary>
    public bool TryNext(out NdjsonLine line)
    {
        line = default;
        if (!_started && _window.TakeMark() is null)
            return Starve(0);
        _started = true;
        while (true)
        {
            var bytes = _window.Unread;
            var hop = bytes[_at..].IndexOf((byte)'\n');
            var end = hop < 0 ? bytes.Length : _at + hop;
            _dropping |= Content(bytes[..end]).Length > mostLineBytes;
            if (hop < 0 && !_window.Ended)
                return Starve(_dropping ? Drop(end) : end);
            if (hop < 0 && end == 0 && !_dropping)
                return _window.Finish();
            if (Deliver(Content(bytes[..end]), end + (hop < 0 ? 0 : 1), out line))
                return true;
        }
    }

    public void Dispose() => _window.Dispose();

    private bool Deliver(ReadOnlySpan<byte> content, int length, out NdjsonLine line)
    {
        _window.Take(length);
        line = _dropping
            ? new(default, _line, TooLong())
            : new(content, _line, null);
        var isBlank = !_dropping && content.IndexOfAnyExcept(" \t\r"u8) < 0;
        (_at, _dropping) = (0, false);
        _line++;
        return !isBlank;
    }

    /// <summary>A line end of CRLF leaves its CR here; JSON treats it as white space anyway.</summary>
    private static ReadOnlySpan<byte> Content(ReadOnlySpan<byte> line) => line.EndsWith("\r"u8) ? line[..^1] : line;

    private int Drop(int length)
    {
        _window.Take(length);
        return 0;
    }

    private bool Starve(int at)
    {
        _at = at;
        return _window.Starve();
    }

    private InputError TooLong() => new()
    {
        Code = InputCodes.TooLong,
        Detail = string.Create(CultureInfo.InvariantCulture,
            $"The line is longer than {mostLineBytes} bytes; shorten it, or end it with a line feed."),
        Line = _line,
        Column = 1,
    };
}

/// <summary>One line of newline-delimited JSON; its bytes are valid until the next line is asked for.</summary>
public readonly ref struct NdjsonLine(ReadOnlySpan<byte> bytes, long number, InputError? fault)
{
    /// <summary>The line without its end; empty if it was too long to be kept.</summary>
    public ReadOnlySpan<byte> Bytes { get; } = bytes;

    /// <summary>From 1; blank lines count.</summary>
    public long Number { get; } = number;

    public InputError? Fault { get; } = fault;
}
