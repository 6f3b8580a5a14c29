namespace PriceFloor.Api.PriceChecks.Batches;

/// <summary>Writes one answer or one problem for each line of a batch, in order.</summary>
public abstract class BatchAnswers : IDisposable
{
    public BatchSummary Summary { get; } = new();

    /// <summary>The size at which to flush; a larger answer is still taken.</summary>
    public abstract bool IsFull { get; }

    public void Write(BatchLine line, Outcome<CheckedPrice> outcome)
    {
        Summary.Count(outcome.Found?.Verdict);
        WriteLine(line, outcome);
    }

    public abstract ValueTask FlushAsync(CancellationToken cancel);

    /// <summary>The end after the last line.</summary>
    public abstract void End();

    public virtual void Dispose() => GC.SuppressFinalize(this);

    protected abstract void WriteLine(BatchLine line, Outcome<CheckedPrice> outcome);
}
