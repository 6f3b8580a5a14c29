using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>What the mix takes of the hours or of a limited resource.</summary>
/// <param name="Name">"hours", or the limit's name.</param>
/// <param name="Used">Hours or loads that the mix takes.</param>
/// <param name="Available">Hours or loads that there are.</param>
/// <param name="Binds">
/// Whether it stands in the way of a better mix: one more of it is worth something, or a choice below its maximum that would improve the mix
/// cannot have one more piece because of this limit alone. For the largest surplus a choice improves the mix where it leaves something
/// for the pool; for the fewest hours where it leaves more an hour than some piece that is made above its minimum and could be replaced.
/// Hours never bind the fewest hours: with more of them no fewer would do.
/// </param>
/// <param name="WorthOfOneMore">
/// What one more hour or load would bring, by solving again with it: money for the largest surplus, hours saved for the fewest hours. Null
/// where the search gave up before either optimum was proven.
/// </param>
public sealed record MixUse(string Name, decimal Used, decimal Available, bool Binds, decimal? WorthOfOneMore);

/// <summary>
/// How many whole pieces of each line make the best year: the largest contribution, or the fewest hours that carry the pool, within the
/// hours, the limits and what the market takes. Equals are decided by fewer hours (larger contribution where hours are the goal), then
/// by the order of the choices, the earlier taking more. 120 hours, 300.00 for 1 hour (60 at most) and 600.00 for 3 hours: 60 and 20, 30,000.00.
/// </summary>
public sealed class BestMix
{
    private BestMix(MixProblem problem, MixSolver solver, MixSearch first)
    {
        Units = solver.Units();
        Contribution = MixTotals.Contribution(problem, Units);
        Hours = MixTotals.Hours(problem, Units);
        Proven = first.Proven;
        var left = Proven ? null : first.Bound - first.Best!.Gain;
        (AtMost, AtLeast) = problem.Goal == MixGoal.MaximumSurplus ? (Contribution + left, (decimal?)null) : (null, Hours - left);
        MixTotals.Verify(problem, Units);
        Uses = MixUses.Of(problem, Units, solver);
    }

    /// <summary>Whole pieces of each choice, in the order of the choices. They are held against every limit once more before they are given.</summary>
    public IReadOnlyList<decimal> Units { get; }

    /// <summary>What they leave for the pool, in money, not rounded.</summary>
    public decimal Contribution { get; }

    /// <summary>Bench hours that they take, not rounded.</summary>
    public decimal Hours { get; }

    /// <summary>The hours first, then each limit in its order.</summary>
    public IReadOnlyList<MixUse> Uses { get; }

    /// <summary>
    /// Whether it is certain that no mix is better; otherwise the search gave up, and this is the best it had found. Where a proven mix has very
    /// many equals, the search may give up on which of them comes first, and another of them is given.
    /// </summary>
    public bool Proven { get; }

    /// <summary>Where the largest surplus is not proven: no mix leaves more than this for the pool.</summary>
    public decimal? AtMost { get; }

    /// <summary>Where the fewest hours are not proven: no mix that carries the pool takes fewer than these.</summary>
    public decimal? AtLeast { get; }

    /// <summary>
    /// Refused with <c>infeasible</c> where the minimum units alone break a limit or no mix carries the pool, with <c>undecided</c> where the
    /// search gave up before it found a mix that carries the pool, and with <c>too-large</c> where a figure passes what can be exact.
    /// </summary>
    public static Outcome<BestMix> Of(MixProblem problem) => Of(problem, MixSolver.MostEffort);

    internal static Outcome<BestMix> Of(MixProblem problem, long effort) => Outcome<BestMix>.Guard(() =>
    {
        if (MixFaults.OfTheLeast(problem) is { } fault)
            return fault;
        var solver = new MixSolver(problem, effort);
        return solver.First is { } first ? new BestMix(problem, solver, first) : MixFaults.OfThePool(problem, effort);
    });
}
