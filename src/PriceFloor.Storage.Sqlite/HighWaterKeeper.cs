
namespace PriceFloor.Storage.Sqlite;

/// <summary>
/// Keeps the note beside an open store: at most one a second, a second after the first commit that it does not cover yet, and a last one when the
/// store is closed. No commit waits for it. A process that is killed leaves a note that is behind by about a second of writes.
/// </summary>
internal sealed class HighWaterKeeper : IDisposable
{
    private static readonly TimeSpan s_apart = TimeSpan.FromSeconds(1);

    private readonly string _store;
    private readonly Func<long, string> _markAt;
    private readonly ITimer _timer;
    private readonly Lock _writing = new();
    private HighWater? _now;
    private int _isDue;

    /// <param name="store">The store's file.</param>
    /// <param name="clock">Measures the second.</param>
    /// <param name="markAt">The mark of the store's history at a position.</param>
    public HighWaterKeeper(string store, TimeProvider clock, Func<long, string> markAt)
    {
        (_store, _markAt) = (store, markAt);
        _timer = clock.CreateTimer(_ => Write(isLast: false), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>The store was opened, and its note says this.</summary>
    public void Begin(HighWater now) => Volatile.Write(ref _now, now);

    /// <summary>Something was committed. Called by one thread at a time.</summary>
    public void Advance(long position, long number)
    {
        if (Volatile.Read(ref _now) is not { } before)
            return;
        Volatile.Write(ref _now, before with { Position = position, Mark = "", Number = long.Max(before.Number, number) });
        if (Interlocked.Exchange(ref _isDue, 1) == 0)
            _timer.Change(s_apart, Timeout.InfiniteTimeSpan);
    }

    public void Dispose()
    {
        _timer.Dispose();
        Write(isLast: true);
    }

    private void Write(bool isLast)
    {
        lock (_writing)
            try
            {
                Volatile.Write(ref _isDue, 0); // later commits are for the next one
                if (Volatile.Read(ref _now) is { } now)
                    (now with { Mark = _markAt(now.Position) }).Write(_store, flush: isLast);
                if (isLast)
                    Volatile.Write(ref _now, null);
            }
            catch (Exception e) when (e is StoreTroubleException or IOException or UnauthorizedAccessException)
            {
                // The note stays behind, as after a kill; that is no reason to refuse what is already in the store.
            }
    }
}
