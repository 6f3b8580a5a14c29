namespace PriceFloor.Storage;

/// <summary>The present row of an answer: its columns, from 0, as the engine has them, without an object for each.</summary>
public abstract class Row
{
    /// <summary>A whole number; 0 for null.</summary>
    public abstract long Number(int column);

    /// <summary>A whole number, or null.</summary>
    public abstract long? NumberOrNull(int column);

    /// <summary>A text, or null.</summary>
    public abstract string? Text(int column);

    /// <summary>Bytes, or null.</summary>
    public abstract byte[]? Bytes(int column);

    /// <summary>Eight bytes as a number, the high byte first; null for none.</summary>
    public abstract ulong? EightBytes(int column);
}
