using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Planning;

/// <summary>60,000 to carry in 2,000 hours, with pieces that are sold where nothing is taken.</summary>
public sealed class BestYearTests
{
    private static readonly CostProfile s_profile = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = 60000, Per = Per.Year }],
    };

    private static readonly CostProfile s_withKiln = s_profile with { Limits = [new ResourceLimit { Name = "kiln", LoadsPerYear = 10 }] };

    [Fact]
    public void What_is_kept_back_the_minimum_and_the_market_are_kept_to_and_the_plan_is_reckoned_like_any_other()
    {
        // An hour of studs leaves 30.00, of pendants 25.00. Of 1,600 h 1,000 studs take 1,000 and 300 pendants 600: 30,000 + 15,000, 15,000 short.
        var best = Best(s_profile, 400, [Line("pendant", 120, 50, 100), Line("stud", 60, 30, 0, 1000)]);
        Assert.Equal([300m, 1000m], best.Plan.Lines.Select(line => line.Units));
        Assert.Equal((45_000m, -15_000m, 1600m, 1600m),
            (best.Plan.Contribution, best.Plan.SurplusBeforeTax, best.Plan.BenchHours, best.Plan.HoursAvailable));
        Assert.Null(best.Bound);
        // The pendants' minimum alone: 1,990 h kept back leave 10, of which five pendants take all.
        Assert.Equal([5m, 0m], Best(s_profile, 1990, [Line("pendant", 120, 50, 5), Line("stud", 60, 30)]).Plan.Lines.Select(line => line.Units));
    }

    [Fact]
    public void The_plan_keeps_the_order_of_its_lines_and_keys_decide_between_equals()
    {
        // All leave 30.00 an hour, so the earliest key takes what its market takes: a 500, b 700, and c the 800 h that are left.
        Assert.Equal([800m, 500m, 700m],
            Best(s_profile, 0, [Line("c", 60, 30), Line("a", 60, 30, 0, 500), Line("b", 60, 30, 0, 700)]).Plan.Lines.Select(line => line.Units));
        // Keys are compared by their signs, capitals first, whatever the language of the machine.
        Assert.Equal([0m, 2000m], Best(s_profile, 0, [Line("a", 60, 30), Line("B", 60, 30)]).Plan.Lines.Select(line => line.Units));
    }

    [Fact]
    public void One_more_load_or_hour_is_worked_out_in_money_where_money_is_the_goal()
    {
        // 10 loads of 4 bowls at 90.00 and 1,960 h of studs at 30.00: 3,600 + 58,800. A load more: 4 bowls for 4 studs, 240.00; an hour more: a stud.
        var best = Best(s_withKiln, 0, [Bowl(90), Line("stud", 60, 30)]);
        Assert.Equal([40m, 1960m], best.Plan.Lines.Select(line => line.Units));
        Assert.Equal(
            ["withOneMore1 = 62430", "worthOfOneMore1 = withOneMore1 - contribution", "withOneMore2 = 62640",
                "worthOfOneMore2 = withOneMore2 - contribution"],
            Workings.Of(best).TakeLast(4).Select(line => $"{line.Symbol} = {line.Formula}"));
        var redone = Redone.From(Workings.Of(best.Plan.Year).Concat(Workings.Of(best)));
        Assert.Equal((30m, 240m), (redone["worthOfOneMore1"], redone["worthOfOneMore2"]));
    }

    [Fact]
    public void One_more_load_is_worked_out_in_hours_where_hours_are_the_goal()
    {
        // 3,600 by 40 bowls, the other 56,400 by 1,880 studs: 1,920 h. With a load more 3,960 by 44, 56,040 by 1,868: 1,912 h. More hours save none.
        var best = Best(s_withKiln, 0, [Bowl(90), Line("stud", 60, 30)], MixGoal.FewestHours);
        Assert.Equal([40m, 1880m], best.Plan.Lines.Select(line => line.Units));
        Assert.Equal(
            ["withOneMore1 = 1920", "worthOfOneMore1 = planHours - withOneMore1", "withOneMore2 = 1912",
                "worthOfOneMore2 = planHours - withOneMore2"],
            Workings.Of(best).TakeLast(4).Select(line => $"{line.Symbol} = {line.Formula}"));
        Assert.Equal(8m, Redone.From(Workings.Of(best.Plan.Year).Concat(Workings.Of(best)))["worthOfOneMore2"]);
    }

    [Fact]
    public void A_wanted_surplus_is_carried_too()
    {
        // 60,600 by studs at 30.00: 2,020 h, 20 more than there are; at 31.00 they are 1,954.8, so 1,955.
        var surplus = new Surplus { Amount = 600, Tax = SurplusTax.Before };
        Assert.Equal("infeasible", Assert.Single(Of(s_profile, 0, [Line("stud", 60, 30)], MixGoal.FewestHours, surplus).Faults).Code);
        Assert.Equal(1955m, Of(s_profile, 0, [Line("stud", 60, 31)], MixGoal.FewestHours, surplus).Value.Plan.BenchHours);
    }

    private static OfferedLine Bowl(decimal price) => new("bowl", Check(s_withKiln, new Making
    {
        Steps = [new Step { Name = "torch", HandsOnMinutes = 60 }, new Step { Name = "anneal", HandsOnMinutes = 0, BatchSize = 4, Uses = "kiln" }],
    }, price), 0, null);

    private static OfferedLine Line(string key, decimal minutes, decimal price, decimal least = 0, decimal? most = null) =>
        new(key, Check(s_profile, new Making { MinutesPerPiece = minutes }, price), least, most);

    private static PriceCheck Check(CostProfile profile, Making making, decimal price)
    {
        var piece = UnitCost.Of(new Design { Profile = "main", Making = making }, StudioYear.Of(profile, default).Value).Value;
        return ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(new Channel { Sells = Sells.Wholesale, Currency = "USD" }).Value)
            .Value.Check(price).Value;
    }

    private static BestYear Best(CostProfile profile, decimal keptBack, OfferedLine[] lines, MixGoal goal = MixGoal.MaximumSurplus) =>
        Of(profile, keptBack, lines, goal, null).Value;

    private static Outcome<BestYear> Of(CostProfile profile, decimal keptBack, OfferedLine[] lines, MixGoal goal, Surplus? surplus) =>
        BestYear.Of(StudioYear.Of(profile, default).Value, lines, surplus, keptBack, goal);
}
