namespace PriceFloor.Pricing.Documents;

/// <summary>What the buyer of one order is offered: one of the three.</summary>
public sealed record Offer
{
    /// <summary>A share off the items' prices. At most 0.9999.</summary>
    /// <example>0.2</example>
    [Share(Maximum = "0.9999")]
    public decimal? DiscountShare { get; init; }

    /// <summary>An amount off the items' prices together, given as the channel's prices are: with or without tax.</summary>
    /// <example>10.00</example>
    [Money]
    public decimal? AmountOff { get; init; }

    /// <summary>
    /// What this order's buyer pays for shipping instead of the channel's charge, given as the channel's prices are. 0: free shipping.
    /// </summary>
    /// <example>0.00</example>
    [Money]
    public decimal? ShippingCharged { get; init; }
}
