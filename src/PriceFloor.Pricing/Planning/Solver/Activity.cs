namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>One integer decision variable of a product mix: how many whole pieces of a line are made.</summary>
/// <param name="Contribution">What one sold piece leaves toward what bench time must recover, in money; may be zero or negative.</param>
/// <param name="Hours">Bench hours that it takes, above 0.</param>
/// <param name="Loads">Loads that it takes of each resource, in the order of <see cref="ProductMixProblem.Resources"/>; 0 or more.</param>
/// <param name="Minimum">Least pieces to make, whole, 0 or more.</param>
/// <param name="Maximum">Most pieces that the market takes, whole; null if it takes any number.</param>
public sealed record Activity(decimal Contribution, decimal Hours, IReadOnlyList<decimal> Loads, decimal Minimum, decimal? Maximum);
