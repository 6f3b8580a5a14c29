using System.Collections.Concurrent;
using System.Net;
using PriceFloor.Api.Running;

namespace PriceFloor.Api.Http;

/// <summary>Requests a minute, counted for each key, or for each address where there is none, in windows that begin with a first request.</summary>
public sealed class RateLimits(Settings settings, TimeProvider clock)
{
    private const int WindowSeconds = 60;

    /// <summary>Addresses are not ours to trust: only so many are remembered.</summary>
    private const int MostAddresses = 10_000;

    private readonly ConcurrentDictionary<string, Window> _keys = new();
    private readonly ConcurrentDictionary<IPAddress, Window> _addresses = new();

    public int PerMinute => settings.RequestsPerMinute;

    /// <summary>Whether one more request is allowed, how many are left, and in how many seconds the count starts anew.</summary>
    public (bool Allowed, long Left, int Reset) Take(HttpContext context)
    {
        var now = clock.GetUtcNow().ToUnixTimeSeconds();
        var window = context.Features.Get<Caller>() is { } caller
            ? Current(_keys, caller.Name, now)
            : Current(_addresses, context.Connection.RemoteIpAddress ?? IPAddress.None, now);
        if (_addresses.Count > MostAddresses)
            ForgetOldAddresses(now);
        var taken = window.Take();
        return (taken <= PerMinute, long.Max(0, PerMinute - taken), (int)long.Clamp(window.Start + WindowSeconds - now, 1, WindowSeconds));
    }

    private static Window Current<T>(ConcurrentDictionary<T, Window> windows, T caller, long now) where T : notnull
    {
        if (windows.TryGetValue(caller, out var window) && window.Holds(now))
            return window;
        return windows.AddOrUpdate(caller, _ => new Window(now), (_, known) => known.Holds(now) ? known : new Window(now));
    }

    private void ForgetOldAddresses(long now)
    {
        foreach (var (address, window) in _addresses)
            if (!window.Holds(now))
                _addresses.TryRemove(address, out _);
        if (_addresses.Count > MostAddresses)
            _addresses.Clear();
    }

    private sealed class Window(long start)
    {
        private long _taken;

        public long Start => start;

        /// <summary>False when it is over, and when the clock has jumped back before it.</summary>
        public bool Holds(long now) => now >= start && now < start + WindowSeconds;

        public long Take() => Interlocked.Increment(ref _taken);
    }
}
