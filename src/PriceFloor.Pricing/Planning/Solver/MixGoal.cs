namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>What the best mix of a year is best at.</summary>
public enum MixGoal
{
    /// <summary>The most that the pieces leave toward what bench time must recover, and so the largest surplus.</summary>
    MaximumSurplus,

    /// <summary>The fewest bench hours whose pieces still bring the required contribution.</summary>
    FewestHours,
}
