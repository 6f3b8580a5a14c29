namespace PriceFloor.Pricing.Documents;

/// <summary>Shipping for one order.</summary>
public sealed record Shipping
{
    /// <summary>What the buyer pays for it.</summary>
    /// <example>5.00</example>
    [Money]
    public decimal Charged { get; init; }

    /// <summary>What it costs.</summary>
    /// <example>6.20</example>
    [Money]
    public decimal Cost { get; init; }

    /// <summary>What a return costs.</summary>
    /// <example>6.20</example>
    [Money]
    public decimal ReturnCost { get; init; }
}
