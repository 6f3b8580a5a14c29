using Google.OrTools.Sat;

namespace PriceFloor.Pricing.Tests.Planning.Solver;

/// <summary>
/// The same problems for OR-Tools' CP-SAT, which reckons in whole numbers: every figure of the problem has at most four decimals here and
/// is told as so many ten-thousandths, so its optimum is exact and may be compared to the last digit.
/// </summary>
public static class IntegerSolver
{
    private const decimal Scale = 10_000;

    /// <summary>The best contribution, or the hours below nothing; null where nothing fits.</summary>
    public static decimal? Best(MixProblem problem)
    {
        var model = new CpModel();
        var units = problem.Choices.Select((choice, i) => model.NewIntVar((long)choice.Minimum, (long)(choice.Maximum ?? choice.Minimum + 100_000), $"u{i}")).ToList();
        LinearExpr Total(Func<MixChoice, decimal> of) => LinearExpr.WeightedSum(units, problem.Choices.Select(choice => Whole(of(choice))));
        model.Add(Total(choice => choice.Hours) <= Whole(problem.Hours));
        for (var k = 0; k < problem.Limits.Count; k++)
            model.Add(Total(choice => choice.Loads[k]) <= Whole(problem.Limits[k].Loads));
        if (problem.Goal == MixGoal.MaximumSurplus)
            model.Maximize(Total(choice => choice.Contribution));
        else
        {
            model.Add(Total(choice => choice.Contribution) >= Whole(problem.Pool));
            model.Maximize(Total(choice => -choice.Hours));
        }

        var solver = new CpSolver { StringParameters = "num_workers:1,random_seed:1" };
        return solver.Solve(model) switch
        {
            CpSolverStatus.Optimal => problem.Choices.Select((choice, i) => solver.Value(units[i]) * (problem.Goal == MixGoal.MaximumSurplus ? choice.Contribution : -choice.Hours)).Sum(),
            CpSolverStatus.Infeasible => null,
            var other => throw new InvalidOperationException($"CP-SAT answered {other}."),
        };
    }

    private static long Whole(decimal figure) => figure * Scale == decimal.Truncate(figure * Scale)
        ? (long)(figure * Scale)
        : throw new ArgumentException($"{figure} has more than four decimals.", nameof(figure));
}
