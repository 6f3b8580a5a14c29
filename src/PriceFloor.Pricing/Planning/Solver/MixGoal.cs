namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>What the best mix of a year is best at.</summary>
public enum MixGoal
{
    /// <summary>The most that the pieces leave for the pool, and so the largest surplus.</summary>
    MaximumSurplus,

    /// <summary>The fewest bench hours whose pieces still carry the pool.</summary>
    FewestHours,
}
