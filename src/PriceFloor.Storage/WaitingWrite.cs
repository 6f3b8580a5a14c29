namespace PriceFloor.Storage;

/// <summary>A write that waits for its turn, and what became of it.</summary>
internal abstract class WaitingWrite(string savedBy)
{
    public string SavedBy { get; } = savedBy;

    public bool IsDone { get; set; }

    /// <summary>It did not fail and was not undone.</summary>
    public bool IsKept { get; set; }

    public Exception? Fault { get; set; }

    /// <summary>The position of its kept writes; 0 if there are none.</summary>
    public long LastPosition { get; set; }

    /// <summary>The highest number of its kept revisions; 0 if there are none.</summary>
    public long HighestNumber { get; set; }

    public abstract ValueTask Run(Writing writing);
}

/// <summary>A write with a result.</summary>
internal sealed class WaitingWrite<T>(string savedBy, Func<Writing, ValueTask<T>> write) : WaitingWrite(savedBy)
{
    public T? Result { get; private set; }

    public override async ValueTask Run(Writing writing) => Result = await write(writing);
}
