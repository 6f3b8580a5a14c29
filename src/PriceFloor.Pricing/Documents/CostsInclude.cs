namespace PriceFloor.Pricing.Documents;

/// <summary>What the amounts of a cost profile hold.</summary>
public enum CostsInclude
{
    /// <summary>Sales tax that the studio can claim back: the costs are given too high.</summary>
    ClaimableTax,

    /// <summary>No sales tax that could be claimed back.</summary>
    NoClaimableTax,
}
