namespace PriceFloor.Pricing.Documents;

/// <summary>The part of a quote's price that is paid before the work begins.</summary>
public sealed record QuoteDeposit
{
    /// <summary>Share of the price.</summary>
    /// <example>0.4</example>
    [Share]
    public required decimal Share { get; init; }
}
