namespace PriceFloor.Pricing.Documents;

/// <summary>What rejected pieces still bring.</summary>
public sealed record Seconds
{
    /// <summary>The share of the rejected pieces that is sold as seconds.</summary>
    /// <example>0.4</example>
    [Share]
    public decimal Share { get; init; }

    /// <summary>What one second brings net, in the profile's currency.</summary>
    /// <example>11.00</example>
    [Money]
    public required decimal Price { get; init; }
}
