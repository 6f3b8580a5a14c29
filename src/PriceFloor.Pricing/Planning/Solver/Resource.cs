namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>A resource of which the year has only so much: a kiln with 240 loads.</summary>
public sealed record Resource(string Name, decimal Loads);
