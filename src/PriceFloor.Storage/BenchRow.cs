namespace PriceFloor.Storage;

/// <summary>A batch at the bench: <see cref="BenchLine"/> says what its fields are.</summary>
public sealed class BenchRow : LogRow
{
    public long? Step { get; init; }

    public int? Started { get; init; }

    public int? Good { get; init; }

    public long? Minutes { get; init; }
}
