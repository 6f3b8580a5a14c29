using Xunit;

namespace PriceFloor.Statements.Tests;

public sealed class SortingTests
{
    private static readonly ReadyRules s_rent = Bank.Rules(Bank.Rule("rent", Placement.Business, CostKind.Rent));

    [Fact]
    public void A_line_of_two_overlapping_files_counts_once_by_the_banks_own_id()
    {
        var sorting = Bank.Sort(s_rent,
            Bank.File("current", null, null, Bank.Line("2026-01-05", -540, "Rent January", id: "A1")),
            Bank.File("current", null, null, Bank.Line("2026-01-05", -540, "RENT JAN (booked)", id: "A1"),
                Bank.Line("2026-02-05", -540, "Rent February", id: "A2")));

        Assert.Equal([LineOutcome.Placed, LineOutcome.Duplicate, LineOutcome.Placed], sorting.Outcomes());
        Assert.Equal(0, sorting.Duplicates.ByLikeness);
    }

    [Fact]
    public void Without_an_id_the_same_day_amount_and_words_in_another_file_count_once()
    {
        var sorting = Bank.Sort(s_rent,
            Bank.File("current", null, null, Bank.Line("2026-01-05", -540, "Rent January")),
            Bank.File("current", null, null, Bank.Line("2026-01-05", -540, "Rent January"), Bank.Line("2026-01-05", -541, "Rent January")));

        Assert.Equal([LineOutcome.Placed, LineOutcome.Duplicate, LineOutcome.Placed], sorting.Outcomes());
        Assert.Equal(1, sorting.Duplicates.ByLikeness);
    }

    [Fact]
    public void Two_equal_purchases_in_one_file_are_two_even_if_another_file_has_them_too()
    {
        var sorting = Bank.Sort(s_rent,
            Bank.File("current", null, null, Bank.Line("2026-01-05", -20, "Stall rent"), Bank.Line("2026-01-05", -20, "Stall rent")),
            Bank.File("current", null, null, Bank.Line("2026-01-05", -20, "Stall rent"), Bank.Line("2026-01-05", -20, "Stall rent"),
                Bank.Line("2026-01-05", -20, "Stall rent")));

        // Two in the first file, three in the second: three purchases.
        Assert.Equal([LineOutcome.Placed, LineOutcome.Placed, LineOutcome.Duplicate, LineOutcome.Duplicate, LineOutcome.Placed], sorting.Outcomes());
        Assert.Equal(2, sorting.Duplicates.Repeated);
    }

    [Fact]
    public void The_same_id_in_another_account_is_another_line()
    {
        var sorting = Bank.Sort(s_rent,
            Bank.File("current", null, null, Bank.Line("2026-01-05", -540, "Rent", id: "1")),
            Bank.File("card", null, null, Bank.Line("2026-01-05", -540, "Rent", id: "1")));

        Assert.Equal([LineOutcome.Placed, LineOutcome.Placed], sorting.Outcomes());
    }

    [Fact]
    public void A_bank_that_uses_an_id_again_loses_no_line()
    {
        var sorting = Bank.Sort(s_rent,
            Bank.File("current", null, null, Bank.Line("2026-01-05", -540, "Rent", id: "1"), Bank.Line("2026-02-05", -30, "Rent", id: "1")));

        Assert.Equal([LineOutcome.Placed, LineOutcome.Placed], sorting.Outcomes());
        Assert.Equal(1, sorting.Duplicates.IdsUsedAgain);
    }

    [Fact]
    public void A_cards_monthly_payment_is_paired_and_left_out()
    {
        var sorting = Bank.Sort(s_rent,
            Bank.File("current", null, null, Bank.Line("2026-01-29", -412.60m, "Card settlement")),
            Bank.File("card", null, null, Bank.Line("2026-01-10", -412.60m, "Rent of a stall"),
                Bank.Line("2026-02-02", 412.60m, "Payment received, thank you")));

        Assert.Equal([LineOutcome.Paired, LineOutcome.Placed, LineOutcome.Paired], sorting.Outcomes());
    }

    [Fact]
    public void Six_days_apart_two_equal_amounts_are_no_pair()
    {
        var sorting = Bank.Sort(s_rent,
            Bank.File("current", null, null, Bank.Line("2026-01-01", -100, "Out"), Bank.Line("2026-02-01", -100, "Out")),
            Bank.File("savings", null, null, Bank.Line("2026-01-07", 100, "In"), Bank.Line("2026-02-06", 100, "In")));

        Assert.Equal([LineOutcome.Unplaced, LineOutcome.Paired, LineOutcome.Unplaced, LineOutcome.Paired], sorting.Outcomes());
    }

    [Fact]
    public void Money_out_and_back_in_one_account_is_not_a_pair()
    {
        var sorting = Bank.Sort(s_rent,
            Bank.File("current", null, null, Bank.Line("2026-01-01", -100, "Shop"), Bank.Line("2026-01-03", 100, "Shop")));

        Assert.Equal([LineOutcome.Unplaced, LineOutcome.Unplaced], sorting.Outcomes());
    }

    [Fact]
    public void What_a_rule_calls_an_expense_is_never_paired_away()
    {
        var sorting = Bank.Sort(s_rent, Bank.File("current", null, null, Bank.Line("2026-01-01", -100, "Rent")),
            Bank.File("other", null, null, Bank.Line("2026-01-01", 100, "A sale of the same amount")));

        Assert.Equal([LineOutcome.Placed, LineOutcome.Unplaced], sorting.Outcomes());
    }

    [Fact]
    public void A_transfer_to_an_account_that_is_not_here_is_left_out_by_its_rule()
    {
        var rules = Bank.Rules(Bank.Rule("to savings", Placement.OwnAccount), Bank.Rule("parking fine", Placement.LeaveOut));
        var sorting = Bank.Sort(rules,
            Bank.File("current", null, null, Bank.Line("2026-01-01", -100, "To savings"), Bank.Line("2026-01-02", -50, "Parking fine")));

        Assert.Equal([LineOutcome.OwnAccount, LineOutcome.LeftOut], sorting.Outcomes());
    }

    [Fact]
    public void Foreign_money_is_refused_line_by_line_and_days_outside_are_left_out()
    {
        var sorting = Sorting.Sort(
            [Bank.File("current", null, null, Bank.Line("2026-01-05", -540, "Rent", currency: "EUR"), Bank.Line("2025-12-31", -540, "Rent"),
                Bank.Line("2026-01-05", -540, "Rent", currency: "USD"))],
            s_rent, Bank.Usd, new Period(Bank.Day("2026-01-01"), Bank.Day("2026-12-31")), Bank.Time, CancellationToken.None);

        Assert.Equal([LineOutcome.ForeignCurrency, LineOutcome.OutsidePeriod, LineOutcome.Placed], sorting.Outcomes());
    }

    [Fact]
    public void A_sheet_covers_the_whole_months_of_its_lines_and_a_file_that_says_so_what_it_says()
    {
        var sheet = Bank.File("a", null, null, Bank.Line("2026-01-20", -1, "Rent"), Bank.Line("2026-03-02", -1, "Rent")).Statements[0];
        var told = Bank.File("b", "2026-01-01", "2026-06-30", Bank.Line("2026-01-20", -1, "Rent")).Statements[0];

        Assert.Equal(new Period(Bank.Day("2026-01-01"), Bank.Day("2026-03-31")), Sorting.PeriodOf(sheet));
        Assert.Equal(new Period(Bank.Day("2026-01-01"), Bank.Day("2026-06-30")), Sorting.PeriodOf(told));
    }
}
