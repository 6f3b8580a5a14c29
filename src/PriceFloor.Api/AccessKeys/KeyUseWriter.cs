using PriceFloor.Api.Access;
using PriceFloor.Storage;
using Serilog;

namespace PriceFloor.Api.AccessKeys;

/// <summary>Stores when keys were last used: at most once a minute, and at the end.</summary>
public sealed class KeyUseWriter(KeyUses uses, Store store, TimeProvider clock) : BackgroundService
{
    private readonly Lock _writing = new();
    private bool _ended;

    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        await base.StopAsync(cancellationToken);
        Write(last: true);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(TimeSpan.FromMinutes(1), clock);
        try
        {
            while (await timer.WaitForNextTickAsync(stoppingToken))
                Write(last: false);
        }
        catch (OperationCanceledException)
        {
            // The service is stopping.
        }
    }

    private void Write(bool last)
    {
        lock (_writing) // a host may be stopped twice at once
        {
            if (!_ended)
                WriteUnwritten();
            _ended |= last;
        }
    }

    private void WriteUnwritten()
    {
        var unwritten = uses.Unwritten;
        if (unwritten.Count == 0)
            return;
        try
        {
            store.Write("key-use", writing =>
            {
                foreach (var (name, at) in unwritten)
                    writing.KeyWasUsed(name, at);
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
