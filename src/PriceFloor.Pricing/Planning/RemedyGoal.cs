namespace PriceFloor.Pricing.Planning;

/// <summary>What a price is to be brought to.</summary>
public enum RemedyGoal
{
    /// <summary>To carry its part of the year.</summary>
    Floor,

    /// <summary>To keep the studio's own price rule as well; on a wholesale channel the same as the floor.</summary>
    Target,
}
