using Xunit;

namespace PriceFloor.Pricing.Tests.Planning;

/// <summary>
/// Selling hours and stalls in plans: 2,000 working hours, 0.8 of them at the bench and 0.1 selling, 54,000 to
/// bring in. 1,800 carrying hours at 30.00.
/// </summary>
public sealed class SellingInPlansTests
{
    private static readonly StudioYear s_year = StudioYear.Of(new CostProfile
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8, BenchShare = 0.8m, SellingShare = 0.1m },
        Expenses = [new Expense { Amount = 54000, Per = Per.Year }],
    }, default).Value;

    private static readonly Channel s_web =
        new() { Sells = Sells.Retail, Currency = "USD", Selling = new SellingTime { MinutesPerPiece = 12 } };

    private static readonly Channel s_fair =
        new() { Sells = Sells.Retail, Currency = "USD", Stall = new Stall { Pieces = 30, Hours = 9, TimesAYear = 4 } };

    private static readonly Channel s_shops = new() { Sells = Sells.Wholesale, Currency = "USD" };

    [Fact]
    public void A_plan_counts_the_hours_of_selling_and_the_stalls_of_each_channel()
    {
        // 500 x 0.2 h and 130 x 9/30 h are 139 h of 200. 130 pieces at 30 a stall take 5 stalls, of which there are 4: 120 pieces.
        var plan = Plan((s_web, 40, 500), (s_fair, 40, 100), (s_shops, 30, 300), (s_fair, 45, 30));
        Assert.Equal((139m, 200m, true), (plan.SellingHours, plan.Year.SellingHours, plan.WithinSellingHours));
        var stalls = Assert.Single(plan.Stalls);
        Assert.Equal((5m, 130m, 120m, false), (stalls.Stalls, stalls.Units, stalls.MostUnits, stalls.Within));
        Assert.Equal([1, 3], stalls.Lines);
        Assert.Equal(["more-stalls-than-there-are /lines/1/channel/stall/timesAYear"],
            Warnings.In(plan).Select(warning => $"{warning.Code} {warning.Pointer}"));
        Assert.Equal([100m, 30m, 0m, 9m], plan.Lines.Select(line => line.SellingHours));
    }

    [Fact]
    public void More_selling_than_there_are_hours_for_is_warned_about_and_without_a_share_nothing_is()
    {
        var plan = Plan((s_web, 40, 1001));
        Assert.Equal((200.2m, false), (plan.SellingHours, plan.WithinSellingHours));
        Assert.Equal(["selling-hours-short /profile/calendar/sellingShare"],
            Warnings.In(plan).Select(warning => $"{warning.Code} {warning.Pointer}"));
        var all = s_year.Profile with { Calendar = s_year.Profile.Calendar with { SellingShare = 0 } };
        var without = YearPlan.Of(StudioYear.Of(all, default).Value, plan.Lines, null, 0).Value;
        Assert.True(without.WithinSellingHours);
        Assert.Empty(Warnings.In(without));
    }

    [Fact]
    public void A_stall_without_a_number_a_year_may_be_held_as_often_as_it_takes()
    {
        var plan = Plan((s_fair with { Stall = s_fair.Stall! with { TimesAYear = null } }, 40, 1000));
        Assert.Equal((34m, null, true), (plan.Stalls[0].Stalls, plan.Stalls[0].MostUnits, plan.Stalls[0].Within));
    }

    [Fact]
    public void The_best_plan_never_takes_more_stalls_or_selling_hours_than_there_are()
    {
        // An hour a piece of 1,600. The web leaves most: 200 h of selling. At 12 min a piece and 18 at a fair, whose 120 pieces leave 60.00 each:
        // 120 x 0.3 = 36 h, and 164 / 0.2 = 820 web pieces at 50.00; the other 660 hours go to shops at 35.00.
        OfferedLine[] lines = [Offer("fair", s_fair, 60), Offer("shops", s_shops, 35), Offer("web", s_web, 50)];
        var best = BestYear.Of(s_year, lines, null, 0, MixGoal.MaximumSurplus).Value;
        Assert.Equal([120m, 660m, 820m], best.Plan.Lines.Select(line => line.Units));
        Assert.Equal([LimitKind.SellingHours, LimitKind.StallPieces], best.Resources.Select(one => one.Kind));
        Assert.Empty(Warnings.In(best.Plan));
        // One more hour of selling lets 5 pieces go from shops to the web: 75.00. One more piece at a fair takes
        // 0.3 h of selling, 1.5 pieces of the web.
        Assert.Equal([35m, 75m], best.Mix.Uses.Take(2).Select(use => use.WorthOfOneMore));
        // No stall this year: nothing is sold there.
        var none = s_fair with { Stall = s_fair.Stall! with { TimesAYear = 0 } };
        var without = BestYear.Of(s_year, [Offer("fair", none, 60), lines[1], lines[2]], null, 0, MixGoal.MaximumSurplus).Value;
        Assert.Equal([0m, 600m, 1000m], without.Plan.Lines.Select(line => line.Units));
        // A minimum that takes more than there is says so in words.
        var fault = Assert.Single(BestYear.Of(s_year, [Offer("fair", s_fair, 60, 121)], null, 0, MixGoal.MaximumSurplus).Faults);
        Assert.Contains("121 pieces at the year's stalls where there are 120", fault.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Its_workings_can_be_redone()
    {
        var plan = Plan((s_web, 40, 500), (s_fair, 40, 130));
        var known = Properties.Redone.From(Workings.Of(plan.Year).Concat(Workings.Of(plan)));
        Assert.Equal((139m, 5m), (known["planSellingHours"], known["stalls1"]));
    }

    private static YearPlan Plan(params (Channel Channel, decimal Price, decimal Units)[] lines) =>
        YearPlan.Of(s_year, [.. lines.Select(line => new PlannedLine(Check(line.Channel, line.Price), line.Units))], null, 0).Value;

    private static OfferedLine Offer(string key, Channel channel, decimal price, decimal least = 0) => new(key, Check(channel, price), least, null);

    private static PriceCheck Check(Channel channel, decimal price)
    {
        var piece = UnitCost.Of(new Design { Profile = "main", Making = new Making { MinutesPerPiece = 60 } }, s_year).Value;
        return ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(channel).Value).Value.Check(price).Value;
    }
}
