using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>What a mix takes of each limit, and whether the limit stands in the way of a better one.</summary>
internal static class MixUses
{
    public static IReadOnlyList<MixUse> Of(MixProblem problem, IReadOnlyList<decimal> units, MixSolver solver)
    {
        var limits = MixTotals.Limits(problem);
        var used = limits.Select(limit => MixTotals.Sum(problem, units, limit.Takes)).ToList();
        var blocked = Blocked(problem, units, limits, used);
        return [.. limits.Select((limit, k) =>
        {
            var worth = solver.WorthOfOneMore(k - 1, limits.Count - k);
            return new MixUse(limit.Name, used[k], limit.Available, worth > 0 || blocked[k], worth);
        })];
    }

    /// <summary>The limits that alone keep one more piece of a choice, which would improve the mix, from being made.</summary>
    private static bool[] Blocked(MixProblem problem, IReadOnlyList<decimal> units, IReadOnlyList<MixTaking> limits, List<decimal> used)
    {
        var blocked = new bool[limits.Count];
        var first = problem.Goal == MixGoal.FewestHours ? 1 : 0; // another piece would take the hours of one that is not made
        foreach (var choice in Improving(problem, units))
        {
            var lacking = Enumerable.Range(first, limits.Count - first).Where(k => !limits[k].Available.Reaches(used[k] + limits[k].Takes(choice))).Take(2).ToList();
            if (lacking.Count == 1)
                blocked[lacking[0]] = true;
        }

        return blocked;
    }

    private static IEnumerable<MixChoice> Improving(MixProblem problem, IReadOnlyList<decimal> units)
    {
        var open = problem.Choices.Where((choice, i) => choice.Contribution > 0 && !(units[i] >= choice.Maximum));
        if (problem.Goal == MixGoal.MaximumSurplus)
            return open;
        var replaceable = problem.Choices.Where((choice, i) => units[i] > choice.Minimum).Select(choice => choice.Contribution / choice.Hours).DefaultIfEmpty(decimal.MaxValue).Min();
        return open.Where(choice => Rounding.Settle(choice.Contribution / choice.Hours) > Rounding.Settle(replaceable));
    }
}
