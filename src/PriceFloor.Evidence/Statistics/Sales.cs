namespace PriceFloor.Evidence.Statistics;

/// <summary>Orders of one design and the time in which it could be bought.</summary>
/// <param name="Orders">x.</param>
/// <param name="Exposure">e, above 0.</param>
public readonly record struct Sales(decimal Orders, decimal Exposure);
