namespace PriceFloor.Storage;

/// <summary>
/// Asks where a store stands that other processes write too. An answer was given after the call, so it holds everything that anybody acknowledged
/// before: whoever comes while a question is under way shares the next one.
/// </summary>
/// <param name="ask">Asks, and notes the answer.</param>
internal sealed class InStep(Func<Task> ask)
{
    private readonly Lock _lock = new();
    private Task _underWay = Task.CompletedTask;
    private Task? _next;

    /// <summary>Ends when a question that was asked after this call is answered.</summary>
    public Task Ask()
    {
        lock (_lock)
        {
            if (_next is { } shared)
                return shared;
            if (_underWay.IsCompleted)
                return _underWay = Task.Run(ask);
            return _next = AfterAsync(_underWay);
        }
    }

    private async Task AfterAsync(Task before)
    {
        await before.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ForceYielding);
        lock (_lock)
            (_underWay, _next) = (_next!, null);
        await ask();
    }
}
