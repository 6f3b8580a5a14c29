namespace PriceFloor.Pricing.Documents;

/// <summary>The studio's own rule for retail prices.</summary>
public sealed record PriceRule
{
    /// <summary>Retail is this many times wholesale; above 0. Twice is common practice.</summary>
    /// <example>2</example>
    [Quantity(Above = true, Maximum = "1000")]
    public decimal RetailMultiple { get; init; } = 2;
}
