namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>What of a year by month is asked in thousands of draws.</summary>
/// <param name="Totals">The plan as one year.</param>
/// <param name="Cash">The least cash at the end of a month, unrounded.</param>
public sealed record LowestCash(YearPlan Totals, decimal Cash);
