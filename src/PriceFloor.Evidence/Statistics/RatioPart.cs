namespace PriceFloor.Evidence.Statistics;

/// <summary>One entry, order, event or day of a ratio.</summary>
/// <param name="Amount">u.</param>
/// <param name="Per">n, at least 0.</param>
public readonly record struct RatioPart(decimal Amount, decimal Per);
