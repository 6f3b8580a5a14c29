using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning;

/// <summary>One way to close a planned year, alone.</summary>
/// <param name="Way">Which way.</param>
/// <param name="Value">
/// The smallest that is enough: a share in steps of 0.001, a factor of four decimals, or money a year on the minor unit. Null if it is not possible.
/// </param>
/// <param name="Reason">Why it is not possible; null if it is.</param>
public sealed record PlanRemedy(PlanWay Way, decimal? Value, Code? Reason)
{
    public bool Possible => Reason is null;
}
