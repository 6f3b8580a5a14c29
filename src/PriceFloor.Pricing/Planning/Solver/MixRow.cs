using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>One condition of a whole-number programme: what the units take, with what is taken already, settles to at most so much.</summary>
/// <param name="Takes">What one unit of each choice takes; less than 0 where the condition is a sum that must be reached.</param>
/// <param name="Grid">The grid on which the sums of what is taken lie, if there is one: <see cref="MixGrid"/>.</param>
/// <param name="AtMost">What may be taken in all.</param>
/// <param name="Taken">What is taken before the first unit.</param>
internal sealed record MixRow(decimal[] Takes, decimal? Grid, decimal AtMost, decimal Taken)
{
    /// <summary>
    /// What is left to take: on the grid of what can be taken, where there is one. A little more than the dust of long sums is added, so that
    /// the search loses no mix to it; 10^-20 of a limit is far too little to pay for anything that a settled sum could show.
    /// </summary>
    public decimal Room { get; } = OnGrid(decimal.Max(AtMost, Rounding.Settle(AtMost)) - Taken, Grid) + 0.00000000000000000001m * decimal.Max(1, decimal.Abs(AtMost));

    public bool Holds(decimal sum) => AtMost.Reaches(Taken + sum);

    private static decimal OnGrid(decimal room, decimal? step) =>
        step is { } grid ? Rounding.Down((room + MixProgramme.LastDecimal) / grid, 0) * grid : room;
}
