namespace PriceFloor.Pricing.Documents;

/// <summary>Work that a design takes once: trials, a mould, photographs. It is spent, so nothing saves it later.</summary>
public sealed record Development
{
    /// <summary>Bench hours.</summary>
    /// <example>8</example>
    [Quantity]
    public decimal Hours { get; init; }

    /// <summary>Money, in the profile's currency.</summary>
    /// <example>120.00</example>
    [Money]
    public decimal Cost { get; init; }

    /// <summary>Sold pieces that are expected of the design in all; above 0.</summary>
    /// <example>200</example>
    [Quantity(Above = true)]
    public required decimal Pieces { get; init; }
}
