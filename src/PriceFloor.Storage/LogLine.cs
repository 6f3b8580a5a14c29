namespace PriceFloor.Storage;

/// <summary>A line of the log as it is stored, with its names in words. Amounts are whole minor units of its currency.</summary>
public abstract record LogLine
{
    /// <summary>Its place in the order of its list; 0 if it is not stored yet.</summary>
    public long Position { get; init; }

    /// <summary>Who sent it.</summary>
    public string Source { get; init; } = "";

    /// <summary>16 bytes by which its source knows it again (<see cref="LogMarks.OfRef"/>).</summary>
    public byte[] Ref { get; init; } = [];

    /// <summary>Key of the design; null for work away from pieces.</summary>
    public string? Design { get; init; }

    /// <summary>Days since 0001-01-01.</summary>
    public int Day { get; init; }

    /// <summary>The name of the last bench step of the design when the line came; null if it has one alone.</summary>
    public string? LastStep { get; init; }
}
