namespace PriceFloor.Storage;

/// <summary>The store was deleted while it was open: another process has forgotten the studio.</summary>
public sealed class StoreGoneException : Exception
{
    public StoreGoneException() : base("The studio was forgotten; nothing was stored.") { }

    public StoreGoneException(string message) : base(message) { }

    public StoreGoneException(string message, Exception inner) : base(message, inner) { }
}
