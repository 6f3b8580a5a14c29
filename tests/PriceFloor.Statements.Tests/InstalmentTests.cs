using Xunit;

namespace PriceFloor.Statements.Tests;

/// <summary>Bills in fewer than twelve instalments, and income that is already taxed.</summary>
public sealed class InstalmentTests
{
    private static readonly ReadingRule s_council = Bank.Rule("council", Placement.Household) with { Name = "Council tax" };

    private static DraftLine LineOf(ReadingRule rule, params Transaction[] lines) =>
        Assert.Single(Bank.Draft(Bank.Rules(rule), Bank.File("current", "2026-01-01", "2026-07-31", lines)).Lines);

    [Fact]
    public void A_rule_may_say_that_seven_payments_are_seven_of_ten()
    {
        // April to January are ten months of 150: 1,500 a year. Seven of them by months are 7 x 150 x 12/7 = 1,800.
        var line = LineOf(s_council with { TimesAYear = 10 }, Bank.EachMonth(1, 7, 5, -150, "Council tax"));

        Assert.Equal((1500m, Reckoned.ByInterval, 10), (line.PerYear, line.Reckoned, line.TimesAYear));
        Assert.Equal(1800m, Bank.Usd.Round(LineOf(s_council, Bank.EachMonth(1, 7, 5, -150, "Council tax")).PerYear));
    }

    [Fact]
    public void Two_months_of_rest_show_ten_instalments()
    {
        // January, then April to July: five payments. By months 5 x 150 x 12/7 = 1,285.71; it is 10 x 150.
        var line = LineOf(s_council,
            [Bank.Line("2026-01-05", -150, "Council tax"), .. Bank.EachMonth(4, 7, 5, -150, "Council tax")]);

        Assert.Equal((1500m, 10), (line.PerYear, line.TimesAYear));
        // Amounts that are not alike show nothing.
        Assert.Null(LineOf(s_council, [Bank.Line("2026-01-05", -90, "Council tax"), .. Bank.EachMonth(4, 7, 5, -150, "Council tax")]).TimesAYear);
    }

    [Theory]
    [InlineData("Council instalment 3 of 10", 10)]
    [InlineData("Council installment 3/10", 10)]
    [InlineData("Council Rate 3 von 8", 8)]
    [InlineData("Council instalment 3 of 48", null)] // a loan over years is paid each month
    [InlineData("Council 3/10", null)] // may be a date
    public void The_text_may_count_the_instalments(string text, int? timesAYear)
    {
        var line = LineOf(s_council, Bank.EachMonth(1, 7, 5, -150, text));

        Assert.Equal(timesAYear, line.TimesAYear);
        Assert.Equal((timesAYear ?? 12) * 150m, Bank.Usd.Round(line.PerYear));
    }

    [Fact]
    public void A_whole_year_is_what_it_is_whatever_a_rule_says()
    {
        var draft = Bank.Draft(Bank.Rules(s_council with { TimesAYear = 10 }),
            Bank.File("current", "2026-01-01", "2026-12-31", Bank.EachMonth(1, 9, 5, -150, "Council tax")));

        Assert.Equal((1350m, Reckoned.WholeYear), (draft.Lines[0].PerYear, draft.Lines[0].Reckoned)); // 9 x 150
    }

    [Fact]
    public void What_comes_each_week_is_counted_by_days()
    {
        // Four Mondays of 20 are four of 52.
        var line = LineOf(s_council with { TimesAYear = 52 }, Bank.Line("2026-03-02", -20, "Council"), Bank.Line("2026-03-09", -20, "Council"),
            Bank.Line("2026-03-16", -20, "Council"), Bank.Line("2026-03-23", -20, "Council"));

        Assert.Equal(1040m, line.PerYear);
    }

    [Fact]
    public void A_rule_may_say_that_income_is_already_taxed()
    {
        var rules = Bank.Rules(Bank.Rule("wages", Placement.OtherIncome) with { Name = "Job", IncomeKind = IncomeKind.Net },
            Bank.Rule("class", Placement.OtherIncome) with { Name = "Classes" });
        var draft = Bank.Draft(rules, Bank.File("current", "2026-01-01", "2026-12-31", Bank.Line("2026-02-03", 900, "Wages"),
            Bank.Line("2026-02-04", 280, "Class")));

        Assert.Equal([("Job", IncomeKind.Net), ("Classes", IncomeKind.Taxable)],
            draft.Profile.OtherIncome.Select(income => (income.Name!, income.Kind)));
    }
}
