using System.Buffers;
using System.Globalization;
using System.IO.Pipelines;
using System.Text;

namespace PriceFloor.Api.Sheets;

/// <summary>Collects cells of the output and sends them to the pipe in large pieces, when the writer of rows says so.</summary>
internal sealed class SheetOutput(PipeWriter pipe, SheetDialect dialect) : IDisposable
{
    private const int Full = 32 * 1024;

    // Either separator: a sheet may be opened with the other one, and a cell must not split in two there.
    private static readonly SearchValues<byte> s_quoted = SearchValues.Create(",;\"\r\n\t"u8);

    private byte[] _bytes = ArrayPool<byte>.Shared.Rent(2 * Full);
    private int _length;

    /// <summary>The size at which to flush; a larger output is still taken.</summary>
    public bool IsFull => _length >= Full;

    public async ValueTask FlushAsync(CancellationToken cancel)
    {
        if (_length == 0)
            return;
        await pipe.WriteAsync(_bytes.AsMemory(0, _length), cancel);
        _length = 0;
    }

    public void Raw(ReadOnlySpan<byte> bytes)
    {
        bytes.CopyTo(Room(bytes.Length));
        _length += bytes.Length;
    }

    public void Separator()
    {
        Room(1)[0] = dialect.Separator;
        _length++;
    }

    /// <summary>A number as it is; a negative number is not a formula.</summary>
    public void Number(decimal value)
    {
        var room = Room(32);
        value.TryFormat(room, out var length, default, CultureInfo.InvariantCulture);
        if (dialect.DecimalMark != '.')
            room[..length].Replace((byte)'.', (byte)dialect.DecimalMark);
        _length += length;
    }

    /// <summary>Text of ours: quoted if it must be, and defused if a spreadsheet would run it.</summary>
    public void Text(string text)
    {
        const int Usual = 128;
        var copy = text.Length <= Usual ? stackalloc byte[3 * Usual] : new byte[Encoding.UTF8.GetMaxByteCount(text.Length)];
        Text(copy[..Encoding.UTF8.GetBytes(text, copy)]);
    }

    public void Text(ReadOnlySpan<byte> text, bool alwaysQuoted = false)
    {
        var room = Room((2 * text.Length) + 3);
        var isQuoted = alwaysQuoted || text.ContainsAny(s_quoted);
        var length = 0;
        if (isQuoted)
            room[length++] = (byte)'"';
        if (SheetText.IsDefused(text))
            room[length++] = (byte)'\'';
        length += isQuoted ? Doubled(text, room[length..]) : Plain(text, room[length..]);
        if (isQuoted)
            room[length++] = (byte)'"';
        _length += length;
    }

    public void Dispose()
    {
        if (_bytes.Length > 0)
            ArrayPool<byte>.Shared.Return(_bytes);
        (_bytes, _length) = ([], 0);
    }

    private static int Plain(ReadOnlySpan<byte> text, Span<byte> room)
    {
        text.CopyTo(room);
        return text.Length;
    }

    private static int Doubled(ReadOnlySpan<byte> text, Span<byte> room)
    {
        var length = 0;
        foreach (var one in text)
        {
            room[length++] = one;
            if (one == '"')
                room[length++] = one;
        }

        return length;
    }

    private Span<byte> Room(int count)
    {
        if (_bytes.Length - _length < count)
        {
            var larger = ArrayPool<byte>.Shared.Rent(Math.Max(2 * _bytes.Length, _length + count));
            _bytes.AsSpan(0, _length).CopyTo(larger);
            ArrayPool<byte>.Shared.Return(_bytes);
            _bytes = larger;
        }

        return _bytes.AsSpan(_length);
    }
}
