using PriceFloor.Api.Http;

namespace PriceFloor.Api.Sureness;

/// <summary>
/// An answer of thousands of draws takes all processors for a moment, so no more than two run at the same time in the whole service.
/// </summary>
public sealed class SurenessSlots : IEndpointFilter
{
    private const int AtOnce = 2;

    private int _running;

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        try
        {
            return Interlocked.Increment(ref _running) > AtOnce
                ? Problem.TooManyRequests(1, FormattableString.Invariant($"{AtOnce} such answers are being computed already. "))
                : await next(context);
        }
        finally
        {
            Interlocked.Decrement(ref _running);
        }
    }
}
