using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.Planning.Solver;
using Xunit;

namespace PriceFloor.Pricing.Tests.Properties;

/// <summary>What must hold for every best mix, attacked with random years.</summary>
public sealed class MixProperties
{
    private const int Tries = 150;

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void No_plan_that_fits_is_better(NonNegativeInt seed)
    {
        foreach (var goal in Enum.GetValues<MixGoal>())
        {
            var problem = Draw(seed, goal);
            var (chance, best) = (new RandomMix(seed.Get + 1), BestMix.Of(problem).Found);
            for (var tries = 0; tries < 40; tries++)
                if (chance.Plan(problem) is { } plan
                        && (goal == MixGoal.MaximumSurplus || Enumeration.Contribution(problem, plan).Reaches(problem.RequiredContribution)))
                    Assert.True(Enumeration.Score(problem, best!.Units) >= Enumeration.Score(problem, plan),
                        $"{string.Join(' ', plan)} is better than {string.Join(' ', best.Units)}");
        }
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void It_keeps_to_every_limit_and_says_what_it_takes(NonNegativeInt seed)
    {
        foreach (var goal in Enum.GetValues<MixGoal>())
        {
            var problem = Draw(seed, goal);
            if (BestMix.Of(problem).Found is not { } best)
                continue;
            Assert.True(Enumeration.Fits(problem, best.Units));
            Assert.All(problem.Activities.Zip(best.Units), line => Assert.True(line.Second >= line.First.Minimum
                && !(line.Second > line.First.Maximum) && line.Second == decimal.Truncate(line.Second)));
            Assert.Equal((Enumeration.Contribution(problem, best.Units), Enumeration.Hours(problem, best.Units)), (best.Contribution, best.Hours));
            Assert.Equal(["hours", .. problem.Resources.Select(limit => limit.Name)], best.Uses.Select(use => use.Name));
            Assert.Equal([best.Hours, .. problem.Resources.Select((_, k) => Enumeration.Loads(problem, best.Units, k))],
                best.Uses.Select(use => use.Used));
            Assert.True(goal == MixGoal.MaximumSurplus || best.Contribution.Reaches(problem.RequiredContribution));
        }
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void More_of_a_limit_never_makes_it_worse_and_is_worth_what_was_said(NonNegativeInt seed)
    {
        foreach (var goal in Enum.GetValues<MixGoal>())
        {
            var problem = Draw(seed, goal);
            if (BestMix.Of(problem).Found is not { } best)
                continue;
            foreach (var (k, use) in best.Uses.Index())
            {
                var more = Enumeration.OneMore(problem, k);
                var gained = Enumeration.Score(more, BestMix.Of(more).Value.Units) - Enumeration.Score(problem, best.Units);
                Assert.Equal(gained, use.WorthOfOneMore);
                Assert.True(gained >= 0 && (gained == 0 || use.Binds), $"{use}");
            }
        }
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void Another_line_never_makes_it_worse(NonNegativeInt seed)
    {
        foreach (var goal in Enum.GetValues<MixGoal>())
        {
            var problem = Draw(seed, goal);
            var fewer = problem with { Activities = [.. problem.Activities.Skip(1)] };
            if (BestMix.Of(fewer).Found is not { } without)
                continue;
            var with = BestMix.Of(problem with { Activities = [problem.Activities[0] with { Minimum = 0 }, .. fewer.Activities] }).Value;
            Assert.True(Enumeration.Score(problem, with.Units) >= Enumeration.Score(fewer, without.Units));
        }
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void The_order_of_the_lines_changes_nothing_but_who_is_first_among_equals(NonNegativeInt seed)
    {
        foreach (var goal in Enum.GetValues<MixGoal>())
        {
            var problem = Draw(seed, goal);
            var turned = problem with { Activities = [.. problem.Activities.Reverse()] };
            var (one, other) = (BestMix.Of(problem).Found, BestMix.Of(turned).Found);
            Assert.Equal(one is null, other is null);
            if (one is null)
                continue;
            Assert.Equal((one.Contribution, one.Hours), (other!.Contribution, other.Hours));
            Assert.Equal(one.Uses.Select(use => use.WorthOfOneMore), other.Uses.Select(use => use.WorthOfOneMore));
            // What the other order finds is as good, so of the two the first must be the one that gives its earlier lines more.
            var first = one.Units.Zip(other.Units.Reverse(), (here, there) => here - there).FirstOrDefault(difference => difference != 0);
            Assert.True(first >= 0, $"{string.Join(' ', one.Units)} against {string.Join(' ', other.Units.Reverse())}");
        }
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void Prices_in_another_currency_unit_make_the_same_mix(NonNegativeInt seed)
    {
        var problem = Draw(seed, MixGoal.MaximumSurplus);
        var cents =
            problem with { Activities = [.. problem.Activities.Select(activity => activity with { Contribution = activity.Contribution * 100 })] };
        if (BestMix.Of(problem).Found is { } best)
            Assert.Equal(best.Units, BestMix.Of(cents).Value.Units);
    }

    private static ProductMixProblem Draw(NonNegativeInt seed, MixGoal goal) => new RandomMix(seed.Get).Year(2 + seed.Get % 8, seed.Get % 3, goal);
}
