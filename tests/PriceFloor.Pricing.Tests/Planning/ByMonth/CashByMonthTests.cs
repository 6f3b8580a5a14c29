using Xunit;

namespace PriceFloor.Pricing.Tests.Planning.ByMonth;

/// <summary>Worked by hand: 1,200 pieces a year bring 23.00 each, 2,300 a month.</summary>
public sealed class CashByMonthTests
{
    private static readonly decimal[] s_one = [1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];

    [Fact]
    public void A_deposit_comes_before_the_sale_and_the_rest_after_it()
    {
        // 100 pieces in June for 2,300: 30 % in April, 70 % in July.
        var plan = SmallYear.Of(100, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0) with
        {
            Terms = [new PlanTerms { Channel = "stall", DepositShare = 0.3m, DepositMonthsBefore = 2, PaidAfterMonths = 1 }],
        };
        var year = SmallYear.ByMonth(plan);
        Assert.Equal([0, 0, 0, 690, 0, 0, 1610, 0, 0, 0, 0, 0], SmallYear.Each(year, month => month.Receipts));
        Assert.Equal([0, 0, 0, 690, 690, 0, 0, 0, 0, 0, 0, 0], SmallYear.Each(year, month => month.DepositsHeld));
        Assert.Equal(0, year.OwedAtEnd);
    }

    [Fact]
    public void What_is_sold_in_December_on_credit_is_owed_at_the_end()
    {
        var plan = SmallYear.Of(1200) with { Terms = [new PlanTerms { Channel = "stall", PaidAfterMonths = 2 }] };
        var first = SmallYear.ByMonth(plan);
        Assert.Equal([0, 0, 2300], SmallYear.Each(first, month => month.Receipts).Take(3));
        Assert.Equal(4600m, Rounding.Settle(first.OwedAtEnd)); // November and December
        var steady = SmallYear.ByMonth(plan with { Steady = true });
        Assert.Equal(Enumerable.Repeat(2300m, 12), SmallYear.Each(steady, month => month.Receipts)); // last year's November comes in in January
        var owed = SmallYear.ByMonth(plan with { Opening = new Opening { OwedToUs = [new OwedToUs { Month = 2, Amount = 999 }] } });
        Assert.Equal([0, 999, 2300], SmallYear.Each(owed, month => month.Receipts).Take(3));
    }

    [Fact]
    public void Bills_are_paid_in_their_months()
    {
        var profile = SmallYear.Profile with
        {
            Expenses =
            [
                new Expense { Name = "Rent", Amount = 100, Per = Per.Month }, new Expense { Name = "Insurance", Amount = 600, Per = Per.Year },
                new Expense { Name = "Service", Amount = 30, Per = Per.Quarter },
                new Expense { Name = "Glass", Amount = 9, Per = Per.Month, TracedTo = TracedTo.Piece },
            ],
            Household = [new HouseholdLine { Name = "Home", Amount = 52, Per = Per.Week, BusinessShare = 0.25m }],
            OtherIncome = [new OtherIncome { Name = "Class", Amount = 240, Per = Per.Year, Kind = IncomeKind.Net }],
        };
        var year = SmallYear.ByMonth(SmallYear.Of(0) with { PaidIn = [new PaidIn { At = "/expenses/Insurance", Months = [3, 9] }] }, profile);
        Assert.Equal([100, 100, 430, 100, 100, 130, 100, 100, 430, 100, 100, 130], SmallYear.Each(year, month => month.Bills));
        Assert.All(SmallYear.Each(year, month => month.Household), paid => Assert.Equal(225.3333m, paid)); // 52 * 52 / 12, the business share too
        Assert.Equal([240, 0], SmallYear.Each(year, month => month.OtherIncome).Take(2)); // a year's income is assumed to come in month 1
    }

