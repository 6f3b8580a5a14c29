namespace PriceFloor.Storage;

/// <summary>What kept the store from doing its work, whichever engine keeps it.</summary>
public enum StoreTrouble
{
    /// <summary>Something else holds it. Try again.</summary>
    Busy,

    /// <summary>No space is left.</summary>
    Full,

    /// <summary>What is stored is damaged, or is not a store.</summary>
    Damaged,

    /// <summary>It may be read but not written.</summary>
    ReadOnly,

    /// <summary>
    /// It is not there, or there is no right to it. So it is with a closed store in a folder that became read-only: its log cannot be made.
    /// </summary>
    CannotOpen,

    /// <summary>The disk failed to read or write.</summary>
    Disk,

    /// <summary>None of these: the engine refused what was asked of it, which is a fault of this program.</summary>
    Unexpected,
}
