namespace PriceFloor.Evidence.Demand;

/// <summary>A listed price from a day on.</summary>
/// <param name="From">The day.</param>
/// <param name="Price">The price; null: no longer listed.</param>
public sealed record PriceStep(DateOnly From, decimal? Price);
