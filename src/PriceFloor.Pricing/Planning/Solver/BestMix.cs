using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// The optimal product mix: the whole pieces of each line that give the largest contribution, or the fewest hours that bring the required
/// contribution, within the hours, the resources and what the market takes. Ties are broken by fewer hours (by the larger contribution if hours are
/// the goal), then by the order of the activities, the earlier taking more. 120 hours, 300.00 for 1 hour (60 at most) and 600.00 for 3 hours: 60
/// and 20, 30,000.00.
/// </summary>
public sealed class BestMix
{
    private BestMix(ProductMixProblem problem, LexicographicSolver solver, BranchAndBound first)
    {
        Units = solver.Units();
        Contribution = Evaluation.Contribution(problem, Units);
        Hours = Evaluation.Hours(problem, Units);
        Proven = first.Proven;
        var gap = Proven ? null : first.Bound - first.Incumbent!.Objective;
        (AtMost, AtLeast) = problem.Goal == MixGoal.MaximumSurplus ? (Contribution + gap, (decimal?)null) : (null, Hours - gap);
        Evaluation.Verify(problem, Units);
        Uses = BindingConstraints.Of(problem, Units, solver);
    }

    /// <summary>Whole pieces of each activity, in their order. They are checked against every constraint once more before they are given.</summary>
    public IReadOnlyList<decimal> Units { get; }

    /// <summary>What they leave toward what bench time must recover, in money, not rounded.</summary>
    public decimal Contribution { get; }

    /// <summary>Bench hours that they take, not rounded.</summary>
    public decimal Hours { get; }

    /// <summary>The hours first, then each resource in its order.</summary>
    public IReadOnlyList<ConstraintUsage> Uses { get; }

    /// <summary>
    /// Whether optimality is proven; otherwise the search reached its effort limit, and this is its incumbent. If a proven optimum has very many
    /// ties, the search may stop before it knows which of them comes first, and another of them is given.
    /// </summary>
    public bool Proven { get; }

    /// <summary>If the largest surplus is not proven: the upper bound of what any mix leaves toward what bench time must recover.</summary>
    public decimal? AtMost { get; }

    /// <summary>If the fewest hours are not proven: the lower bound of the hours of any mix that brings the required contribution.</summary>
    public decimal? AtLeast { get; }

    /// <summary>
    /// Refused with <c>infeasible</c> if the minimum units alone violate a constraint or no mix brings the required contribution, with
    /// <c>undecided</c> if the search stopped before it found a feasible mix, and with <c>too-large</c> if a figure exceeds what can be exact.
    /// </summary>
    public static Outcome<BestMix> Of(ProductMixProblem problem) => Of(problem, LexicographicSolver.MaxEffort);

    internal static Outcome<BestMix> Of(ProductMixProblem problem, long effort) => Outcome<BestMix>.Guard(() =>
    {
        if (Infeasibility.OfTheMinimums(problem) is { } fault)
            return fault;
        var solver = new LexicographicSolver(problem, effort);
        return solver.First is { } first ? new BestMix(problem, solver, first) : Infeasibility.OfTheRequirement(problem, effort);
    });
}
