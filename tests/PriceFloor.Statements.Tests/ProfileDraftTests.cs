using Xunit;

namespace PriceFloor.Statements.Tests;

public sealed class ProfileDraftTests
{
    private static readonly ReadyRules s_rules = Bank.Rules(
        Bank.Rule("bench rent", Placement.Business, CostKind.Rent),
        Bank.Rule("insurance", Placement.Business, CostKind.Insurance),
        Bank.Rule("rod and frit", Placement.Business, CostKind.Materials) with { TracedTo = TracedTo.Piece },
        Bank.Rule("tools", Placement.Business, CostKind.Supplies),
        Bank.Rule("phone", Placement.Business, CostKind.Office) with { BusinessShare = 0.4m, Name = "Phone" },
        Bank.Rule("home rent", Placement.Household) with { BusinessShare = 0.12m },
        Bank.Rule("groceries", Placement.Household),
        Bank.Rule("evening class", Placement.OtherIncome) with { Name = "Evening classes" },
        Bank.Rule("payout", Placement.Sale),
        Bank.Rule("sales tax", Placement.SalesTax));

    [Fact]
    public void Seven_months_of_rent_are_twelve_sevenths_of_it_and_a_yearly_bill_stays_one()
    {
        var draft = Bank.Draft(s_rules, Bank.File("current", "2026-01-01", "2026-07-31",
            [.. Bank.EachMonth(1, 7, 5, -540, "Bench rent"), Bank.Line("2026-03-11", -690, "Studio insurance")]));

        Assert.Equal([("Rent", 6480.00m, Reckoned.ByMonths), ("Insurance", 690.00m, Reckoned.OnceAYear)],       // 7 x 540 = 3,780; x 12/7 = 6,480
            draft.Lines.Select(line => (line.Name.Name, Bank.Usd.Round(line.PerYear), line.Reckoned)));
        Assert.Equal([6480.00m, 690.00m], draft.Profile.Expenses.Select(Annual.Amount));
    }

    [Fact]
    public void A_bill_each_quarter_counts_four_times_however_the_months_fall()
    {
        // January, April and July in seven months: by months 3 x 145 x 12/7 = 745.71; it is 4 x 145 = 580.
        var draft = Bank.Draft(s_rules, Bank.File("current", "2026-01-01", "2026-07-31", Bank.Line("2026-01-12", -145, "Tools service"),
            Bank.Line("2026-04-12", -145, "Tools service"), Bank.Line("2026-07-12", -145, "Tools service")));

        var line = Assert.Single(draft.Lines);
        Assert.Equal((580m, Reckoned.ByInterval, 4), (line.PerYear, line.Reckoned, line.TimesAYear));
    }

    [Fact]
    public void A_whole_year_is_taken_as_it_is_and_refunds_are_netted_against_their_heading()
    {
        var draft = Bank.Draft(s_rules, Bank.File("current", "2026-01-01", "2026-12-31", Bank.Line("2026-02-03", -400.10m, "Rod and frit order"),
            Bank.Line("2026-03-09", 60.05m, "Rod and frit refund"), Bank.Line("2026-11-20", -212, "Rod and frit order")));

        var line = Assert.Single(draft.Lines);
        Assert.Equal((552.05m, 60.05m, Reckoned.WholeYear), (line.PerYear, line.Back, line.Reckoned));     // 400.10 - 60.05 + 212.00
        var expense = Assert.Single(draft.Profile.Expenses);
        Assert.Equal((552.05m, Per.Year, CostKind.Materials, TracedTo.Piece), (expense.Amount, expense.Per, expense.CostKind, expense.TracedTo));
    }

    [Fact]
    public void One_month_of_rent_is_monthly_but_one_month_with_insurance_is_not_monthly_insurance()
    {
        var draft = Bank.Draft(s_rules, Bank.File("current", "2026-03-01", "2026-03-31", Bank.Line("2026-03-05", -540, "Bench rent"),
            Bank.Line("2026-03-11", -690, "Studio insurance")));

        Assert.Equal([("Rent", 6480m), ("Insurance", 690m)], draft.Lines.Select(line => (line.Name.Name, line.PerYear)));
    }

