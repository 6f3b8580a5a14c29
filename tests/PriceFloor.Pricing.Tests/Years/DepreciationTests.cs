using Xunit;

namespace PriceFloor.Pricing.Tests.Years;

public sealed class DepreciationTests
{
    private static readonly Equipment s_kiln = new()
    {
        Cost = 3200,
        Salvage = 200,
        InService = new DateOnly(2025, 4, 15),
        Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 8 },
    };

    [Theory]
    [InlineData(2024, 1, 0)] // not bought yet
    [InlineData(2025, 1, 281.25)] // 9 of 12 months of 375
    [InlineData(2026, 1, 375)]
    [InlineData(2033, 1, 93.75)] // January to March
    [InlineData(2034, 1, 0)]
    [InlineData(2025, 4, 375)] // a year that starts in April
    public void A_kiln_wears_out_by_whole_months(int year, int month, double expected) =>
        Assert.Equal((decimal)expected, Depreciation.InYear(s_kiln, new DateOnly(year, month, 1)));

    [Fact]
    public void Without_a_date_the_whole_year_counts()
    {
        Assert.Equal(375m, Depreciation.InYear(s_kiln with { InService = null }, new DateOnly(2040, 1, 1)));
        Assert.Equal(3000m, Depreciation.InYear(s_kiln with { InService = null, Depreciation = s_kiln.Depreciation with { LifeYears = 0.5m } },
            new DateOnly(2040, 1, 1)));
    }

    [Fact]
    public void A_declining_balance_never_goes_below_salvage()
    {
        // 1,000 at 50 %, 6 months in the first year: 250; book 750: 375; book 375: to 200 only 175; then nothing.
        var torch = new Equipment
        {
            Cost = 1000,
            Salvage = 200,
            InService = new DateOnly(2025, 7, 31),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.DecliningBalance, Rate = 0.5m },
        };
        Assert.Equal([0m, 250m, 375m, 175m, 0m], Enumerable.Range(2024, 5).Select(year => Depreciation.InYear(torch, new DateOnly(year, 1, 1))));
    }

    [Fact]
    public void The_year_of_use_is_the_profile_year_that_holds_the_month()
    {
        var thing = new Equipment
        {
            Cost = 1000,
            InService = new DateOnly(2025, 3, 31),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.Percentages, Percentages = [0.6m, 0.4m] },
        };
        Assert.Equal(600m, Depreciation.InYear(thing, new DateOnly(2024, 4, 1))); // April 2024 to March 2025
        Assert.Equal(400m, Depreciation.InYear(thing, new DateOnly(2025, 4, 1)));
        Assert.Equal(0m, Depreciation.InYear(thing, new DateOnly(2026, 4, 1)));
    }

    [Fact]
    public void A_table_without_a_date_is_in_its_first_year_and_ends_with_its_last_row()
    {
        var thing = new Equipment
        {
            Cost = 1000,
            Depreciation = new DepreciationRule { Method = DepreciationMethod.Percentages, Percentages = [0.6m, 0.4m] },
        };
        Assert.Equal(600m, Depreciation.InYear(thing, new DateOnly(2030, 1, 1)));
        Assert.Equal([0m, 600m, 400m, 0m], Enumerable.Range(2029, 4)
            .Select(year => Depreciation.InYear(thing with { InService = new DateOnly(2030, 12, 31) }, new DateOnly(year, 1, 1))));
    }

    [Fact]
    public void What_keeps_its_value_loses_nothing_and_is_not_called_written_off()
    {
        var anvil = new Equipment
        {
            Cost = 400,
            Salvage = 400,
            InService = new DateOnly(2020, 1, 1),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.DecliningBalance, Rate = 0.5m },
        };
        Assert.Equal(0m, Depreciation.InYear(anvil, new DateOnly(2027, 1, 1)));
        Assert.False(Depreciation.LifeIsOver(anvil, new DateOnly(2027, 1, 1)));
    }

    [Fact]
    public void A_life_of_ninety_months_ends_within_a_year()
    {
        // 900 over 7.5 years is 120 a year, 10 a month: 2020-2026 are 84 months, so 6 are left in 2027.
        var thing = new Equipment
        {
            Cost = 900,
            InService = new DateOnly(2020, 1, 1),
            Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 7.5m },
        };
        Assert.Equal([120m, 60m, 0m], Enumerable.Range(2026, 3).Select(year => Depreciation.InYear(thing, new DateOnly(year, 1, 1))));
        Assert.Equal(900m, Enumerable.Range(2020, 9).Sum(year => Depreciation.InYear(thing, new DateOnly(year, 1, 1))));
    }

    [Theory]
    [InlineData(2026, 3, 2)] // the month before the year: its second year of use
    [InlineData(2026, 4, 1)] // the year's first month
    [InlineData(2027, 3, 1)] // its last
    [InlineData(2027, 4, 0)] // the month after: not yet
    [InlineData(2025, 4, 2)]
    [InlineData(2025, 3, 3)]
    public void A_year_of_use_turns_with_the_month_that_the_year_starts_in(int year, int month, int index) =>
        Assert.Equal(index, Depreciation.YearIndex(new DateOnly(year, month, 28), new DateOnly(2026, 4, 5)));

    [Fact]
    public void A_life_is_over_only_once_it_was_lived()
    {
        Assert.False(Depreciation.LifeIsOver(s_kiln, new DateOnly(2024, 1, 1)));
        Assert.False(Depreciation.LifeIsOver(s_kiln, new DateOnly(2033, 1, 1)));
        Assert.True(Depreciation.LifeIsOver(s_kiln, new DateOnly(2034, 1, 1)));
    }
}
