namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>The product mix problem: a year to be filled with whole pieces.</summary>
/// <param name="Activities">The lines that may be made; between equally good mixes an earlier one gets more pieces.</param>
/// <param name="RequiredContribution">What the contributions together must reach if the goal is the fewest hours, in money.</param>
/// <param name="Hours">Bench hours of the year, less those kept back for other work.</param>
/// <param name="Resources">The limited resources beside the hours.</param>
/// <param name="Goal">What is optimised.</param>
public sealed record ProductMixProblem(
    IReadOnlyList<Activity> Activities, decimal RequiredContribution, decimal Hours, IReadOnlyList<Resource> Resources, MixGoal Goal);
