namespace PriceFloor.Storage;

/// <summary>
/// A transaction of the engine, on its own connection: a <see cref="Snapshot"/> reads and a <see cref="Writing"/> writes through it.
/// The engine's exceptions leave it as a <see cref="StoreTroubleException"/>. Disposing of it rolls back what was not kept.
/// </summary>
internal abstract class Session : IDisposable
{
    public abstract int Execute(string sql, object? parameters = null);

    public abstract T? ExecuteScalar<T>(string sql, object? parameters = null);

    public abstract List<T> Query<T>(string sql, object? parameters = null);

    /// <summary>Commits; complete when everything written is safe on the disk.</summary>
    public abstract ValueTask KeepAsync();

    /// <summary>Sets a savepoint.</summary>
    public abstract void Mark(string moment);

    /// <summary>Rolls back to that savepoint.</summary>
    public abstract void GoBackTo(string moment);

    /// <summary>Whether the engine has ended the transaction by itself: a full disk rolls all of it back.</summary>
    public abstract bool HasEnded { get; }

    public abstract void Dispose();
}
