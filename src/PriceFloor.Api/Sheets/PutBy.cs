using System.Globalization;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Sheets;

/// <summary>
/// Bytes of answers that wait in files until their callers read them, over all callers: bounded, since the store needs the disk too.
/// </summary>
public sealed class PutBy(long most)
{
    private long _bytes;

    /// <summary>Whether there is no room for the answer to another batch.</summary>
    public bool IsFull => Interlocked.Read(ref _bytes) >= most;

    /// <summary>Throws <see cref="NoRoomException"/> if that would be too many.</summary>
    public void Add(long bytes)
    {
        if (Interlocked.Add(ref _bytes, bytes) <= most)
            return;
        Interlocked.Add(ref _bytes, -bytes);
        throw new NoRoomException(string.Create(CultureInfo.InvariantCulture,
            $"Answers of {most} bytes wait in files for callers who do not read them"));
    }

    public void Remove(long bytes) => Interlocked.Add(ref _bytes, -bytes);
}
