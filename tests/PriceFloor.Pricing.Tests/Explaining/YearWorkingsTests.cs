using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Explaining;

/// <summary>What the workings of a year say of levies, and of what is not there.</summary>
public sealed class YearWorkingsTests
{
    [Fact]
    public void A_levy_that_is_charged_on_other_income_too_takes_off_what_that_alone_would_pay()
    {
        // 20,000 earned elsewhere, of which 5,000 are free: 10 % up to 10,000, 20 % beyond. Alone it pays 1,000 + 1,000; with a
        // profit of p it pays that and 20 % of p.
        var rules = new TaxRules
        {
            Kind = TaxKind.Levies,
            Levies = [new Levy { OtherBase = 20000, Allowance = 5000, Bands = [new Band { UpTo = 10000, Rate = 0.1m }, new Band { Rate = 0.2m }] }],
        };
        var year = StudioYear.Of(Plain with { Tax = rules, Household = [new HouseholdLine { Amount = 8000, Per = Per.Year }] }, default).Value;
        Assert.Equal((10000m, 2000m), (year.Profit, year.TaxOnProfit));
        var lines = Workings.Of(year).ToList();
        Assert.Equal(
            "0.1 * max(0, min(base1, 10000) - 0) + 0.2 * max(0, base1 - 10000) - (0.1 * max(0, min(max(0, 20000 - 5000), 10000) - 0) + 0.2 * max(0, "
            + "max(0, 20000 - 5000) - 10000))",
            lines.Single(line => line.Symbol == "levy1").Formula);
        Assert.Equal(2000m, Redone.From(lines)["tax"]);
    }

    [Fact]
    public void What_is_not_there_is_not_reckoned_with()
    {
        // A household line without a business share, income that takes no days, a levy that no other deducts.
        var levy = new Levy { Bands = [new Band { Rate = 0.1m }] };
        var year = StudioYear.Of(
            Plain with
            {
                Household = [new HouseholdLine { Amount = 100, Per = Per.Month },
                    new HouseholdLine { Amount = 10, Per = Per.Month, BusinessShare = 0.5m }],
                OtherIncome = [new OtherIncome { Amount = 5, Per = Per.Year, Kind = IncomeKind.Net },
                    new OtherIncome { Amount = 5, Per = Per.Year, Kind = IncomeKind.Net, DaysPerYear = 3 }],
                Tax = new TaxRules { Kind = TaxKind.Levies, Levies = [levy, levy with { DeductibleShare = 0.5m }, levy] },
            },
            default).Value;
        string FormulaOf(string symbol) => Workings.Of(year).Single(line => line.Symbol == symbol).Formula;
        Assert.Equal("10 * 12 * 0.5", FormulaOf("businessShares"));
        Assert.Equal("50 * 5 - 3", FormulaOf("workdays"));
        Assert.Equal("max(0, 1 * profitBeforeTax + 0 - 0 - 0.5 * levy2)", FormulaOf("base3"));
        Assert.Equal("0.1 * max(0, base1 - 0)", FormulaOf("levy1"));
    }

    private static CostProfile Plain { get; } = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
    };
}
