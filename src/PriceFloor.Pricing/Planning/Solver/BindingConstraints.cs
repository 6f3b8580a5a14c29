using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>What a mix takes of each constraint, and which constraints are binding.</summary>
internal static class BindingConstraints
{
    public static IReadOnlyList<ConstraintUsage> Of(ProductMixProblem problem, IReadOnlyList<decimal> units, LexicographicSolver solver)
    {
        var constraints = Evaluation.Constraints(problem);
        var used = constraints.Select(constraint => Evaluation.Sum(problem, units, constraint.Coefficient)).ToList();
        var blocking = Blocking(problem, units, constraints, used);
        var optimum = Evaluation.Optimum(problem, units);
        return [.. constraints.Select((constraint, k) =>
        {
            var again = solver.WithOneMore(k - 1, optimum, constraints.Count - k);
            var worth = again is { } solved
                ? Rounding.Settle(new OneMoreFormulas<Figure>(problem.Goal, optimum, solved, k + 1).Worth.Value)
                : (decimal?)null;
            return new ConstraintUsage(constraint.Name, used[k], constraint.Available, worth > 0 || blocking[k], again, worth);
        })];
    }

    /// <summary>The constraints that alone keep one more piece of an improving activity from being made.</summary>
    private static bool[] Blocking(
        ProductMixProblem problem, IReadOnlyList<decimal> units, IReadOnlyList<ResourceConstraint> constraints, List<decimal> used)
    {
        var blocking = new bool[constraints.Count];
        var first = problem.Goal == MixGoal.FewestHours ? 1 : 0; // another piece would take the hours of one that is not made
        foreach (var activity in Improving(problem, units))
        {
            var violated = Enumerable.Range(first, constraints.Count - first)
                .Where(k => !constraints[k].Available.Reaches(used[k] + constraints[k].Coefficient(activity))).Take(2).ToList();
            if (violated.Count == 1)
                blocking[violated[0]] = true;
        }

        return blocking;
    }

    private static IEnumerable<Activity> Improving(ProductMixProblem problem, IReadOnlyList<decimal> units)
    {
        var open = problem.Activities.Where((activity, i) => activity.Contribution > 0 && !(units[i] >= activity.Maximum));
        if (problem.Goal == MixGoal.MaximumSurplus)
            return open;
        var replaceable = problem.Activities.Where((activity, i) => units[i] > activity.Minimum)
            .Select(activity => activity.Contribution / activity.Hours).DefaultIfEmpty(decimal.MaxValue).Min();
        return open.Where(activity => Rounding.Settle(activity.Contribution / activity.Hours) > Rounding.Settle(replaceable));
    }
}
