namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>One line that may be made, so many whole pieces of it.</summary>
/// <param name="Contribution">What one sold piece leaves for the pool, in money; may be nothing or less.</param>
/// <param name="Hours">Bench hours that it takes, above 0.</param>
/// <param name="Loads">Loads that it takes of each limited resource, in the order of <see cref="MixProblem.Limits"/>; 0 or more.</param>
/// <param name="Minimum">Least pieces to make, whole, 0 or more.</param>
/// <param name="Maximum">Most pieces that the market takes, whole; null where it takes any number.</param>
public sealed record MixChoice(decimal Contribution, decimal Hours, IReadOnlyList<decimal> Loads, decimal Minimum, decimal? Maximum);

/// <summary>A resource of which the year has only so much: a kiln with 240 loads.</summary>
public sealed record MixLimit(string Name, decimal Loads);

/// <summary>A year to be filled with whole pieces.</summary>
/// <param name="Choices">The lines; between equally good mixes an earlier one is given more pieces.</param>
/// <param name="Pool">What the contributions together must reach where the goal is the fewest hours, in money.</param>
/// <param name="Hours">Bench hours of the year, less those kept back for other work.</param>
/// <param name="Limits">The limited resources beside the hours.</param>
/// <param name="Goal">What is sought.</param>
public sealed record MixProblem(IReadOnlyList<MixChoice> Choices, decimal Pool, decimal Hours, IReadOnlyList<MixLimit> Limits, MixGoal Goal);
