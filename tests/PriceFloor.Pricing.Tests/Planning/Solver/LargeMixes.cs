using Xunit;

namespace PriceFloor.Pricing.Tests.Planning.Solver;

/// <summary>Years of many lines. The search's effort is counted, not timed, so what is proven here is proven everywhere.</summary>
public sealed class LargeMixes
{
    [Theory]
    [InlineData(MixGoal.MaximumSurplus)]
    [InlineData(MixGoal.FewestHours)]
    public void A_year_of_fifty_lines_with_a_kiln_is_proven(MixGoal goal)
    {
        for (var seed = 0; seed < 20; seed++)
            if (BestMix.Of(new RandomMix(300 + seed).Year(50, 1, goal)).Found is { } best)
                Assert.True(best.Proven && best.Uses.All(use => use.WorthOfOneMore >= 0), $"seed {seed}");
    }

    [Fact]
    public void A_year_of_five_hundred_lines_is_proven_and_cannot_be_bettered_by_an_exchange()
    {
        var problem = new RandomMix(17).Year(500, 1, MixGoal.MaximumSurplus);
        var best = BestMix.Of(problem).Value;
        Assert.True(best.Proven);
        for (var i = 0; i < 500; i++)
            for (var j = 0; j < 500; j++)
            {
                decimal[] units = [.. best.Units];
                units[i]++;
                units[j]--;
                if (i != j && units[j] >= problem.Activities[j].Minimum && !(units[i] > problem.Activities[i].Maximum)
                        && problem.Activities[i].Contribution > problem.Activities[j].Contribution)
                    Assert.False(Enumeration.Fits(problem, units), $"one more of {i} for one less of {j}");
            }
    }

    [Fact]
    public void Five_hundred_lines_that_are_all_alike_are_filled_in_order()
    {
        // 7 hours at 0.7 each are 10 pieces; at most 3 of a line.
        var best = BestMix.Of(Lines.Most(7, [.. Enumerable.Repeat(Lines.Line(10, 0.7m, most: 3), 500)])).Value;
        Assert.True(best.Proven);
        Assert.Equal([3m, 3m, 3m, 1m, 0m], best.Units.Take(5));
        Assert.Equal(10m, best.Units.Sum());
    }

    [Fact]
    public void Where_the_search_gives_up_it_says_what_no_mix_can_better()
    {
        // Lines priced at their floors all leave nearly the same an hour, and the last hundredth of an hour is then very hard to prove.
        var problem = new RandomMix(10).NearlyAlike(50);
        var best = BestMix.Of(problem).Value;
        Assert.False(best.Proven);
        Assert.Null(best.AtMost);
        Assert.InRange(best.AtLeast!.Value, best.Hours - 0.1m, best.Hours);
        Assert.True(best.AtLeast < best.Hours); // what is not proven may still be bettered
        Assert.All(best.Uses, use => Assert.Null(use.WorthOfOneMore));
        Assert.True(Enumeration.Fits(problem, best.Units) && Enumeration.Contribution(problem, best.Units).Reaches(problem.RequiredContribution));
    }

    [Fact]
    public void Where_it_cannot_tell_whether_a_mix_carries_the_pool_it_claims_neither()
    {
        var problem = new RandomMix(10).NearlyAlike(500);
        var most = BestMix.Of(problem with { Goal = MixGoal.MaximumSurplus }).Value;
        Assert.False(most.Proven);
        Assert.Null(most.AtLeast);
        Assert.InRange(most.AtMost!.Value, most.Contribution, most.Contribution + 1);
        Assert.True(most.AtMost > most.Contribution);
        Assert.Equal("undecided", Assert.Single(BestMix.Of(problem with { RequiredContribution = most.AtMost.Value }).Faults).Code);
        Assert.Equal("infeasible", Assert.Single(BestMix.Of(problem with { RequiredContribution = most.AtMost.Value + 0.01m }).Faults).Code);
    }

    [Fact]
    public void What_no_year_can_better_is_told_as_a_surplus()
    {
        // The same lines as pieces of a year that has to carry 30,000: what no mix leaves more than, less those.
        var problem = new RandomMix(10).NearlyAlike(500);
        var year = StudioYear.Of(
            new CostProfile
            {
                Currency = "USD",
                Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8, BenchShare = 0 },
                Helpers = [new Helper { BenchHoursPerYear = problem.Hours }],
                Expenses = [new Expense { Amount = 30_000, Per = Per.Year }],
                Limits = [new ResourceLimit { Name = "kiln", LoadsPerYear = problem.Resources[0].Loads }],
            },
            default).Value;
        var best = BestYear.Of(year,
            [.. problem.Activities.Select((activity, i) => new OfferedLine($"{i:000}", Check(year, activity), 0, activity.Maximum))], null, 0,
            MixGoal.MaximumSurplus).Value;
        Assert.False(best.Mix.Proven);
        Assert.InRange(best.Bound!.Value, best.Plan.SurplusBeforeTax, best.Plan.SurplusBeforeTax + 1);
    }

    private static PriceCheck Check(StudioYear year, Activity activity)
    {
        var making = new Making
        {
            Steps = [new Step { HandsOnMinutes = activity.Hours * 60 },
                new Step { HandsOnMinutes = 0, BatchSize = 1 / activity.Loads[0], Uses = "kiln" }],
        };
        var floor = FloorPrice.Of(UnitCost.Of(new Design { Profile = "main", Making = making }, year).Value, null).Value;
        return ChannelPrices.Of(floor, SellingTerms.Of(new Channel { Sells = Sells.Wholesale, Currency = "USD" }).Value)
            .Value.Check(activity.Contribution).Value;
    }
}
