namespace PriceFloor.Pricing.Selling;

/// <summary>What an order does for the year.</summary>
public enum OrderVerdict
{
    /// <summary>It does not carry the share of all its pieces.</summary>
    BelowFloor,

    /// <summary>It does.</summary>
    MeetsFloor,
}
