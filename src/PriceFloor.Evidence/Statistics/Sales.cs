namespace PriceFloor.Evidence.Statistics;

/// <summary>Orders of one design and the time in which it could be bought.</summary>
/// <param name="Orders">x.</param>
/// <param name="Exposure">e, above 0.</param>
public sealed record Sales(decimal Orders, decimal Exposure);
