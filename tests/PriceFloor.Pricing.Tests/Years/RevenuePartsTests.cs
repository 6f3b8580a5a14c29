using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using Xunit;

namespace PriceFloor.Pricing.Tests.Years;

public sealed class RevenuePartsTests
{
    private static readonly CostProfile s_studio = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses =
        [
            new Expense { Amount = 500, Per = Per.Month, CostKind = CostKind.Rent },
            new Expense { Amount = 300, Per = Per.Year, CostKind = CostKind.Insurance },
            new Expense { Amount = 100, Per = Per.Year },
            new Expense { Amount = 900, Per = Per.Year, CostKind = CostKind.Materials, TracedTo = TracedTo.Piece },
            new Expense { Amount = 1200, Per = Per.Year, CostKind = CostKind.InterestAndLoans, Deductible = false },
        ],
        Equipment =
        [
            new Equipment
            {
                Cost = 800,
                InService = new DateOnly(2027, 1, 1),
                Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 8 },
            },
        ],
        Household = [new HouseholdLine { Amount = 1000, Per = Per.Month, BusinessShare = 0.1m }],
        OtherIncome = [new OtherIncome { Amount = 200, Per = Per.Month, Kind = IncomeKind.Taxable }],
        Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m },
    };

    [Fact]
    public void The_parts_by_hand()
    {
        var year = StudioYear.Of(s_studio, new DateOnly(2027, 1, 1)).Value;
        // Rent 6,000; home workspace 10 % of 12,000 = 1,200; materials 900; insurance 300; depreciation 800/8 = 100; no kind 100: 8,600.
        // Household 10,800 + loan 1,200 = 12,000; profit 12,000/0.8 = 15,000, so tax 3,000. Elsewhere 2,400. 8,600 + 15,000 - 2,400 = 21,200.
        Assert.Equal(
        [
            new(RevenuePartOf.Expenses, CostKind.Rent, 6000), new(RevenuePartOf.Expenses, CostKind.HomeWorkspace, 1200),
            new(RevenuePartOf.Expenses, CostKind.Materials, 900), new(RevenuePartOf.Expenses, CostKind.Insurance, 300),
            new(RevenuePartOf.Expenses, CostKind.Depreciation, 100), new(RevenuePartOf.Expenses, CostKind.Other, 100),
            new(RevenuePartOf.Household, null, 12000), new(RevenuePartOf.Tax, null, 3000), new(RevenuePartOf.OtherIncome, null, -2400),
        ], RevenueParts.Of(year));
        Assert.Equal(21200m, year.RequiredRevenue);
    }

    [Property(MaxTest = 300, EndSize = 1_000_000)]
    public void They_add_up_to_the_required_revenue_or_other_income_is_more_than_the_rest(NonNegativeInt seed)
    {
        if (StudioYear.Of(new RandomStudio(seed.Get).Profile(), new DateOnly(2027, 1, 1)).Found is not { } year)
            return;
        var sum = RevenueParts.Of(year).Sum(part => part.Amount);
        Assert.InRange(decimal.Max(0, sum) - year.RequiredRevenue, -0.000001m, 0.000001m);
    }
}
