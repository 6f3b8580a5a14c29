namespace PriceFloor.Evidence.Statistics;

/// <summary>Orders of one design at one price.</summary>
/// <param name="Price">Above 0.</param>
/// <param name="Sales">The orders, and the time in which it could be bought at that price.</param>
public sealed record PricedSales(decimal Price, Sales Sales);
