using System.Globalization;

namespace PriceFloor.Api.Http;

/// <summary>
/// Limits the bytes of large bodies held for all callers together, by the available memory. A body grows while it is read, checked and stored: about
/// twelve times by our estimate, so a twelfth of what the process may use beside its own memory is given out. A caller who finds none left is asked
/// to try again.
/// </summary>
public sealed class BodyMemory(long most)
{
    /// <summary>Bodies up to this size are not counted: the limits of requests keep them few.</summary>
    private const int Small = 256 * 1024;

    /// <summary>The memory of the service itself.</summary>
    private const long OfItsOwn = 72L * 1024 * 1024;

    private const int Growth = 12;
    private const long Least = 4L * 1024 * 1024;

    private long _held;

    public BodyMemory() : this(long.Max(Least, (GC.GetGCMemoryInfo().TotalAvailableMemoryBytes - OfItsOwn) / Growth)) { }

    /// <summary>The largest body that can be taken.</summary>
    public int MostOf(int setting) => (int)long.Min(setting, most);

    /// <summary>Counts a body until its request ends. Throws <see cref="NoRoomException"/> if others hold all the memory.</summary>
    public void Take(HttpContext context, long bytes)
    {
        if (bytes <= Small)
            return;
        if (Interlocked.Add(ref _held, bytes) > most)
        {
            Interlocked.Add(ref _held, -bytes);
            throw new NoRoomException(string.Create(CultureInfo.InvariantCulture, $"Bodies of {most} bytes are held for others"));
        }

        context.Response.OnCompleted(() =>
        {
            Interlocked.Add(ref _held, -bytes);
            return Task.CompletedTask;
        });
    }
}

/// <summary>There is not enough memory or space at the moment; nothing was half done.</summary>
public sealed class NoRoomException(string message) : Exception(message);