    [Fact]
    public void Each_account_is_reckoned_from_its_own_months()
    {
        var draft = Bank.Draft(s_rules,
            Bank.File("current", "2026-01-01", "2026-12-31", [.. Bank.EachMonth(1, 12, 3, -50, "Groceries")]),
            Bank.File("card", "2026-07-01", "2026-12-31", [.. Bank.EachMonth(7, 12, 9, -20, "Groceries")]));

        Assert.Equal(840m, Assert.Single(draft.Lines).PerYear);     // 12 x 50 + 6 x 20 x 12/6
    }

    [Fact]
    public void Shares_go_where_they_belong()
    {
        var draft = Bank.Draft(s_rules, Bank.File("current", "2026-01-01", "2026-12-31",
            [.. Bank.EachMonth(1, 12, 3, -1450, "Home rent"), .. Bank.EachMonth(1, 12, 4, -30, "Phone")]));

        Assert.Equal([("Home rent", 17400.00m, 0.12m), ("Phone, the private part", 216.00m, 0m)],
            draft.Profile.Household.Select(line => (line.Name!, line.Amount, line.BusinessShare)));
        // 12 x 30 = 360: 40 % and the rest
        Assert.Equal([("Phone", 144.00m)], draft.Profile.Expenses.Select(line => (line.Name!, line.Amount)));
    }

    [Fact]
    public void A_single_large_purchase_is_drafted_as_equipment_with_a_life()
    {
        var draft = Bank.Draft(s_rules, Bank.File("current", "2026-01-01", "2026-12-31", Bank.Line("2026-04-14", -3200, "Tools: kiln"),
            Bank.Line("2026-05-02", -58, "Tools"), Bank.Line("2026-06-02", -62, "Tools")));

        Assert.Equal(120, Assert.Single(draft.Lines).PerYear);
        var kiln = Assert.Single(draft.Profile.Equipment);
        Assert.Equal((3200m, Bank.Day("2026-04-14"), 5m, "Supplies, bought 2026-04"),
            (kiln.Cost, kiln.InService, kiln.Depreciation.LifeYears, kiln.Name));
    }

    [Theory]
    [InlineData(-999.99, "alone but small")]
    [InlineData(-1900, "not twice what else is there")]
    public void Other_purchases_stay_expenses(double amount, string why)
    {
        var draft = Bank.Draft(s_rules, Bank.File("current", "2026-01-01", "2026-12-31", Bank.Line("2026-04-14", (decimal)amount, "Tools"),
            Bank.Line("2026-05-02", amount < -1000 ? -950 : -58, "Tools")));

        Assert.True(draft.Bought.Count == 0, why);
        Assert.Empty(draft.Profile.Equipment);
    }

    [Fact]
    public void A_purchase_that_was_paid_back_is_not_equipment()
    {
        var draft = Bank.Draft(s_rules, Bank.File("current", "2026-01-01", "2026-12-31", Bank.Line("2026-04-14", -3200, "Tools: kiln"),
            Bank.Line("2026-04-20", 3200, "Tools: kiln returned")));

        Assert.Empty(draft.Bought);
        Assert.Empty(draft.Profile.Expenses);       // 3,200 out and back is nothing
    }

    [Fact]
    public void More_back_than_paid_is_reported_and_has_no_place_in_the_profile()
    {
        var draft = Bank.Draft(s_rules,
            Bank.File("current", "2026-01-01", "2026-12-31", Bank.Line("2026-04-14", 45, "Studio insurance: premium returned")));

        Assert.Equal(-45, Assert.Single(draft.PaidBack).PerYear);
        Assert.Empty(draft.Profile.Expenses);
    }

