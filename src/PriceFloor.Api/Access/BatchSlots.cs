using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using PriceFloor.Api.Configuration;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Access;

/// <summary>
/// How many batches of one key run at the same time. A batch may take as long as its caller likes, so one key must not take all capacity.
/// </summary>
public sealed class BatchSlots(Settings settings) : IEndpointFilter
{
    private readonly ConcurrentDictionary<string, StrongBox<int>> _running = new();

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next) =>
        await WhileRunning(context.HttpContext, async () => await next(context));

    /// <summary>Runs a batch, or returns the problem that too many of this key are running already.</summary>
    public async Task<object?> WhileRunning(HttpContext context, Func<Task<object?>> batch)
    {
        var running = _running.GetOrAdd(Caller.Of(context).Account, _ => new StrongBox<int>());
        try
        {
            return Interlocked.Increment(ref running.Value) > settings.BatchesAtOnce
                ? Problem.TooManyRequests(1,
                    FormattableString.Invariant($"{settings.BatchesAtOnce} batches of this key are running already; let one end first. "))
                : await batch();
        }
        finally
        {
            Interlocked.Decrement(ref running.Value);
        }
    }
}
