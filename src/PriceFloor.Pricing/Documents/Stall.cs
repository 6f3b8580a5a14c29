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
}
