using PriceFloor.Api.Access;
using PriceFloor.Storage;
using Serilog;

namespace PriceFloor.Api.AccessKeys;

/// <summary>Stores when keys were last used: at most once a minute, and at the end.</summary>
public sealed class KeyUseWriter(KeyUses uses, Store store, TimeProvider clock) : BackgroundService
{
    private readonly Lock _order = new();
    private Task _writing = Task.CompletedTask;
    private bool _ended;

    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        await base.StopAsync(cancellationToken);
        await WriteAsync(last: true);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(TimeSpan.FromMinutes(1), clock);
        try
        {
            while (await timer.WaitForNextTickAsync(stoppingToken))
                await WriteAsync(last: false);
        }
        catch (OperationCanceledException)
        {
            // The service is stopping.
        }
    }

    /// <summary>One after another: a host may be stopped twice at once.</summary>
    private Task WriteAsync(bool last)
    {
        lock (_order)
            return _writing = WriteAfterAsync(_writing, last);
    }

    private async Task WriteAfterAsync(Task before, bool last)
    {
        await before.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        if (!_ended)
            await WriteUnwrittenAsync();
        _ended |= last;
    }

    private async Task WriteUnwrittenAsync()
    {
        var unwritten = uses.Unwritten;
        if (unwritten.Count == 0)
            return;
        try
        {
            await store.WriteAsync("key-use", async writing =>
            {
                foreach (var (name, at) in unwritten)
                    await writing.KeyWasUsed(name, at);
                return true;
            });
            foreach (var (name, at) in unwritten)
                uses.Written(name, at);
        }
        catch (StoreTroubleException e)
        {
            Log.Warning("The times when keys were last used cannot be written now: {Message}", e.Message);
        }
    }
}
