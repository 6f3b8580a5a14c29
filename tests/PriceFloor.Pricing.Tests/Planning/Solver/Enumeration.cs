namespace PriceFloor.Pricing.Tests.Planning.Solver;

/// <summary>What a mix comes to, and the best of all mixes by listing them: slow, and too plain to be wrong.</summary>
public static class Enumeration
{
    public static decimal Contribution(ProductMixProblem problem, IReadOnlyList<decimal> units) =>
        problem.Activities.Select((activity, i) => activity.Contribution * units[i]).Sum();

    public static decimal Hours(ProductMixProblem problem, IReadOnlyList<decimal> units) =>
        problem.Activities.Select((activity, i) => activity.Hours * units[i]).Sum();

    public static decimal Loads(ProductMixProblem problem, IReadOnlyList<decimal> units, int limit) =>
        problem.Activities.Select((activity, i) => activity.Loads[limit] * units[i]).Sum();

    public static bool Fits(ProductMixProblem problem, IReadOnlyList<decimal> units) =>
        problem.Hours.Reaches(Hours(problem, units))
        && Enumerable.Range(0, problem.Resources.Count).All(k => problem.Resources[k].Loads.Reaches(Loads(problem, units, k)));

    /// <summary>The first of the best in the order of the tie rules, or null where no mix will do.</summary>
    public static decimal[]? Best(ProductMixProblem problem)
    {
        decimal[]? best = null;
        foreach (var units in All(problem, new decimal[problem.Activities.Count], 0))
            if (Fits(problem, units) && (problem.Goal == MixGoal.MaximumSurplus
                    || Contribution(problem, units).Reaches(problem.RequiredContribution)))
                if (best is null || Compare(problem, units, best) > 0)
                    best = [.. units];
        return best;
    }

    /// <summary>The goal's unit, more is better: money, or hours below nothing.</summary>
    public static decimal Score(ProductMixProblem problem, IReadOnlyList<decimal> units) =>
        Rounding.Settle(problem.Goal == MixGoal.MaximumSurplus ? Contribution(problem, units) : -Hours(problem, units));

    /// <summary>The same problem with one more hour (0) or one more load of a limit (1 and up).</summary>
    public static ProductMixProblem OneMore(ProductMixProblem problem, int limit) => limit == 0
        ? problem with { Hours = problem.Hours + 1 }
        : problem with { Resources = [.. problem.Resources.Select((one, k) => k == limit - 1 ? one with { Loads = one.Loads + 1 } : one)] };

    private static int Compare(ProductMixProblem problem, decimal[] one, decimal[] other)
    {
        var order = Score(problem, one).CompareTo(Score(problem, other));
        if (order != 0)
            return order;
        var second = problem.Goal == MixGoal.MaximumSurplus ? MixGoal.FewestHours : MixGoal.MaximumSurplus;
        order = Score(problem with { Goal = second }, one).CompareTo(Score(problem with { Goal = second }, other));
        return order != 0 ? order : one.Zip(other, (a, b) => a.CompareTo(b)).FirstOrDefault(difference => difference != 0);
    }

    private static IEnumerable<decimal[]> All(ProductMixProblem problem, decimal[] units, int from)
    {
        if (from == units.Length)
        {
            yield return units;
            yield break;
        }

        var activity = problem.Activities[from];
        for (var made = activity.Minimum; made <= (activity.Maximum ?? Rounding.Down(decimal.Max(0, problem.Hours) / activity.Hours, 0)); made++)
        {
            units[from] = made;
            foreach (var mix in All(problem, units, from + 1))
                yield return mix;
        }
    }
}
