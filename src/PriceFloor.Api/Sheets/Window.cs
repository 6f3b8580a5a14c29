using System.Buffers;
using System.IO.Pipelines;

namespace PriceFloor.Api.Sheets;

/// <summary>
/// A stretch of a stream as one piece of memory of fixed size, so a value is never split between two buffers and memory stays constant however long
/// the stream is.
/// </summary>
internal sealed class Window(PipeReader pipe, int most) : IDisposable
{
    private byte[] _bytes = ArrayPool<byte>.Shared.Rent(2 * (most + 2));
    private int _start;
    private int _end;
    private bool _isStarved = true;
    private bool _isFinished;

    /// <summary>True once the stream has given its last byte to this window.</summary>
    public bool Ended { get; private set; }

    public ReadOnlySpan<byte> Unread => _bytes.AsSpan(_start, _end - _start);

    /// <summary>Skips bytes; they stay readable until the next wait.</summary>
    public ReadOnlyMemory<byte> Take(int count)
    {
        var taken = _bytes.AsMemory(_start, count);
        _start += count;
        return taken;
    }

    /// <summary>Takes a byte order mark, if there is one; null if the next byte has not arrived.</summary>
    public bool? TakeMark()
    {
        var mark = "\uFEFF"u8;
        if (Unread.Length < mark.Length && !Ended && mark.StartsWith(Unread))
            return null;
        var isMarked = Unread.StartsWith(mark);
        Take(isMarked ? mark.Length : 0);
        return isMarked;
    }

    /// <summary>Says that more bytes are needed. Always false, so a reader can return it.</summary>
    public bool Starve() => !(_isStarved = true);

    /// <summary>Says that nothing more will be read. Always false.</summary>
    public bool Finish() => !(_isFinished = true);

    /// <summary>Waits for more bytes if they are needed. False when everything is read.</summary>
    public async ValueTask<bool> WaitAsync(CancellationToken cancel)
    {
        if (_isStarved && !_isFinished && !Ended)
            await FillAsync(cancel);
        _isStarved = false;
        return !_isFinished;
    }

    private async ValueTask FillAsync(CancellationToken cancel)
    {
        if (_start > 0)
            Unread.CopyTo(_bytes);
        (_start, _end) = (0, _end - _start);
        var read = await pipe.ReadAsync(cancel);
        if (read.IsCanceled)
            throw new OperationCanceledException("Reading was called off.");
        var fits = read.Buffer.Slice(0, Math.Min(read.Buffer.Length, _bytes.Length - _end));
        fits.CopyTo(_bytes.AsSpan(_end));
        _end += (int)fits.Length;
        Ended = read.IsCompleted && fits.Length == read.Buffer.Length;
        pipe.AdvanceTo(fits.End);
    }

    public void Dispose()
    {
        if (_bytes.Length > 0)
            ArrayPool<byte>.Shared.Return(_bytes);
        (_bytes, _start, _end) = ([], 0, 0);
    }
}
