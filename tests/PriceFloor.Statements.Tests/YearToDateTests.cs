using Xunit;

namespace PriceFloor.Statements.Tests;

/// <summary>What the year has brought so far, and what its rest must bring.</summary>
public sealed class YearToDateTests
{
    private static readonly ReadyRules s_rules = Bank.Rules(Bank.Rule("payout", Placement.Sale));

    [Fact]
    public void The_pace_says_what_the_rest_of_the_year_must_bring()
    {
        // 73 of 365 days are a fifth; 12,000 a year is needed.
        var profile = new CostProfile
        {
            Currency = "USD",
            YearStart = Bank.Day("2026-01-01"),
            Calendar = new StudioCalendar { WeeksPerYear = 45, DaysPerWeek = 5, HoursPerDay = 8 },
            Expenses = [new Expense { Amount = 12000, Per = Per.Year }],
        };
        var pace = YearToDate.Of(StudioYear.Of(profile, default).Value,
            Bank.Draft(s_rules, Bank.File("current", "2026-01-01", "2026-03-14", Bank.Line("2026-02-01", 3000, "Payout"))))!;

        Assert.Equal((0.2m, 2400m, 3000m, 9000m), (pace.Elapsed, pace.RequiredToDate, pace.IncomeToDate, pace.StillToBring));
        Assert.Equal((36m, 250m, true), (pace.WeeksLeft, pace.PerWeekLeft, pace.IsWhole));      // 45 x 0.8 weeks; 9,000 over 36
    }

    [Fact]
    public void Fees_that_shops_keep_back_need_not_reach_the_accounts()
    {
        var profile = new CostProfile
        {
            Currency = "USD",
            YearStart = Bank.Day("2026-01-01"),
            Calendar = new StudioCalendar { WeeksPerYear = 45, DaysPerWeek = 5, HoursPerDay = 8 },
            Expenses = [new Expense { Amount = 12000, Per = Per.Year },
                new Expense { Amount = 100, Per = Per.Month, CostKind = CostKind.CommissionsAndFees, TracedTo = TracedTo.Sale }],
        };
        var rules = Bank.Rules(Bank.Rule("payout", Placement.Sale), Bank.Rule("card fee", Placement.Business, CostKind.CommissionsAndFees));
        var pace = YearToDate.Of(StudioYear.Of(profile, default).Value, Bank.Draft(rules,
            Bank.File("current", "2026-01-01", "2026-12-31", Bank.Line("2026-02-01", 9000, "Payout"), Bank.Line("2026-03-01", -300, "Card fee"))))!;

        // 13,200 a year; of 1,200 fees 300 were seen in the account and 900 were kept back.
        Assert.Equal((900m, 12300m, 3300m), (pace.KeptBack, pace.RequiredRevenue, pace.StillToBring));
    }

    [Fact]
    public void A_year_outside_the_files_has_no_pace_and_one_with_a_gap_is_reported()
    {
        var profile = new CostProfile
        {
            Currency = "USD",
            YearStart = Bank.Day("2026-01-01"),
            Calendar = new StudioCalendar { WeeksPerYear = 45, DaysPerWeek = 5, HoursPerDay = 8 },
        };
        var year = StudioYear.Of(profile, default).Value;

        Assert.Null(YearToDate.Of(year,
            Bank.Draft(s_rules, Bank.File("current", "2025-01-01", "2025-12-31", Bank.Line("2025-02-01", 3000, "Payout")))));
        Assert.False(YearToDate.Of(year, Bank.Draft(s_rules, Bank.File("current", "2026-01-01", "2026-01-31"),
            Bank.File("current", "2026-03-01", "2026-03-31", Bank.Line("2026-03-01", 3000, "Payout"))))!.IsWhole);
    }
}
