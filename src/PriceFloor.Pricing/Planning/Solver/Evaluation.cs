using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>Evaluates the units of a mix straight from the problem, independently of how they were found.</summary>
internal static class Evaluation
{
    public static decimal Contribution(ProductMixProblem problem, IReadOnlyList<decimal> units) =>
        Sum(problem, units, activity => activity.Contribution);

    public static decimal Hours(ProductMixProblem problem, IReadOnlyList<decimal> units) => Sum(problem, units, activity => activity.Hours);

    /// <summary>What the goal counts: the contribution, or the hours.</summary>
    public static decimal Optimum(ProductMixProblem problem, IReadOnlyList<decimal> units) =>
        problem.Goal == MixGoal.MaximumSurplus ? Contribution(problem, units) : Hours(problem, units);

    /// <summary>The hours first, then each resource in its order.</summary>
    public static IReadOnlyList<ResourceConstraint> Constraints(ProductMixProblem problem) =>
    [
        new("hours", "bench hours", activity => activity.Hours, problem.Hours),
        .. problem.Resources.Select((resource, k) =>
            new ResourceConstraint(resource.Name, resource.InWords ?? $"loads of \"{resource.Name}\"",
                activity => activity.Loads[k], resource.Loads)),
    ];

    public static decimal Sum(ProductMixProblem problem, IReadOnlyList<decimal> units, Func<Activity, decimal> figure) =>
        problem.Activities.Select((activity, i) => figure(activity) * units[i]).Sum();

    /// <summary>However the units were found, they are checked against every constraint of the problem before anyone sees them.</summary>
    public static void Verify(ProductMixProblem problem, IReadOnlyList<decimal> units)
    {
        foreach (var (activity, made) in problem.Activities.Zip(units))
            if (made != decimal.Truncate(made) || made < activity.Minimum || made > activity.Maximum)
                throw new InvalidOperationException($"A best mix of {made} pieces is outside {activity.Minimum} to {activity.Maximum}.");
        foreach (var constraint in Constraints(problem))
            if (!constraint.Available.Reaches(Sum(problem, units, constraint.Coefficient)))
                throw new InvalidOperationException($"A best mix takes more {constraint.InWords} than there are.");
        if (problem.Goal == MixGoal.FewestHours && !Contribution(problem, units).Reaches(problem.RequiredContribution))
            throw new InvalidOperationException("A best mix does not bring the required contribution.");
    }
}
