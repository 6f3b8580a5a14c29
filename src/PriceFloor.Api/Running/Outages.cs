using Serilog;

namespace PriceFloor.Api.Running;

/// <summary>One line in the log for a store that cannot be used, not one for each request that it refuses.</summary>
public sealed class Outages(TimeProvider clock)
{
    /// <summary>After so long without a refusal, the next is of another outage.</summary>
    private static readonly TimeSpan s_apart = TimeSpan.FromSeconds(5), s_again = TimeSpan.FromMinutes(1);

    private readonly Lock _lock = new();
    private long? _last, _told;

    public void Tell(string message)
    {
        lock (_lock)
        {
            var isTold = _last is { } last && clock.GetElapsedTime(last) < s_apart && clock.GetElapsedTime(_told!.Value) < s_again;
            _last = clock.GetTimestamp();
            if (isTold)
                return;
            _told = _last;
        }

        Log.Warning("The store answered {Message}", message);
    }
}
