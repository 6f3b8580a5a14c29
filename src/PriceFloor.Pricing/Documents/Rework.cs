namespace PriceFloor.Pricing.Documents;

/// <summary>Pieces that are worked over once: it takes their step's time, hurried or not, but no further load, and loses no further piece.</summary>
public sealed record Rework
{
    /// <summary>Of the pieces that enter the step, the share that is worked over.</summary>
    /// <example>0.15</example>
    [Share]
    public required decimal Share { get; init; }

    /// <summary>Bench minutes for each of them.</summary>
    /// <example>6</example>
    [Quantity]
    public required decimal Minutes { get; init; }
}
