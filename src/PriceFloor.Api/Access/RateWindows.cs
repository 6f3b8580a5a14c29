using System.Collections.Concurrent;

namespace PriceFloor.Api.Access;

/// <summary>Counts for each caller, in windows of a minute that begin with the first request.</summary>
/// <param name="most">At most this many callers are remembered; null if the service names them itself.</param>
public sealed class RateWindows<T>(int? most) where T : notnull
{
    public const int Seconds = 60;

    private readonly ConcurrentDictionary<T, Window> _windows = new();

    /// <summary>Counts one more.</summary>
    /// <param name="caller">The caller.</param>
    /// <param name="now">The time in seconds.</param>
    /// <returns>The count in this window, and the seconds until it ends.</returns>
    public (long Taken, int Reset) Take(T caller, long now)
    {
        var window = _windows.TryGetValue(caller, out var known) && known.Holds(now) ? known : Begun(caller, now);
        return (window.Take(), (int)long.Clamp(window.Start + Seconds - now, 1, Seconds));
    }

    private Window Begun(T caller, long now)
    {
        var window = _windows.AddOrUpdate(caller, _ => new Window(now), (_, known) => known.Holds(now) ? known : new Window(now));
        if (_windows.Count > most)
            ForgetOld(now);
        return window;
    }

    private void ForgetOld(long now)
    {
        foreach (var (caller, window) in _windows)
            if (!window.Holds(now))
                _windows.TryRemove(caller, out _);
        if (_windows.Count > most)
            _windows.Clear();
    }

    private sealed class Window(long start)
    {
        private long _taken;

        public long Start => start;

        /// <summary>False when the window is over, and when the clock has jumped back before it.</summary>
        public bool Holds(long now) => now >= start && now < start + Seconds;

        public long Take() => Interlocked.Increment(ref _taken);
    }
}