    [Fact]
    public void Equipment_is_paid_when_it_goes_into_use()
    {
        var kiln = new Equipment
        {
            Cost = 2400,
            InService = new DateOnly(2027, 5, 20),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 10 },
        };
        var older = kiln with { InService = new DateOnly(2026, 5, 20) };
        var year = SmallYear.ByMonth(SmallYear.Of(0), SmallYear.Profile with { Equipment = [kiln, older] });
        Assert.Equal([0, 0, 0, 0, 2400, 0, 0, 0, 0, 0, 0, 0], SmallYear.Each(year, month => month.Bought));
    }

    [Fact]
    public void Sales_tax_is_held_until_it_is_paid_on()
    {
        // 10 % on top of 2,300 a month. Paid in March: what was held at the end of February, 40 from before and 460.
        var channel = SmallYear.Stall with { SalesTax = new SalesTax { Rate = 0.1m } };
        var plan = SmallYear.Of(1200) with { SalesTaxPaid = [3], Opening = new Opening { Cash = 40, SalesTaxHeld = 40 } };
        var year = SmallYear.ByMonth(plan, channel: channel);
        Assert.Equal([270, 500, 230, 460], SmallYear.Each(year, month => month.SalesTaxHeld).Take(4));
        Assert.Equal([0, 0, 500, 0], SmallYear.Each(year, month => month.SalesTaxPaid).Take(4));
        Assert.Equal([2270, 4500], SmallYear.Each(year, month => month.Cash).Take(2)); // 40 + 2,300 + 230 - 300 of materials
        Assert.Equal([2000, 4000], SmallYear.Each(year, month => month.Free).Take(2));
        var remitted = SmallYear.ByMonth(plan with { Terms = [new PlanTerms { Channel = "stall", RemittedByChannel = true }] }, channel: channel);
        Assert.Equal([40, 40, 0], SmallYear.Each(remitted, month => month.SalesTaxHeld).Take(3));
    }

    [Fact]
    public void Tax_is_set_aside_as_the_money_is_earned()
    {
        // All 1,000 pieces in January leave 20,000, of which 20 % are tax: 4,000 go into the pot at once. 1,000 are paid in April and in June.
        var profile = SmallYear.Profile with { Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m } };
        var plan = SmallYear.Of(1000, s_one) with
        {
            TaxPaid = [new TaxPayment { Month = 4, Share = 0.25m }, new TaxPayment { Month = 6, Amount = 1000 }],
        };
        var year = SmallYear.ByMonth(plan, profile);
        Assert.Equal([4000, 4000, 4000, 3000, 3000, 2000], SmallYear.Each(year, month => month.Aside).Take(6));
        Assert.Equal(2000m, year.TaxNotCovered); // 4,000 - 25 % - 1,000
    }

    [Fact]
    public void Paid_before_it_is_earned_the_pot_is_below_zero_and_frees_nothing()
    {
        var profile = SmallYear.Profile with { Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m } };
        var plan = SmallYear.Of(1000, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1) with { TaxPaid = [new TaxPayment { Month = 1, Share = 0.5m }] };
        var year = SmallYear.ByMonth(plan, profile);
        Assert.Equal(-2000m, year.Months[0].Aside);
        Assert.Equal(year.Months[0].Cash, year.Months[0].Free);
    }

    [Fact]
    public void The_bridge_names_every_part_and_leaves_no_gap()
    {
        var profile = SmallYear.Profile with
        {
            Expenses = [new Expense { Amount = 10, Per = Per.Month }, new Expense { Amount = 20, Per = Per.Month, Deductible = false }],
            Household = [new HouseholdLine { Amount = 100, Per = Per.Month, BusinessShare = 0.1m }],
        };
        var year = SmallYear.ByMonth(SmallYear.Of(1200) with { Terms = [new PlanTerms { Channel = "stall", PaidAfterMonths = 1 }] }, profile);
        // Profit: 24,000 - 120 - 120 business share = 23,760. Cash: 23,760 + 120 - 1,200 - 240 - 2,300 owed = 20,140, which is
        // 11 * 2,300 - 3,600 of materials - 360 - 1,200.
        var parts = year.Parts.ToDictionary(part => part.Kind, part => Rounding.Settle(part.Amount));
        Assert.Equal((23760m, 120m, -1200m, -240m, -2300m), (parts[CashPartKind.Profit], parts[CashPartKind.BusinessShares],
            parts[CashPartKind.Household], parts[CashPartKind.NotDeductible], parts[CashPartKind.OwedToUs]));
        Assert.Equal((20140m, 20140m), (Rounding.Settle(year.Change), parts.Values.Sum()));
    }

    [Fact]
    public void A_piece_that_leaves_less_than_nothing_takes_tax_out_of_the_pot()
    {
        // Sold for 2.00 with 3.00 of materials: contribution is -1.00 a piece, the year's too, so nothing is set aside.
        var year = SmallYear.ByMonth(SmallYear.Of(120), SmallYear.Profile with { Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m } }, price: 2);
        Assert.All(year.Months, month => Assert.Equal((-10m, 0m), (Rounding.Settle(month.Contribution), month.Aside)));
    }
}
