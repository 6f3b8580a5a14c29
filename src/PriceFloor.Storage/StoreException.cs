namespace PriceFloor.Storage;

/// <summary>The store cannot be used; the message says why and what to do.</summary>
public sealed class StoreException : Exception
{
    public StoreException() { }

    public StoreException(string message) : base(message) { }

    public StoreException(string message, Exception inner) : base(message, inner) { }

    /// <summary>The trouble; null if it is none of these, such as a store of a newer program.</summary>
    public StoreTrouble? Trouble { get; init; }
}
