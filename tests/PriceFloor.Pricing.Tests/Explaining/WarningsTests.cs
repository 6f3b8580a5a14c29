using Xunit;

namespace PriceFloor.Pricing.Tests.Explaining;

public sealed class WarningsTests
{
    private static readonly DateOnly s_today = new(2027, 6, 1);

    private static readonly CostProfile s_quiet = QuietStudio.Profile;

    [Fact]
    public void A_careful_profile_is_quiet() => Assert.Empty(Of(s_quiet));

    [Fact]
    public void A_draft_from_statements_lacks_the_hours_and_the_tax_until_it_has_them()
    {
        var draft = s_quiet with
        {
            DraftedFrom = DraftSource.Statements,
            Calendar = s_quiet.Calendar with { BenchShare = 1 },
            Tax = new TaxRules { Kind = TaxKind.None },
        };
        Assert.Equal(["draft-unfinished /profile/calendar/benchShare", "draft-unfinished /profile/tax"], Of(draft));
        Assert.Equal(["draft-unfinished /profile/tax"], Of(draft with { Calendar = draft.Calendar with { BenchShare = 0.6m } }));
        Assert.Equal(["draft-unfinished /profile/calendar/benchShare"], Of(draft with { Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m } }));
        Assert.Empty(Of(draft with { DraftedFrom = null })); // the maker says that it is so
    }

    [Fact]
    public void Wages_without_hours()
    {
        var wages =
            s_quiet with { Expenses = [.. s_quiet.Expenses, new Expense { Amount = 1, Per = Per.Year, CostKind = CostKind.WagesAndBenefits }] };
        Assert.Equal(["wages-without-helpers /profile/expenses/1"], Of(wages));
        Assert.Empty(Of(wages with { Helpers = [new Helper { BenchHoursPerYear = 100 }] }));
    }

    [Fact]
    public void A_life_that_is_over_and_a_year_that_is()
    {
        var kiln = new Equipment
        {
            Cost = 100,
            InService = new DateOnly(2017, 1, 1),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 10 },
        };
        Assert.Equal(["life-over /profile/equipment/0"], Of(s_quiet with { Equipment = [kiln] }));
        Assert.Empty(Of(s_quiet with { Equipment = [kiln with { InService = new DateOnly(2017, 2, 1) }] }));
        Assert.Equal(["year-over /profile/yearStart"], Of(s_quiet with { YearStart = new DateOnly(2026, 6, 15) }));
        Assert.Empty(Of(s_quiet with { YearStart = new DateOnly(2026, 7, 1) }));
    }

    [Fact]
    public void What_is_written_off_is_called_by_its_name()
    {
        var kiln = new Equipment
        {
            Name = "Kiln",
            Cost = 100,
            InService = new DateOnly(2017, 1, 1),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 10 },
        };
        var year = StudioYear.Of(s_quiet with { Equipment = [kiln, kiln with { Name = null }] }, default).Value;
        Assert.Equal(["Kiln is written off", "This equipment is written off"],
            Warnings.In(year, s_today).Select(warning => warning.Message[..warning.Message.IndexOf(';', StringComparison.Ordinal)]));
    }

    [Theory]
    [InlineData("0.5,0.5", 2025, true)] // 2027 is its third year, and the table has two
    [InlineData("0.5,0,0.5", 2026, false)] // nothing in its second year, but half in its third
    [InlineData("0.5,0,0.5", 2025, false)]
    [InlineData("0.5,0,0.5", 2024, true)]
    [InlineData("0.5,0.5,0,0", 2025, true)] // nothing now and nothing to come
    public void A_table_is_over_after_its_last_entry(string table, int since, bool isOver)
    {
        var percentages = table.Split(',').Select(share => decimal.Parse(share, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        var kiln = new Equipment
        {
            Cost = 100,
            InService = new DateOnly(since, 1, 1),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.Percentages, Percentages = percentages },
        };
        Assert.Equal(isOver ? ["life-over /profile/equipment/0"] : [], Of(s_quiet with { Equipment = [kiln] }));
    }

    [Fact]
    public void Time_that_nobody_pays()
    {
        Assert.Equal(["unpaid-time /profile/pay"], Of(s_quiet with { Household = [] }));
        Assert.Empty(Of(s_quiet with { Household = [], Pay = new Pay { Amount = 10, Per = PayPer.Hour } }));
    }

    [Fact]
    public void A_loan_beside_what_it_bought_and_a_trace_without_effect()
    {
        var loan = new Expense { Amount = 100, Per = Per.Month, CostKind = CostKind.InterestAndLoans, Deductible = false };
        var kiln = new Equipment { Cost = 100, Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 10 } };
        Assert.Empty(Of(s_quiet with { Expenses = [loan] }));
        Assert.Empty(Of(s_quiet with { Expenses = [loan with { Deductible = true }], Equipment = [kiln] })); // interest, which bought nothing
        Assert.Empty(Of(s_quiet with { Expenses = [loan with { CostKind = CostKind.Other }], Equipment = [kiln] }));
        Assert.Equal(["financed-asset-twice /profile/expenses/0"], Of(s_quiet with { Expenses = [loan], Equipment = [kiln] }));
        Assert.Equal(["traced-not-deductible /profile/expenses/0/tracedTo"],
            Of(s_quiet with { Expenses = [loan with { TracedTo = TracedTo.Sale }] }));
    }

    [Fact]
    public void Materials_counted_twice_or_nowhere()
    {
        var traced = s_quiet with { Expenses = [new Expense { Amount = 1, Per = Per.Year, TracedTo = TracedTo.Piece }] };
        Assert.Equal(["materials-not-traced"], OfPiece(s_quiet, new MaterialLine { Amount = 1 }));
        Assert.Equal(["traced-materials-unused"], OfPiece(traced));
        Assert.Empty(OfPiece(traced, new MaterialLine { Amount = 1 }));
        Assert.Empty(OfPiece(s_quiet));
    }

    [Fact]
    public void Defaults_that_lower_a_floor_are_owned_up_to()
    {
        var bare = StudioYear.Of(s_quiet with { Calendar = s_quiet.Calendar with { BenchShare = 1 } }, default).Value;
        Assert.Equal(["/profile/calendar/benchShare", "/profile/calendar/normalUse", "/profile/tax"],
            Assumed.In(bare.Profile).Select(one => one.Pointer));
        Assert.Empty(Assumed.In(s_quiet with
        {
            Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0 },
            Calendar = s_quiet.Calendar with { NormalUse = 0.9m },
        }));

        var design = new Design
        {
            Profile = "main",
            Making = new Making { Steps = [new Step { HandsOnMinutes = 1, GoodShare = 0.9m }, new Step { HandsOnMinutes = 1 }] },
            Materials = [new MaterialLine { Amount = 1 }, new MaterialLine { Material = "rod", Quantity = 1 }],
        };
        var year = StudioYear.Of(s_quiet with { Materials = [new StockMaterial { Material = "rod", Price = 1 }] }, default).Value;
        Assert.Equal(["/profile/soldShare", "/design/making/steps/1/goodShare", "/design/materials/1/wasteShare"],
            Assumed.In(UnitCost.Of(design, year).Value).Select(one => one.Pointer));
        Assert.Equal(["/channel/usualDiscount", "/channel/lossShare", "/channel/salesTax", "/channel/returns", "/channel/selling"],
            Assumed.In(new Channel { Sells = Sells.Retail, Currency = "USD" }, "/channel").Select(one => one.Pointer));
    }

    [Fact]
    public void A_long_week_is_one_of_more_than_48_hours()
    {
        Assert.Equal(["long-week /profile/calendar"], Of(s_quiet with { Calendar = s_quiet.Calendar with { DaysPerWeek = 6, HoursPerDay = 8.25m } }));
        Assert.Empty(Of(s_quiet with { Calendar = s_quiet.Calendar with { DaysPerWeek = 6, HoursPerDay = 8 } }));
    }

    [Fact]
    public void Seconds_that_would_make_better_yield_dearer()
    {
        // 24,000 + 36,000 over 240 days of 8 x 0.6 h: 52.083 an hour, so a start of 60 min costs 52.083 and half
        // of the lost ones bring half the price.
        Assert.Equal(["seconds-pay-more-than-they-cost /design/seconds/price"], OfSeconds(104.17m, 0.8m));
        Assert.Empty(OfSeconds(104.16m, 0.8m));
        Assert.Empty(OfSeconds(500, 1)); // nothing is lost, so nothing is sold as a second

        static IEnumerable<string> OfSeconds(decimal price, decimal good) =>
            Warnings.In(UnitCost.Of(new Design
            {
                Profile = "main",
                Making = new Making { MinutesPerPiece = 60, GoodShare = good },
                Seconds = new Seconds { Share = 0.5m, Price = price },
            }, StudioYear.Of(s_quiet, default).Value).Value)
                .Select(warning => $"{warning.Code} {warning.Pointer}");
    }

    [Fact]
    public void A_price_off_the_grid()
    {
        var warning = Assert.Single(Warnings.In(12.50m, new PriceGrid(1, 0.95m)));
        Assert.Equal(("not-an-allowed-price", "/price"), (warning.Code, warning.Pointer));
        Assert.Empty(Warnings.In(12.95m, new PriceGrid(1, 0.95m)));
    }

    [Fact]
    public void Everything_at_once_is_said_one_by_one()
    {
        var profile = s_quiet with
        {
            YearStart = new DateOnly(2025, 1, 1),
            Calendar = s_quiet.Calendar with { DaysPerWeek = 7 },
            Household = [],
            Expenses =
            [
                new Expense { Amount = 1, Per = Per.Year, CostKind = CostKind.WagesAndBenefits },
                new Expense { Amount = 1, Per = Per.Year, CostKind = CostKind.InterestAndLoans, Deductible = false, TracedTo = TracedTo.Piece },
            ],
            OtherIncome = [new OtherIncome { Amount = 1, Per = Per.Year, Kind = IncomeKind.Net }],
            Equipment =
            [
                new Equipment { Cost = 100, Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 10 } },
                new Equipment
                {
                    Cost = 100,
                    InService = new DateOnly(2000, 1, 1),
                    Depreciation = new DepreciationRule { Method = DepreciationMethod.Percentages, Percentages = [1] },
                },
            ],
        };
        Assert.Equal(
            ["financed-asset-twice /profile/expenses/1", "life-over /profile/equipment/1", "long-week /profile/calendar",
                "traced-not-deductible /profile/expenses/1/tracedTo", "unpaid-time /profile/pay", "wages-without-helpers /profile/expenses/0",
                "year-over /profile/yearStart"],
            Of(profile).Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string> Of(CostProfile profile) =>
        Warnings.In(StudioYear.Of(profile, default).Value, s_today).Select(warning => $"{warning.Code} {warning.Pointer}");

    private static IEnumerable<string> OfPiece(CostProfile profile, params MaterialLine[] materials) =>
        Warnings.In(UnitCost.Of(new Design { Profile = "main", Making = new Making { PiecesPerDay = 4 }, Materials = materials },
            StudioYear.Of(profile, default).Value).Value).Select(warning => warning.Code.Word);
}
