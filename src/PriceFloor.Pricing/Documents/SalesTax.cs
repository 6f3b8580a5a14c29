namespace PriceFloor.Pricing.Documents;

/// <summary>VAT or sales tax on the channel.</summary>
public sealed record SalesTax
{
    /// <summary>The rate.</summary>
    /// <example>0.2</example>
    [Share]
    public decimal Rate { get; init; }

    /// <summary>True if listed prices include the tax; false if it is added on top.</summary>
    public bool Included { get; init; }
}
