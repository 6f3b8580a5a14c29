using PriceFloor.Pricing.Tests.Planning.ByMonth;
using Xunit;

namespace PriceFloor.Pricing.Tests.PublishedValues;

/// <summary>
/// Cash budgets and seasonal indices of textbooks. A budget's receipts and payments stand in the profile; its studio sells nothing.
/// </summary>
public sealed class CashBudgets
{
    private static readonly int[] s_quarterEnds = [2, 5, 8, 11];

    /// <summary>
    /// Garden Depot, cash budget by quarter: opening 32,000; receipts 240,000, 390,000, 270,000, 290,000; payments 302,000, 272,000, 262,000,
    /// 282,000; at least 10,000. Short by 30,000 in the first quarter, so 40,000 are borrowed, and paid back with 2,400 of interest in the second.
    /// </summary>
    [Fact]
    public void Garden_Depot_is_short_in_its_first_quarter()
    {
        (string, decimal, decimal[])[] receipts = [("one", 240_000, [3]), ("two", 390_000, [6]), ("three", 270_000, [9]), ("four", 290_000, [12])];
        (string, decimal, decimal[])[] payments = [("one", 302_000, [3]), ("two", 272_000, [6]), ("three", 262_000, [9]), ("four", 282_000, [12])];
        var short_ = Budget(32_000, 10_000, receipts, payments);
        Assert.Equal(-30_000m, short_.Months[2].Cash);
        Assert.Equal((3, 72_000m), (short_.LowestCash.Number, short_.OpeningNeeded)); // 32,000 and the 40,000 that are borrowed
        var borrowed = Budget(32_000, 10_000, [.. receipts, ("loan", 40_000, [3])], [.. payments, ("loan and interest", 42_400, [6])]);
        Assert.Equal([10_000m, 85_600m, 93_600m, 101_600m], s_quarterEnds.Select(month => borrowed.Months[month].Cash));
        Assert.Equal(32_000m, borrowed.OpeningNeeded);
    }

    /// <summary>Business Principles and Management, fig. 15-3: 33,500 + 70,000 - 99,500 = 4,000.</summary>
    [Fact]
    public void A_month_ends_with_what_it_began_with_and_received_less_what_it_paid() =>
        Assert.Equal(4_000m, Budget(33_500, 0, [("receipts", 70_000, [1])], [("payments", 99_500, [1])]).Months[0].Cash);

    /// <summary>
    /// Seasonal index of tires: fall 950, winter 1,450, spring 375, summer 425; 4,000 in the year are 1,187.5, 1,812.5, 468.75 and 531.25.
    /// </summary>
    [Fact]
    public void A_years_sales_are_spread_by_the_seasonal_index()
    {
        var year = SmallYear.ByMonth(SmallYear.Of(4000, 950, 950, 950, 1450, 1450, 1450, 375, 375, 375, 425, 425, 425));
        var seasons = year.Months.Chunk(3).Select(season => season.Sum(month => month.SoldOf(0))).ToList();
        Assert.Equal([1187.5m, 1812.5m, 468.75m, 531.25m], seasons.Select(Rounding.Settle));
        // The index is the season over the average of all four: 950 / 800 = 1.1875.
        Assert.Equal([1.1875m, 1.8125m, 0.46875m, 0.53125m], seasons.Select(season => Rounding.Settle(season / 1000)));
    }

    private static YearByMonth Budget(decimal opening, decimal reserve, (string Name, decimal Amount, decimal[] Months)[] receipts,
        (string Name, decimal Amount, decimal[] Months)[] payments)
    {
        var profile = SmallYear.Profile with
        {
            OtherIncome = [.. receipts.Select(line =>
                new OtherIncome { Name = line.Name, Amount = line.Amount, Per = Per.Year, Kind = IncomeKind.Net })],
            Expenses = [.. payments.Select(line => new Expense { Name = line.Name, Amount = line.Amount, Per = Per.Year })],
        };
        return SmallYear.ByMonth(SmallYear.Of(0) with
        {
            Opening = new Opening { Cash = opening },
            Reserve = reserve,
            PaidIn = [.. receipts.Select(line => new PaidIn { At = $"/otherIncome/{line.Name}", Months = line.Months }),
                .. payments.Select(line => new PaidIn { At = $"/expenses/{line.Name}", Months = line.Months })],
        }, profile);
    }
}
