using PriceFloor.Storage;

namespace PriceFloor.Api.ManyStudios;

/// <summary>
/// A studio that is open, or is being opened or closed. All but its tasks is for the holder of the lock of <see cref="OpenStudios"/>.
/// </summary>
internal sealed class OpenStudio(string key, StoreLock alone)
{
    /// <summary>What is kept of every open studio, apart from what is in its store: connections and parts.</summary>
    private const long BytesOfEach = 256 * 1024;

    private readonly TaskCompletionSource _closed = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private long _position = -1;

    public string Key => key;

    /// <summary>The studio, once it is open.</summary>
    public required Task<Studio> Opening { get; init; }

    /// <summary>Ends when it is closed and may be opened again.</summary>
    public Task Closed => _closed.Task;

    /// <summary>Requests that use it now.</summary>
    public int Uses { get; set; }

    /// <summary>When it was last used.</summary>
    public DateTimeOffset Touched { get; set; }

    /// <summary>True if it is closed as soon as nobody uses it.</summary>
    public bool IsLeaving { get; set; }

    /// <summary>What it takes, roughly: its documents are in memory about as large as its store.</summary>
    public long Bytes { get; private set; } = BytesOfEach;

    /// <summary>Measures it if something was written since; true if so.</summary>
    public bool HasGrown()
    {
        if (Opening is not { IsCompletedSuccessfully: true, Result.Store: var store } || store.Position == _position)
            return false;
        (_position, Bytes) = (store.Position, BytesOfEach + store.Bytes);
        return true;
    }

    public async Task CloseAsync()
    {
        if (Opening.IsCompletedSuccessfully)
            await Task.Run(Opening.Result.Dispose);
        alone.Dispose();
    }

    /// <summary>It may be opened again.</summary>
    public void Gone() => _closed.TrySetResult();
}
