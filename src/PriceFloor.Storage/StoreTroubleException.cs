namespace PriceFloor.Storage;

/// <summary>
/// The engine could not do what the store asked. The message is the engine's own, and its exception is the inner exception. Nothing that was written
/// in the same work is kept, unless <see cref="MayBeKept"/> says otherwise.
/// </summary>
public sealed class StoreTroubleException : Exception
{
    public StoreTroubleException() { }

    public StoreTroubleException(string message) : base(message) { }

    public StoreTroubleException(string message, Exception inner) : base(message, inner) { }

    public StoreTroubleException(StoreTrouble trouble, Exception inner) : base(inner.Message, inner) => Trouble = trouble;

    /// <summary>
    /// Whether the trouble came while the engine was to keep what was written: then it may have kept it, and nobody knows until it is read again.
    /// </summary>
    public bool MayBeKept { get; init; }

    /// <summary>Which of many rows the engine refused, from 0; null if it does not say.</summary>
    public int? Row { get; init; }

    /// <summary>The kind of trouble.</summary>
    public StoreTrouble Trouble { get; } = StoreTrouble.Unexpected;
}
