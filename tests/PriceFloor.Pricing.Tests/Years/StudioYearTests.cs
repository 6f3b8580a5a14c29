using Xunit;

namespace PriceFloor.Pricing.Tests.Years;

public sealed class StudioYearTests
{
    private static readonly CostProfile s_plain = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = 24000, Per = Per.Year }],
        Household = [new HouseholdLine { Amount = 3000, Per = Per.Month }],
    };

    [Fact]
    public void A_household_line_with_a_business_share_covers_its_kind_of_cost()
    {
        var room = new HouseholdLine { Amount = 1000, Per = Per.Month, BusinessShare = 0.12m, CostKind = CostKind.HomeWorkspace };
        Assert.DoesNotContain(CostKind.HomeWorkspace, Of(s_plain with { Household = [room] }).NotCovered);
        // nothing of it is the business's
        Assert.Contains(CostKind.HomeWorkspace, Of(s_plain with { Household = [room with { BusinessShare = 0 }] }).NotCovered);
        Assert.Contains(CostKind.CarAndTravel, Of(s_plain with { Household = [room with { CostKind = null }] }).NotCovered);
    }

    [Fact]
    public void The_plain_rule() // common practice, no source
    {
        var year = Of(s_plain);
        // 36,000 / 2,000 h = 18
        Assert.Equal((60000m, 1200m, 240m, 30m, 18m), (year.BenchMustEarn, year.PerWeek, year.PerDay, year.PerBenchHour, year.TakeHomePerHour));
    }

    [Theory]
    [InlineData(Per.Week, 5200)]
    [InlineData(Per.Fortnight, 2600)]
    [InlineData(Per.FourWeeks, 1300)]
    [InlineData(Per.Month, 1200)]
    [InlineData(Per.Quarter, 400)]
    [InlineData(Per.Year, 100)]
    [InlineData(Per.Time, 800)]
    public void Bills_run_all_the_year(Per per, int aYear) => Assert.Equal(aYear, new Expense { Amount = 100, Per = per, Times = 8 }.Amount());

    [Fact]
    public void Traced_lines_are_recovered_where_they_are_traced()
    {
        var year = Of(s_plain with
        {
            Expenses = [.. s_plain.Expenses, new Expense { Amount = 1000, Per = Per.Year, TracedTo = TracedTo.Piece },
                new Expense { Amount = 500, Per = Per.Year, TracedTo = TracedTo.Sale }],
        });
        Assert.Equal((61500m, 1500m, 60000m), (year.RequiredRevenue, year.Traced, year.BenchMustEarn));
        Assert.True(year.Traces(TracedTo.Piece) && year.Traces(TracedTo.Sale));
    }

    [Fact]
    public void A_loans_principal_is_paid_out_of_taxed_money()
    {
        // 36,000 + 2,000 principal after a flat tax of 20 %: profit 47,500; to recover 24,000 + 47,500.
        var year = Of(s_plain with
        {
            Expenses = [.. s_plain.Expenses, new Expense { Amount = 2000, Per = Per.Year, Deductible = false, TracedTo = TracedTo.Piece }],
            Tax = Flat(0.2m),
        });
        Assert.Equal((38000m, 38000m, 47500m, 9500m, 71500m, 0m),
            (year.Household, year.Need, year.Profit, year.TaxOnProfit, year.BenchMustEarn, year.Traced));
        Assert.Equal(18m, year.TakeHomePerHour); // the principal does not reach the household
    }

    [Fact]
    public void A_business_share_is_moved_and_never_counted_twice()
    {
        var year = Of(s_plain with { Household = [new HouseholdLine { Amount = 3000, Per = Per.Month, BusinessShare = 0.25m }] });
        Assert.Equal((33000m, 27000m, 60000m), (year.Expenses, year.Household, year.BenchMustEarn));
    }

    [Fact]
    public void Other_income_helps_and_may_take_days()
    {
        // 3,000 net lowers the need; 4,000 taxable lowers what is to recover; 10 days leave 240: 1,920 hours.
        var year = Of(s_plain with
        {
            OtherIncome =
            [
                new OtherIncome { Amount = 3000, Per = Per.Year, Kind = IncomeKind.Net },
                new OtherIncome { Amount = 4000, Per = Per.Year, Kind = IncomeKind.Taxable, DaysPerYear = 10 },
            ],
        });
        Assert.Equal((33000m, 53000m, 240m, 1920m), (year.Need, year.BenchMustEarn, year.Workdays, year.BenchHours));
        Assert.Equal(Rounding.Settle(53000m / 48), Rounding.Settle(year.PerWeek)); // 240 days of a 5-day week are 48 weeks
    }

    [Fact]
    public void Pay_comes_on_top_of_what_the_loan_takes()
    {
        // 40,000 of pay and 2,000 of principal: 42,000, more than the household's 36,000 + 2,000. Net income
        // lowers the household's need, not the pay.
        var year = Of(s_plain with
        {
            Pay = new Pay { Amount = 40000, Per = PayPer.Year },
            Expenses = [.. s_plain.Expenses, new Expense { Amount = 2000, Per = Per.Year, Deductible = false }],
            OtherIncome = [new OtherIncome { Amount = 9000, Per = Per.Year, Kind = IncomeKind.Net }],
        });
        Assert.Equal((38000m, 42000m, 20m), (year.Household, year.Need, year.TakeHomePerHour)); // 40,000 / 2,000 h
    }

    [Fact]
    public void A_household_that_others_pay_for_needs_nothing()
    {
        var year = Of(s_plain with { OtherIncome = [new OtherIncome { Amount = 40000, Per = Per.Year, Kind = IncomeKind.Net }], Tax = Flat(0.2m) });
        Assert.Equal((0m, 0m, 24000m, 0m), (year.Need, year.Profit, year.BenchMustEarn, year.TakeHomePerHour));
    }

    [Fact]
    public void What_equipment_loses_is_an_expense_of_the_year_it_is_lost_in()
    {
        // 3,200 less 200 over 8 years, in use since October: 3 of 12 months of 375 in 2027, counted from the profile's own yearStart.
        var kiln = new Equipment
        {
            Cost = 3200,
            Salvage = 200,
            InService = new DateOnly(2027, 10, 20),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 8 },
        };
        Assert.Equal((93.75m, 60093.75m),
            (Of(s_plain with { Equipment = [kiln] }).Depreciation, Of(s_plain with { Equipment = [kiln] }).BenchMustEarn));
        Assert.Equal(375m, Of(s_plain with { Equipment = [kiln], YearStart = new DateOnly(2028, 1, 1) }).Depreciation);
    }

    [Theory]
    [InlineData(PayPer.Hour, 20, 40000)] // 20 x 2,000 h
    [InlineData(PayPer.Week, 800, 41600)]
    [InlineData(PayPer.Month, 3500, 42000)]
    [InlineData(PayPer.Year, 30000, 36000)] // the household needs more
    public void The_least_pay_counts_whoever_else_pays_for_the_household(PayPer per, int amount, int need) =>
        Assert.Equal(need, Of(s_plain with { Pay = new Pay { Amount = amount, Per = per } }).Need);

    [Fact]
    public void Helpers_bring_hours_and_a_bench_share_takes_them()
    {
        var year = Of(s_plain with { Calendar = s_plain.Calendar with { BenchShare = 0.6m }, Helpers = [new Helper { BenchHoursPerYear = 300 }] });
        Assert.Equal((1500m, 40m), (year.BenchHours, year.PerBenchHour)); // 2,000 x 0.6 + 300
    }

    [Fact]
    public void Taxable_income_above_everything_leaves_no_pool()
    {
        var year = Of(s_plain with { OtherIncome = [new OtherIncome { Amount = 99999, Per = Per.Year, Kind = IncomeKind.Taxable }] });
        Assert.Equal((0m, 0m, 0m), (year.BenchMustEarn, year.RequiredRevenue, year.PerBenchHour));
    }

    [Fact]
    public void A_hundredth_of_an_hour_at_the_bench_is_the_least()
    {
        var led = s_plain with { Calendar = s_plain.Calendar with { BenchShare = 0 } };
        Assert.Equal(0.01m, Of(led with { Helpers = [new Helper { BenchHoursPerYear = 0.01m }] }).BenchHours);
        Assert.Equal("no-bench-time", Faults(led with { Helpers = [new Helper { BenchHoursPerYear = 0.009999m }] }));
    }

    [Fact]
    public void Only_what_is_traced_and_deductible_is_recovered_elsewhere()
    {
        var year = Of(s_plain with
        {
            Expenses = [.. s_plain.Expenses, new Expense { Amount = 2000, Per = Per.Year, Deductible = false, TracedTo = TracedTo.Piece },
                new Expense { Amount = 500, Per = Per.Year, TracedTo = TracedTo.Sale }],
        });
        Assert.Equal((false, true), (year.Traces(TracedTo.Piece), year.Traces(TracedTo.Sale)));
    }

    [Fact]
    public void A_material_has_the_price_of_its_line_or_none()
    {
        var year = Of(
            s_plain with { Materials = [new StockMaterial { Material = "rod", Price = 38 }, new StockMaterial { Material = "frit", Price = 21 }] });
        Assert.Equal((38m, 21m, null), (year.PriceOf("rod"), year.PriceOf("frit"), year.PriceOf("gold")));
    }

    [Fact]
    public void The_profiles_own_year_goes_before_the_one_that_is_asked_about()
    {
        Assert.Equal(new DateOnly(2027, 1, 1), Of(s_plain).YearStart);
        Assert.Equal(new DateOnly(2028, 4, 1), Of(s_plain with { YearStart = new DateOnly(2028, 4, 1) }).YearStart);
    }

    [Fact]
    public void Taxable_income_lightens_what_sales_and_bench_time_must_bring()
    {
        // 24,000 + 1,000 traced + 45,000 of profit (36,000 after 20 %) less 5,000 from elsewhere: sales bring 65,000, of which bench time 64,000.
        var year = Of(s_plain with
        {
            Expenses = [.. s_plain.Expenses, new Expense { Amount = 1000, Per = Per.Year, TracedTo = TracedTo.Piece }],
            OtherIncome = [new OtherIncome { Amount = 5000, Per = Per.Year, Kind = IncomeKind.Taxable }],
            Tax = Flat(0.2m),
        });
        Assert.Equal((65000m, 64000m, 25000m, 24000m), (year.RequiredRevenue, year.BenchMustEarn, year.Expenses, year.Allocated));
    }

    [Fact]
    public void What_no_line_touches_comes_back()
    {
        var year = Of(s_plain with
        {
            Expenses = [new Expense { Amount = 1, Per = Per.Year, CostKind = CostKind.Rent }],
            Equipment =
                [new Equipment { Cost = 1, Depreciation = new DepreciationRule { Method = DepreciationMethod.DecliningBalance, Rate = 0.1m } }],
        });
        Assert.DoesNotContain(CostKind.Rent, year.NotCovered);
        Assert.DoesNotContain(CostKind.Depreciation, year.NotCovered);
        Assert.Equal(Enum.GetValues<CostKind>().Length - 2, year.NotCovered.Count());
    }

    [Fact]
    public void A_year_without_days_or_hours_is_refused()
    {
        Assert.Equal("no-workdays",
            Faults(s_plain with { OtherIncome = [new OtherIncome { Amount = 1, Per = Per.Year, Kind = IncomeKind.Net, DaysPerYear = 250 }] }));
        Assert.Equal("no-bench-time", Faults(s_plain with { Calendar = s_plain.Calendar with { BenchShare = 0 } }));
        Assert.Equal("too-large", Faults(s_plain with
        {
            Calendar = new StudioCalendar { WeeksPerYear = 0.000001m, DaysPerWeek = 0.000001m, HoursPerDay = 1 },
            Helpers = [new Helper { BenchHoursPerYear = 1 }],
            Expenses = [new Expense { Amount = 1_000_000_000_000, Per = Per.Week }, new Expense { Amount = 1_000_000_000_000, Per = Per.Week }],
            Tax = Flat(0.99999999m),
            Household = [new HouseholdLine { Amount = 1_000_000_000_000, Per = Per.Week }],
        }));
    }

    [Fact]
    public void All_that_stands_against_a_year_is_told_together()
    {
        Assert.Equal("marginal-rate", Faults(s_plain with { Tax = Flat(1) }));
        var both = StudioYear.Of(s_plain with { Calendar = s_plain.Calendar with { BenchShare = 0 }, Tax = Flat(1) }, default).Faults;
        Assert.Equal(["no-bench-time", "marginal-rate"], both.Select(fault => fault.Code.Word));
    }

    private static TaxRules Flat(decimal rate) => new() { Kind = TaxKind.Flat, Rate = rate };

    private static StudioYear Of(CostProfile profile) => StudioYear.Of(profile, new DateOnly(2027, 1, 1)).Value;

    private static string Faults(CostProfile profile) => Assert.Single(StudioYear.Of(profile, new DateOnly(2027, 1, 1)).Faults).Code;
}
