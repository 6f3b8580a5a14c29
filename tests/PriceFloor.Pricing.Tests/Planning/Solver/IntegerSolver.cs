using Google.OrTools.Sat;

namespace PriceFloor.Pricing.Tests.Planning.Solver;

/// <summary>
/// The same problems for OR-Tools' CP-SAT, which calculates in whole numbers: every figure of the problem has at most four decimals here and
/// is told as so many ten-thousandths, so its optimum is exact and may be compared to the last digit.
/// </summary>
public static class IntegerSolver
{
    private const decimal Scale = 10_000;

    /// <summary>The best contribution, or the hours below nothing; null where nothing fits.</summary>
    public static decimal? Best(ProductMixProblem problem)
    {
        var model = new CpModel();
        var units = problem.Activities.Select((activity, i) =>
            model.NewIntVar((long)activity.Minimum, (long)(activity.Maximum ?? activity.Minimum + 100_000), $"u{i}")).ToList();
        LinearExpr Total(Func<Activity, decimal> of) => LinearExpr.WeightedSum(units, problem.Activities.Select(activity => Whole(of(activity))));
        model.Add(Total(activity => activity.Hours) <= Whole(problem.Hours));
        for (var k = 0; k < problem.Resources.Count; k++)
            model.Add(Total(activity => activity.Loads[k]) <= Whole(problem.Resources[k].Loads));
        if (problem.Goal == MixGoal.MaximumSurplus)
            model.Maximize(Total(activity => activity.Contribution));
        else
        {
            model.Add(Total(activity => activity.Contribution) >= Whole(problem.RequiredContribution));
            model.Maximize(Total(activity => -activity.Hours));
        }

        var solver = new CpSolver { StringParameters = "num_workers:1,random_seed:1" };
        return solver.Solve(model) switch
        {
            CpSolverStatus.Optimal => problem.Activities.Select((activity, i) =>
                solver.Value(units[i]) * (problem.Goal == MixGoal.MaximumSurplus ? activity.Contribution : -activity.Hours)).Sum(),
            CpSolverStatus.Infeasible => null,
            var other => throw new InvalidOperationException($"CP-SAT answered {other}."),
        };
    }

    private static long Whole(decimal figure) => figure * Scale == decimal.Truncate(figure * Scale)
        ? (long)(figure * Scale)
        : throw new ArgumentException($"{figure} has more than four decimals.", nameof(figure));
}
