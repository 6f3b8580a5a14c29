namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// A constraint as the problem states it: what one piece of an activity takes of the hours or of a resource, how much there is, and its name.
/// </summary>
internal sealed record ResourceConstraint(string Name, string InWords, Func<Activity, decimal> Coefficient, decimal Available);
