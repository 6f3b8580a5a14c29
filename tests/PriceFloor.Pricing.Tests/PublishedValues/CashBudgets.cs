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

    /// <summary>
    /// Business Principles and Management, fig. 15-3 (flipbuilder aptc/feyq, p. 410): 33,500 + 70,000 - 99,500 = 4,000; then -33,000, for which
    /// 40,000 are borrowed: 7,000; then -45,000, for which 50,000 are: 5,000. Of the later months only what they come to is printed, so their
    /// payments are 4,000 + 33,000 and 7,000 + 45,000.
    /// </summary>
    [Fact]
    public void A_month_ends_with_what_it_began_with_and_received_less_what_it_paid()
    {
        (string, decimal, decimal[])[] payments = [("one", 99_500, [1]), ("two", 37_000, [2]), ("three", 52_000, [3])];
        var without = Budget(33_500, 0, [("receipts", 70_000, [1])], payments);
        Assert.Equal([4_000m, -33_000, -85_000], without.Months.Take(3).Select(month => month.Cash));
        var borrowed = Budget(33_500, 5_000, [("receipts", 70_000, [1]), ("loan", 40_000, [2]), ("second loan", 50_000, [3])], payments);
        Assert.Equal([4_000m, 7_000, 5_000], borrowed.Months.Take(3).Select(month => month.Cash));
        Assert.Equal(1, borrowed.LowestCash.Number); // 4,000 is less than the reserve of 5,000
        Assert.Equal(34_500m, borrowed.OpeningNeeded);
    }

    /// <summary>
    /// Seasonal index of tires (qammunity 7303788): fall 950, winter 1,450, spring 375, summer 425; 4,000 in the year are 1,187.5, 1,812.5, 468.75
    /// and 531.25.
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

    /// <summary>
    /// Trend times index (csr.engine 17760612): 165, 170 and 175 a month with the indices 1.1, 1.02 and 0.95 are 181.5, 173.4 and 166.25. The other
    /// nine months have the rest of twelve, 8.93.
    /// </summary>
    [Theory]
    [InlineData(165, 1, "181.5")]
    [InlineData(170, 2, "173.4")]
    [InlineData(175, 3, "166.25")]
    public void A_month_sells_its_trend_times_its_index(int trend, int month, string sold)
    {
        decimal[] indices = [1.1m, 1.02m, 0.95m, .. Enumerable.Repeat(8.93m / 9, 9)];
        var year = SmallYear.ByMonth(SmallYear.Of(12 * trend, indices));
        Assert.Equal(decimal.Parse(sold, System.Globalization.CultureInfo.InvariantCulture), Rounding.Nearest(year.Months[month - 1].SoldOf(0), 9));
    }

    /// <summary>
    /// The other way that is taught (qammunity 9514045) averages the yearly shares first: a season of 0.3 has 1,680 of 5,600. Such shares are weights
    /// like any others.
    /// </summary>
    [Fact]
    public void Shares_of_a_year_are_weights_too()
    {
        var year = SmallYear.ByMonth(SmallYear.Of(5600, 0.1m, 0.1m, 0.1m, 0.7m, 0, 0, 0, 0, 0, 0, 0, 0));
        Assert.Equal(1680m, Rounding.Settle(year.Months.Take(3).Sum(month => month.SoldOf(0))));
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
