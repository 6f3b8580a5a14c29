namespace PriceFloor.Evidence.Statistics;

/// <summary>Pieces begun one after another, and the minutes that they took together.</summary>
/// <param name="Started">K, at least 1.</param>
/// <param name="Minutes">Y, at least 0.</param>
public readonly record struct LearningEntry(int Started, decimal Minutes);
