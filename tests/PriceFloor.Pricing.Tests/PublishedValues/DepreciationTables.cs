using Xunit;

namespace PriceFloor.Pricing.Tests.PublishedValues;

/// <summary>
/// IRS Publication 946, Appendix A (US government work, public domain): Table A-1 (half-year) and A-2, A-5 (mid-quarter), used as printed.
/// </summary>
public sealed class DepreciationTables
{
    public static TheoryData<string, decimal[]> Tables => new()
    {
        { "A-1, 3 years", [33.33m, 44.45m, 14.81m, 7.41m] },
        { "A-1, 5 years", [20.00m, 32.00m, 19.20m, 11.52m, 11.52m, 5.76m] },
        { "A-1, 7 years", [14.29m, 24.49m, 17.49m, 12.49m, 8.93m, 8.92m, 8.93m, 4.46m] },
        { "A-1, 10 years", [10.00m, 18.00m, 14.40m, 11.52m, 9.22m, 7.37m, 6.55m, 6.55m, 6.56m, 6.55m, 3.28m] },
        { "A-1, 15 years", [5.00m, 9.50m, 8.55m, 7.70m, 6.93m, 6.23m, 5.90m, 5.90m, 5.91m, 5.90m, 5.91m, 5.90m, 5.91m, 5.90m, 5.91m, 2.95m] },
        { "A-2, 7 years, first quarter", [25.00m, 21.43m, 15.31m, 10.93m, 8.75m, 8.74m, 8.75m, 1.09m] },
        { "A-5, 5 years, fourth quarter", [5.00m, 38.00m, 22.80m, 13.68m, 10.94m, 9.58m] },
    };

    [Theory]
    [MemberData(nameof(Tables))]
    public void A_printed_table_spreads_the_whole_cost(string table, decimal[] percent)
    {
        var thing = new Equipment
        {
            Cost = 10000,
            InService = new DateOnly(2020, 7, 19),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.Percentages, Percentages = [.. percent.Select(share => share / 100)] },
        };
        var years = percent.Select((_, i) => Depreciation.InYear(thing, new DateOnly(2020 + i, 1, 1))).ToArray();
        Assert.Equal(percent.Select(share => share * 100), years);
        Assert.Equal((table, 10000m), (table, years.Sum()));
        Assert.Equal((0m, 0m),
            (Depreciation.InYear(thing, new DateOnly(2019, 1, 1)), Depreciation.InYear(thing, new DateOnly(2020 + percent.Length, 1, 1))));
    }

    /// <summary>Table A-1 applied to a basis: schedules recomputed from the table; first years published (2,000; 714.50).</summary>
    [Theory]
    [InlineData(10000, new[] { 0.2, 0.32, 0.192, 0.1152, 0.1152, 0.0576 }, new[] { 2000.0, 3200, 1920, 1152, 1152, 576 })]
    [InlineData(5000, new[] { 0.1429, 0.2449, 0.1749, 0.1249, 0.0893, 0.0892, 0.0893, 0.0446 },
        new[] { 714.5, 1224.5, 874.5, 624.5, 446.5, 446, 446.5, 223 })]
    public void Worked_schedules_agree(int cost, double[] table, double[] schedule)
    {
        var thing = new Equipment
        {
            Cost = cost,
            InService = new DateOnly(2024, 12, 31),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.Percentages, Percentages = [.. table.Select(share => (decimal)share)] },
        };
        Assert.Equal(schedule.Select(year => (decimal)year), table.Select((_, i) => Depreciation.InYear(thing, new DateOnly(2024 + i, 1, 1))));
    }
}
