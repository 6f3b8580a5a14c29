using Xunit;

namespace PriceFloor.Pricing.Tests.PublishedValues;

/// <summary>
/// IRS Publication 946, Appendix A, Tables A-2 and A-5 (mid-quarter; US government work, public domain), used as printed: a thing of 10,000 loses
/// the printed percentage each year and nothing is left over.
/// </summary>
public sealed class MidQuarterTables
{
    public static TheoryData<string, decimal[]> Tables => new()
    {
        { "first quarter, 3 years", [58.33m, 27.78m, 12.35m, 1.54m] },
        { "first quarter, 5 years", [35.00m, 26.00m, 15.60m, 11.01m, 11.01m, 1.38m] },
        { "first quarter, 10 years", [17.50m, 16.50m, 13.20m, 10.56m, 8.45m, 6.76m, 6.55m, 6.55m, 6.56m, 6.55m, 0.82m] },
        { "fourth quarter, 7 years", [3.57m, 27.55m, 19.68m, 14.06m, 10.04m, 8.73m, 8.73m, 7.64m] },
    };

    [Theory]
    [MemberData(nameof(Tables))]
    public void A_printed_table_spreads_the_whole_cost(string table, decimal[] percent)
    {
        var years = percent.Select((_, i) => Depreciation.InYear(Bought(10000, percent), new DateOnly(2024 + i, 1, 1))).ToArray();
        Assert.Equal((table, 10000m), (table, years.Sum()));
        Assert.Equal(percent.Select(share => share * 100), years);
    }

    /// <summary>
    /// Between the tables and declining balance: the first two years of Table A-1, 5 years, are 200 % declining balance with half a year first
    /// (20 %, then 40 % of what is left), so the two methods agree there.
    /// </summary>
    [Fact]
    public void The_first_years_of_a_printed_table_are_a_declining_balance()
    {
        // Half-year convention as a purchase in July of a calendar year: 6 of 12 months of 40 %.
        var thing = new Equipment
        {
            Cost = 10000,
            InService = new DateOnly(2024, 7, 1),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.DecliningBalance, Rate = 0.4m },
        };
        Assert.Equal([2000m, 3200m, 1920m, 1152m], Enumerable.Range(2024, 4).Select(year => Depreciation.InYear(thing, new DateOnly(year, 1, 1))));
    }

    private static Equipment Bought(decimal cost, decimal[] percent) => new()
    {
        Cost = cost,
        InService = new DateOnly(2024, 2, 29),
        Depreciation = new DepreciationRule { Method = DepreciationMethod.Percentages, Percentages = [.. percent.Select(share => share / 100)] },
    };
}
