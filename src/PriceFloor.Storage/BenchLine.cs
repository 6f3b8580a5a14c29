namespace PriceFloor.Storage;

/// <summary>A batch at the bench.</summary>
public sealed record BenchLine : LogLine
{
    /// <summary>Name of the step; null for the whole piece.</summary>
    public string? Step { get; init; }

    public int? Started { get; init; }

    public int? Good { get; init; }

    /// <summary>Hundredths of minutes for the whole batch; null if not recorded.</summary>
    public long? Minutes { get; init; }
}
