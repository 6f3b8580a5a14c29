using PriceFloor.Storage;

namespace PriceFloor.Api.HealthChecks;

/// <summary>
/// Whether the store can be written, tested by a write. Anybody may ask, so the test is made from time to time and not for each request. If a write
/// of a caller is refused meanwhile, that counts at once.
/// </summary>
public sealed class Readiness(Store store, StoreReadiness opening, TimeProvider clock) : IDisposable
{
    private static readonly TimeSpan s_holds = TimeSpan.FromSeconds(2), s_within = TimeSpan.FromSeconds(1);

    private readonly SemaphoreSlim _looking = new(1, 1);
    private long? _lastGood;
    private long _refused, _refusedAt;

    public async ValueTask<bool> Look()
    {
        if (!opening.IsDone)
            return false;
        await _looking.WaitAsync();
        try
        {
            if (store.RefusedWrites is var refused && refused != _refused)
                (_refused, _refusedAt, _lastGood) = (refused, clock.GetTimestamp(), null);
            if (store.IsRefusingWrites && clock.GetElapsedTime(_refusedAt) < s_holds)
                return false; // a caller's write was refused; our one row might still fit where theirs did not
            if (_lastGood is { } last && clock.GetElapsedTime(last) < s_holds)
                return true;
            _lastGood = null;
            if (!await store.Probe(s_within))
                return false;
            _lastGood = clock.GetTimestamp();
            return true;
        }
        finally
        {
            _looking.Release();
        }
    }

    public void Dispose() => _looking.Dispose();
}
