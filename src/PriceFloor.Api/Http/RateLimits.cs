using System.Threading.RateLimiting;
using PriceFloor.Api.Running;

namespace PriceFloor.Api.Http;

/// <summary>Requests a minute, counted for each key, or for each address where there is none.</summary>
public sealed class RateLimits(Settings settings, TimeProvider clock) : IDisposable
{
    private static readonly TimeSpan s_window = TimeSpan.FromMinutes(1);

    private readonly PartitionedRateLimiter<HttpContext> _limiter = PartitionedRateLimiter.Create<HttpContext, string>(context =>
        RateLimitPartition.GetFixedWindowLimiter(
            context.Features.Get<Caller>() is { } caller ? "key:" + caller.Name : "address:" + context.Connection.RemoteIpAddress,
            _ => new FixedWindowRateLimiterOptions { PermitLimit = settings.RequestsPerMinute, Window = s_window, QueueLimit = 0 }));

    public int PerMinute => settings.RequestsPerMinute;

    /// <summary>Whether one more request is allowed, how many are left, and in how many seconds at most the count starts anew.</summary>
    public (bool Allowed, long Left, int Reset) Take(HttpContext context)
    {
        using var lease = _limiter.AttemptAcquire(context);
        var reset = lease.TryGetMetadata(MetadataName.RetryAfter, out var wait) ? (int)Math.Ceiling(wait.TotalSeconds) : 60 - clock.GetUtcNow().Second;
        return (lease.IsAcquired, _limiter.GetStatistics(context)?.CurrentAvailablePermits ?? 0, int.Max(1, reset));
    }

    public void Dispose() => _limiter.Dispose();
}
