using System.IO.Pipelines;
using System.Text;

namespace PriceFloor.Api.Tests.Sheets;

/// <summary>A body that arrives in pieces.</summary>
internal sealed class Dripping(byte[] bytes, Func<int, int> pieceAt) : Stream
{
    private int _at;

    public static PipeReader Whole(byte[] bytes) => Of(bytes, _ => int.MaxValue);

    public static PipeReader Whole(string text) => Whole(Encoding.UTF8.GetBytes(text));

    /// <summary>Pieces of so many bytes.</summary>
    public static PipeReader Pieces(byte[] bytes, int size) => Of(bytes, _ => size);

    /// <summary>Two pieces.</summary>
    public static PipeReader CutAt(byte[] bytes, int cut) => Of(bytes, at => at < cut ? cut - at : int.MaxValue);

    /// <summary>Whole, then in two pieces at every byte, then byte by byte.</summary>
    public static IEnumerable<PipeReader> EveryWay(byte[] bytes) =>
        [Whole(bytes), .. Enumerable.Range(1, Math.Max(0, bytes.Length - 1)).Select(cut => CutAt(bytes, cut)), Pieces(bytes, 1)];

    private static PipeReader Of(byte[] bytes, Func<int, int> pieceAt) => PipeReader.Create(new Dripping(bytes, pieceAt));

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        var count = Math.Min(Math.Min(buffer.Length, pieceAt(_at)), bytes.Length - _at);
        bytes.AsSpan(_at, count).CopyTo(buffer);
        _at += count;
        return count;
    }

    public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
        ValueTask.FromResult(Read(buffer.Span));

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
