using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// A constraint of an integer programme: coefficients times units, plus a constant, is at most the right-hand side, to 12 decimals.
/// </summary>
/// <param name="Coefficients">What one unit of each variable takes; negative if the constraint is a sum that must be reached.</param>
/// <param name="Divisor">The <see cref="CommonDivisor"/> of the coefficients, if they have one.</param>
/// <param name="RightHandSide">What may be taken in all.</param>
/// <param name="Constant">What is taken with every variable at 0.</param>
internal sealed record Constraint(decimal[] Coefficients, decimal? Divisor, decimal RightHandSide, decimal Constant)
{
    /// <summary>
    /// What is left to take, rounded down to a multiple of the divisor. A little more than the rounding error of long sums is added, so that
    /// the search loses no solution to it; 10^-20 of a right-hand side is far too little to pay for anything that 12 decimals could show.
    /// </summary>
    public decimal Slack { get; } =
        Reachable(decimal.Max(RightHandSide, Rounding.Settle(RightHandSide)) - Constant, Divisor)
        + 0.00000000000000000001m * decimal.Max(1, decimal.Abs(RightHandSide));

    public bool Holds(decimal sum) => RightHandSide.Reaches(Constant + sum);

    private static decimal Reachable(decimal slack, decimal? divisor) =>
        divisor is { } step ? Rounding.Down((slack + IntegerProgramme.Tolerance) / step, 0) * step : slack;
}
