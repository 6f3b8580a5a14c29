namespace PriceFloor.Storage;

/// <summary>
/// A transaction of the engine, on a connection of its own: all that a <see cref="Snapshot"/> asks and a <see cref="Writing"/> says goes through it.
/// What the engine throws leaves it as a <see cref="StoreTroubleException"/>. Disposing of it takes back what was not kept.
/// </summary>
internal abstract class Session : IDisposable
{
    public abstract int Execute(string sql, object? parameters = null);

    public abstract T? ExecuteScalar<T>(string sql, object? parameters = null);

    public abstract List<T> Query<T>(string sql, object? parameters = null);

    /// <summary>Commits: done when what was written is safe.</summary>
    public abstract ValueTask KeepAsync();

    /// <summary>Names this moment of the transaction.</summary>
    public abstract void Mark(string moment);

    /// <summary>Takes back what was done since that moment.</summary>
    public abstract void GoBackTo(string moment);

    /// <summary>Whether the engine has ended the transaction by itself: a full disk takes all of it back.</summary>
    public abstract bool HasEnded { get; }

    public abstract void Dispose();
}
