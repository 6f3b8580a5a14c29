using PriceFloor.Storage;

namespace PriceFloor.Api.HealthChecks;

/// <summary>
/// Whether the store can be written, found out by writing. Anybody may ask, so that is done once in a while and not for each who does. A write that
/// was refused meanwhile is believed at once.
/// </summary>
public sealed class Readiness(Store store, StoreReadiness opening, TimeProvider clock)
{
    private static readonly TimeSpan s_holds = TimeSpan.FromSeconds(2), s_within = TimeSpan.FromSeconds(1);

    private readonly Lock _looking = new();
    private long? _lastGood;
    private long _refused, _refusedAt;

    public bool Look()
    {
        if (!opening.IsDone)
            return false;
        lock (_looking)
        {
            if (store.RefusedWrites is var refused && refused != _refused)
                (_refused, _refusedAt, _lastGood) = (refused, clock.GetTimestamp(), null);
            if (store.IsRefusingWrites && clock.GetElapsedTime(_refusedAt) < s_holds)
                return false; // what was found out by somebody's write; a row of ours may still find room where theirs did not
            if (_lastGood is { } last && clock.GetElapsedTime(last) < s_holds)
                return true;
            _lastGood = null;
            if (!store.Probe(s_within))
                return false;
            _lastGood = clock.GetTimestamp();
            return true;
        }
    }
}
