using System.Collections.Concurrent;

namespace PriceFloor.Api.Telemetry;

/// <summary>
/// Durations of requests, by method, route and class of status: a count for each of a few bounds, chosen to cover everything from a cached verdict to
/// a large batch.
/// </summary>
public sealed class Durations
{
    /// <summary>Seconds.</summary>
    public static readonly IReadOnlyList<decimal> Bounds = [0.001m, 0.005m, 0.025m, 0.1m, 0.5m, 2.5m, 10m];

    private readonly ConcurrentDictionary<(string Method, string Route, int Class), Counts> _all = new();

    /// <summary>
    /// All requests: for each bound how many took at most that long, how many there were, and how long all took together.
    /// </summary>
    public IEnumerable<(string Method, string Route, string Class, IReadOnlyList<long> UpTo, long Count, decimal Seconds)> All => _all
        .OrderBy(one => one.Key.Route, StringComparer.Ordinal).ThenBy(one => one.Key.Method, StringComparer.Ordinal).ThenBy(one => one.Key.Class)
        .Select(one => (one.Key.Method, one.Key.Route, FormattableString.Invariant($"{one.Key.Class}xx"), one.Value.UpTo(out var count),
            count, one.Value.Seconds));

    public void Add(string method, string route, int status, TimeSpan elapsed) =>
        _all.GetOrAdd((method, route, status / 100), _ => new Counts()).Add(elapsed);

    private sealed class Counts
    {
        private readonly long[] _within = new long[Bounds.Count + 1];
        private long _microseconds;

        public decimal Seconds => Interlocked.Read(ref _microseconds) / 1_000_000m;

        public void Add(TimeSpan elapsed)
        {
            var (microseconds, place) = ((long)elapsed.TotalMicroseconds, 0);
            while (place < Bounds.Count && microseconds > Bounds[place] * 1_000_000m)
                place++;
            Interlocked.Increment(ref _within[place]);
            Interlocked.Add(ref _microseconds, microseconds);
        }

        public IReadOnlyList<long> UpTo(out long count)
        {
            var (upTo, sum) = (new long[Bounds.Count], 0L);
            for (var place = 0; place < upTo.Length; place++)
                upTo[place] = sum += Volatile.Read(ref _within[place]);
            count = sum + Volatile.Read(ref _within[^1]);
            return upTo;
        }
    }
}
