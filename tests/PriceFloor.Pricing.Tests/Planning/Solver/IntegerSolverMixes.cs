using Xunit;

namespace PriceFloor.Pricing.Tests.Planning.Solver;

/// <summary>The solver against OR-Tools' integer solver on years of a few lines.</summary>
public sealed class IntegerSolverMixes
{
    [Theory]
    [InlineData(MixGoal.MaximumSurplus, 200)]
    [InlineData(MixGoal.FewestHours, 200)]
    public void The_optimum_is_the_one_of_an_integer_solver(MixGoal goal, int cases)
    {
        var infeasible = 0;
        for (var seed = 0; seed < cases; seed++)
        {
            var problem = new RandomMix(1_000 + seed).Year(2 + seed % 9, seed % 4, goal);
            var (expected, outcome) = (IntegerSolver.Best(problem), BestMix.Of(problem));
            if (expected is null)
            {
                Assert.True(outcome.Faults is [{ Code.Word: "infeasible" }], $"seed {seed}");
                infeasible++;
                continue;
            }

            Assert.True(outcome.Found is { Proven: true }, $"seed {seed}: {(outcome.Found is null ? outcome.Faults[0].Detail : "not proven")}");
            Assert.True(expected == Enumeration.Score(problem, outcome.Value.Units),
                $"seed {seed}: {expected} expected, {Enumeration.Score(problem, outcome.Value.Units)} found");
        }

        Assert.InRange(infeasible, cases / 50, cases / 2);
    }

    [Theory]
    [InlineData(MixGoal.MaximumSurplus)]
    [InlineData(MixGoal.FewestHours)]
    public void One_more_hour_or_load_is_worth_what_the_integer_solver_gains(MixGoal goal)
    {
        var asked = 0;
        for (var seed = 0; asked < 60; seed++)
        {
            var problem = new RandomMix(5_000 + seed).Year(2 + seed % 6, 1 + seed % 2, goal);
            if (BestMix.Of(problem).Found is not { } best)
                continue;
            foreach (var (k, use) in best.Uses.Index())
            {
                var gained = IntegerSolver.Best(Enumeration.OneMore(problem, k)) - Enumeration.Score(problem, best.Units);
                Assert.True(gained == use.WorthOfOneMore, $"seed {seed}, {use.Name}: {gained} expected, {use.WorthOfOneMore} found");
                asked++;
            }
        }
    }
}
