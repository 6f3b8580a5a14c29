namespace PriceFloor.Storage;

/// <summary>Lets one writer in at a time.</summary>
internal sealed class WriterGate : IDisposable
{
    private readonly SemaphoreSlim _gate = new(1, 1);
    private int _waitingAlone;

    /// <summary>Whether somebody waits in <see cref="EnterAlone"/>.</summary>
    public bool IsWanted => Volatile.Read(ref _waitingAlone) > 0;

    public void Wait() => _gate.Wait();

    public Task WaitAsync() => _gate.WaitAsync();

    /// <summary>For whoever shares a transaction with nobody; false if the turn does not come in time.</summary>
    public async Task<bool> EnterAlone(TimeSpan within)
    {
        Interlocked.Increment(ref _waitingAlone);
        try
        {
            return await _gate.WaitAsync(within);
        }
        finally
        {
            Interlocked.Decrement(ref _waitingAlone);
        }
    }

    public void Release() => _gate.Release();

    public void Dispose() => _gate.Dispose();
}
