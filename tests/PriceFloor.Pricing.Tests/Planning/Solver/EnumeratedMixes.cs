using Xunit;

namespace PriceFloor.Pricing.Tests.Planning.Solver;

/// <summary>The solver against the list of all mixes, on small problems with many equally good ones.</summary>
public sealed class EnumeratedMixes
{
    private const int Cases = 4000;

    [Theory]
    [InlineData(MixGoal.MaximumSurplus)]
    [InlineData(MixGoal.FewestHours)]
    public void The_best_of_all_mixes_is_found_and_the_first_of_equals(MixGoal goal)
    {
        var found = 0;
        for (var seed = 0; seed < Cases; seed++)
        {
            var problem = new RandomMix(seed).Tiny(goal);
            var (expected, outcome) = (Enumeration.Best(problem), BestMix.Of(problem));
            if (expected is null)
            {
                Assert.True(outcome.Faults is [{ Code.Word: "infeasible" }], $"seed {seed}: a mix was found where there is none");
                continue;
            }

            found++;
            Assert.True(outcome.Found is { Proven: true }, $"seed {seed}: {(outcome.Found is null ? outcome.Faults[0].Detail : "not proven")}");
            Assert.True(expected.SequenceEqual(outcome.Value.Units),
                $"seed {seed}: expected {string.Join(' ', expected)}, found {string.Join(' ', outcome.Value.Units)}");
        }

        Assert.InRange(found, Cases / 5, Cases * 9 / 10);
    }

    [Theory]
    [InlineData(MixGoal.MaximumSurplus)]
    [InlineData(MixGoal.FewestHours)]
    public void One_more_is_worth_what_the_list_of_all_mixes_gains(MixGoal goal)
    {
        var worthSomething = 0;
        for (var seed = 0; seed < Cases; seed++)
        {
            var problem = new RandomMix(seed).Tiny(goal);
            if (BestMix.Of(problem).Found is not { } best)
                continue;
            foreach (var (k, use) in best.Uses.Index())
            {
                var more = Enumeration.OneMore(problem, k);
                var gained = Enumeration.Score(more, Enumeration.Best(more)!) - Enumeration.Score(problem, best.Units);
                Assert.True(decimal.Abs(gained - use.WorthOfOneMore!.Value) <= 0.000000000001m,
                    $"seed {seed}, {use.Name}: {gained} expected, {use.WorthOfOneMore} found");
                Assert.True(use.WorthOfOneMore == 0 || use.Binds, $"seed {seed}, {use.Name}: worth something and not binding");
                worthSomething += use.WorthOfOneMore > 0 ? 1 : 0;
            }
        }

        Assert.True(worthSomething > Cases / 200, $"only {worthSomething}");
    }
}
