using Xunit;
using static PriceFloor.Pricing.Tests.Planning.RemedyStudio;

namespace PriceFloor.Pricing.Tests.Planning;

/// <summary>How far more hours at the bench fix a price, and where they end.</summary>
public sealed class RemedyHoursTests
{
    private static readonly CostProfile s_profile = AtTwentyFour;

    private static readonly Making s_hour = AnHour;

    [Fact]
    public void Forty_eight_hours_a_week_are_the_last_that_are_offered()
    {
        // An hour at 24.00 sold at 20.00 takes 40 x 24 / 20 = 48 hours a week; at 19.99 they are 48.03.
        Assert.Equal((48m, null), (Way(Remedies.Of(Check(s_profile, s_hour, 0, 20)).Value, RemedyKind.MoreHours).After,
            Way(Remedies.Of(Check(s_profile, s_hour, 0, 20)).Value, RemedyKind.MoreHours).Flag));
        Assert.Equal((48.03m, "long-week"), (Way(Remedies.Of(Check(s_profile, s_hour, 0, 19.99m)).Value, RemedyKind.MoreHours).After,
            Way(Remedies.Of(Check(s_profile, s_hour, 0, 19.99m)).Value, RemedyKind.MoreHours).Flag?.Word));
    }

    [Fact]
    public void Where_pay_per_hour_decides_the_need_more_hours_cannot_close_the_gap()
    {
        // Rent 12,000 and 20.00 for each of 2,000 hours: 52,000, so 26.00 an hour. At 24.00 each further hour
        // brings 24.00 of which 20.00 is its own pay.
        var paid = s_profile with { Expenses = [new Expense { Amount = 12000, Per = Per.Year }], Pay = new Pay { Amount = 20, Per = PayPer.Hour } };
        var hours = Way(Remedies.Of(Check(paid, s_hour, 0, 24)).Value, RemedyKind.MoreHours);
        Assert.Equal((40m, null, "pay-decides"), (hours.Before, hours.After, hours.Reason?.Word));
        // Pay by the week is the same money for longer weeks: 52 x 769.2307... = 40,000.
        var weekly = paid with { Pay = new Pay { Amount = 40000m / 52, Per = PayPer.Week } };
        Assert.Equal(43.34m, Way(Remedies.Of(Check(weekly, s_hour, 0, 24)).Value, RemedyKind.MoreHours).After); // 40 x 26 / 24 = 43.3333
    }

    [Fact]
    public void Pay_per_hour_below_the_need_allows_more_hours_until_it_decides()
    {
        // Rent 12,000 and a household of 40,000 at 2,000 hours: 26.00. At 24.00 it takes 43.34 hours a week, 2,167 a year: pay of 18.45 asks for
        // 39,981.15 of them, 18.46 for 40,002.82.
        var lived = s_profile with
        {
            Expenses = [new Expense { Amount = 12000, Per = Per.Year }],
            Household = [new HouseholdLine { Amount = 40000, Per = Per.Year }],
        };
        Assert.Equal(43.34m, More(18.45m).After);
        Assert.Equal("pay-decides", More(18.46m).Reason);

        Remedy More(decimal pay) =>
            Way(Remedies.Of(Check(lived with { Pay = new Pay { Amount = pay, Per = PayPer.Hour } }, s_hour, 0, 24)).Value, RemedyKind.MoreHours);
    }

    [Fact]
    public void No_more_hours_are_answered_than_a_day_has()
    {
        // 40 hours at 24.00: at 8.00 they would have to be 120 a week, 24 on each of five days; at 7.99 they are 120.16.
        Assert.Equal(120m, Way(Remedies.Of(Check(s_profile, s_hour, 0, 8)).Value, RemedyKind.MoreHours).After);
        Assert.Equal((null, "longer-than-a-day"), (Way(Remedies.Of(Check(s_profile, s_hour, 0, 7.99m)).Value, RemedyKind.MoreHours).After,
            Way(Remedies.Of(Check(s_profile, s_hour, 0, 7.99m)).Value, RemedyKind.MoreHours).Reason?.Word));
    }

    [Fact]
    public void Helpers_hours_count_before_the_maker_works_longer()
    {
        // 2,000 h of the maker's and 400 of helpers' carry 57,600 at 24.00. At 22.50 it takes 57,600 / 22.50 = 2,560
        // h: 2,160 of the maker's, 43.2 a week.
        var helped =
            s_profile with { Expenses = [new Expense { Amount = 57600, Per = Per.Year }], Helpers = [new Helper { BenchHoursPerYear = 400 }] };
        var remedies = Remedies.Of(Check(helped, s_hour, 0, 22.50m)).Value;
        Assert.Equal((40m, 43.2m), (Way(remedies, RemedyKind.MoreHours).Before, Way(remedies, RemedyKind.MoreHours).After));
        Assert.Equal("(benchMustEarn * benchHours / room - 400) * 5 / (workdays * 1)",
            Workings.Of(remedies).Single(line => line.Symbol == "weekHours").Formula);
        Assert.Equal("benchMustEarn * benchHours / room * 5 / (workdays * 1)",
            Workings.Of(Remedies.Of(Check(s_profile, s_hour, 0, 22.50m)).Value).Single(line => line.Symbol == "weekHours").Formula);
        var longer = StudioYear.Of(helped with { Calendar = helped.Calendar with { HoursPerDay = 43.2m / 5 } }, default).Value;
        Assert.Equal(22.50m, longer.PerBenchHour);
    }

    [Fact]
    public void A_maker_who_is_never_at_the_bench_makes_no_more_in_a_longer_day()
    {
        var led = s_profile with { Calendar = s_profile.Calendar with { BenchShare = 0 }, Helpers = [new Helper { BenchHoursPerYear = 2000 }] };
        Assert.Equal("no-bench-share", Way(Remedies.Of(Check(led, s_hour, 0, 20)).Value, RemedyKind.MoreHours).Reason);
    }
}
