using PriceFloor.Api.Configuration;

namespace PriceFloor.Api.HealthChecks;

/// <summary>
/// Whether the store is open. It nearly always is before the first request. But a store of an earlier program is upgraded while the process already
/// reports that it is alive, so nothing kills it halfway because it seems dead.
/// </summary>
public sealed class StoreReadiness
{
    private readonly TaskCompletionSource _done = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private Exception? _fault;

    public bool IsDone => _done.Task.IsCompleted;

    /// <summary>Ends when the store is open.</summary>
    public Task Done => _done.Task;

    public void Finish() => _done.TrySetResult();

    public void Fail(Exception fault) => Volatile.Write(ref _fault, fault);

    /// <summary>Serves until the process is asked to stop. If the store could not be opened, throws the reason.</summary>
    public async Task ServeAsync(WebApplication app)
    {
        var (stopping, addresses) = (app.Lifetime.ApplicationStopping, app.Configuration["urls"]);
        try
        {
            await RunAsync(app);
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            // Asked to stop while it was still starting.
        }
        catch (Exception e) when (Addresses.WhyNot(e, addresses) is { } sentence)
        {
            throw new SettingsException(sentence);
        }

        if (Volatile.Read(ref _fault) is { } fault)
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(fault);
    }

    private static async Task RunAsync(WebApplication app)
    {
        await using var running = app;
        try
        {
            await app.StartAsync();
        }
        catch
        {
            await app.StopAsync(); // a backup or an upgrade that has begun beside the start ends before the store is closed
            throw;
        }

        await app.WaitForShutdownAsync();
    }
}
