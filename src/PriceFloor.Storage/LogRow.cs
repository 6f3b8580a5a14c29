namespace PriceFloor.Storage;

/// <summary>A line as it lies in the store, with numbers in place of names (<see cref="LogName"/>): a sum over many lines makes no texts.</summary>
public abstract class LogRow
{
    public long Position { get; init; }

    public long Source { get; init; }

    /// <summary>Null for work away from pieces.</summary>
    public long? Design { get; init; }

    /// <summary>Days since 0001-01-01.</summary>
    public int Day { get; init; }
}
