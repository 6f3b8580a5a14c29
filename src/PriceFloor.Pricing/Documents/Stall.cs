namespace PriceFloor.Pricing.Documents;

/// <summary>A stall, a fair, an open studio.</summary>
public sealed record Stall
{
    /// <summary>What taking part costs.</summary>
    /// <example>180.00</example>
    [Money]
    public decimal Cost { get; init; }

    /// <summary>Pieces that it usually sells; above 0.</summary>
    /// <example>30</example>
    [Quantity(Above = true)]
    public required decimal Pieces { get; init; }

    /// <summary>Hours of selling that it takes, with the way there, setting up and packing up.</summary>
    /// <example>9</example>
    [Quantity]
    public decimal Hours { get; init; }

    /// <summary>How often a year it takes place, whole; 0: not this year. Absent: no bound. It limits plans, not prices.</summary>
    /// <example>6</example>
    [Pieces]
    public decimal? TimesAYear { get; init; }
}
