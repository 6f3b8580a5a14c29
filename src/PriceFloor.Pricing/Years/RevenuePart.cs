using PriceFloor.Pricing.Documents;

namespace PriceFloor.Pricing.Years;

/// <summary>A part of the required revenue, unrounded.</summary>
/// <param name="Of">What it is for.</param>
/// <param name="CostKind">With expenses: their kind; expenses without one are <see cref="CostKind.Other"/>.</param>
/// <param name="Amount">Its amount over the year.</param>
public sealed record RevenuePart(RevenuePartOf Of, CostKind? CostKind, decimal Amount);
