namespace PriceFloor.Storage;

/// <summary>The trouble that kept the store from doing its work, whatever the engine.</summary>
public enum StoreTrouble
{
    /// <summary>Something else has it locked. Try again.</summary>
    Busy,

    /// <summary>No space is left.</summary>
    Full,

    /// <summary>The stored data is damaged, or is not a store.</summary>
    Damaged,

    /// <summary>It can be read but not written.</summary>
    ReadOnly,

    /// <summary>It does not exist, cannot be reached, or there is no permission to open it.</summary>
    CannotOpen,

    /// <summary>The disk failed to read or write.</summary>
    Disk,

    /// <summary>None of these: the engine refused the request, which is a fault of this program.</summary>
    Unexpected,
}
