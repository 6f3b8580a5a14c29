namespace PriceFloor.Pricing.Documents;

/// <summary>Pieces that come back.</summary>
public sealed record Returns
{
    /// <summary>The share of sales that is returned; at most 0.9999.</summary>
    /// <example>0.03</example>
    [Share(Maximum = "0.9999")]
    public decimal Share { get; init; }

    /// <summary>Of the returned pieces, the share that can be sold again.</summary>
    /// <example>0.8</example>
    [Share]
    public decimal ResaleShare { get; init; }

    /// <summary>Whether the fees come back with the piece.</summary>
    public bool FeesRefunded { get; init; }
}