    [Fact]
    public void The_stored_profile_lends_what_no_bank_knows()
    {
        var stored = new CostProfile
        {
            Name = "Year 2027",
            Currency = "USD",
            YearStart = Bank.Day("2027-01-01"),
            Calendar = new StudioCalendar { WeeksPerYear = 46, DaysPerWeek = 4, HoursPerDay = 7 },
            Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m },
            Expenses = [new Expense { Name = "Rent", Amount = 500, Per = Per.Month, Deductible = true }],
            OtherIncome = [new OtherIncome { Name = "Evening classes", Amount = 100, Per = Per.Month, Kind = IncomeKind.Net, DaysPerYear = 12 }],
            Equipment = [new Equipment
            {
                Name = "Kiln",
                Cost = 3200,
                InService = Bank.Day("2026-04-01"),
                Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 8 },
            }],
        };
        var sorting = Bank.Sort(s_rules, Bank.File("current", "2026-01-01", "2026-12-31",
            [.. Bank.EachMonth(1, 12, 20, 280, "Evening class"), Bank.Line("2026-04-14", -3200, "Tools: kiln")]));
        var draft = ProfileDraft.Of(sorting, new DraftChoices(stored, null, 1000, 5)).Profile;

        Assert.Equal(("Year 2027", Bank.Day("2027-01-01"), 46m, TaxKind.Flat),
            (draft.Name, draft.YearStart, draft.Calendar.WeeksPerYear, draft.Tax.Kind));
        var income = Assert.Single(draft.OtherIncome);
        Assert.Equal((3360m, IncomeKind.Net, 12m), (income.Amount, income.Kind, income.DaysPerYear));      // 12 x 280
        Assert.Equal(8, Assert.Single(draft.Equipment).Depreciation.LifeYears);     // the same kiln: bought that month at that cost
    }

    [Fact]
    public void Differences_from_the_stored_profile_are_listed_by_heading_largest_first()
    {
        var stored = new CostProfile
        {
            Currency = "USD",
            Calendar = new StudioCalendar { WeeksPerYear = 48, DaysPerWeek = 5, HoursPerDay = 8 },
            Expenses = [new Expense { Name = "Bench", Amount = 500, Per = Per.Month, CostKind = CostKind.Rent },
                new Expense { Amount = 90, Per = Per.Year, CostKind = CostKind.Software }],
            Household = [new HouseholdLine { Name = "Groceries", Amount = 50, Per = Per.Month }],
        };
        var draft = Bank.Draft(s_rules, Bank.File("current", "2026-01-01", "2026-12-31",
            [.. Bank.EachMonth(1, 12, 5, -540, "Bench rent"), .. Bank.EachMonth(1, 12, 6, -50, "Groceries")]));

        // rent 12 x 540 = 6,480 instead of 6,000; no software; groceries are the same and not told
        Assert.Equal([(CostKind.Rent, 6000m, 6480m), (CostKind.Software, 90m, 0m)],
            ProfileDifference.Between(stored, draft.Profile).Select(one => (one.CostKind!.Value, one.Stored, one.Drafted)));
    }

    [Fact]
    public void Money_received_is_listed_by_month_less_the_sales_tax_paid_on()
    {
        var sorting = Bank.Sort(s_rules, Bank.File("current", "2026-01-01", "2026-06-30",
            Bank.Line("2026-01-15", 1200, "Payout"), Bank.Line("2026-01-31", 800.50m, "Payout"), Bank.Line("2026-03-02", -50, "Payout reversed"),
            Bank.Line("2026-04-20", -150, "State sales tax")));
        var received = MoneyReceived.In(sorting);

        Assert.Equal([("2026-01", 2000.50m, 0m), ("2026-03", -50m, 0m), ("2026-04", 0m, 150m)],
            received.Months.Select(month => ($"{month.Month:yyyy-MM}", month.Received, month.SalesTaxPaid)));
        Assert.Equal((1950.50m, 1800.50m, 3601m), (received.Total, received.FromSales, received.PerYear));      // 6 months: x 2
    }

    [Fact]
    public void The_year_drafted_starts_with_the_first_month_covered_at_most_twelve_months_back()
    {
        Assert.Equal(Bank.Day("2026-03-01"), Bank.Draft(s_rules,
            Bank.File("a", null, null, Bank.Line("2026-03-20", -1, "Tools"), Bank.Line("2026-09-20", -1, "Tools"))).Profile.YearStart);
        Assert.Equal(Bank.Day("2026-02-01"), Bank.Draft(s_rules,
            Bank.File("a", null, null, Bank.Line("2024-03-20", -1, "Tools"), Bank.Line("2027-01-20", -1, "Tools"))).Profile.YearStart);
    }
}
