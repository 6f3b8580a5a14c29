namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>A part of the difference between what a year earns and what happens to its cash.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Amount">What it adds to cash; negative for what it takes.</param>
public sealed record CashPart(CashPartKind Kind, decimal Amount);
