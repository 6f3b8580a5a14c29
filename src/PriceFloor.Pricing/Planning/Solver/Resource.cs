namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>A resource of which the year has only so much: a kiln with 240 loads.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Loads">How much there is.</param>
/// <param name="InWords">What a sentence calls it; absent: "loads of" its name.</param>
public sealed record Resource(string Name, decimal Loads, string? InWords = null);
