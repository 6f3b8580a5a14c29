using Xunit;

namespace PriceFloor.Pricing.Tests.Planning;

public sealed class SeasonTests
{
    private static readonly DateOnly s_january = new(2026, 1, 1);

    [Fact]
    public void Whole_months_count_whole_and_the_running_one_by_its_days()
    {
        var season = Season.Of([1, 1, 2, 0, 0, 0, 0, 0, 0, 0, 0, 0])!;
        Assert.Equal(0.25m, season.ShareGone(s_january, new DateOnly(2026, 1, 31)));
        Assert.Equal((1 + 14m / 28) / 4, season.ShareGone(s_january, new DateOnly(2026, 2, 14)));
        Assert.Equal(1m, season.ShareGone(s_january, new DateOnly(2026, 12, 31)));
    }

    [Fact]
    public void Months_are_those_of_the_profiles_year()
    {
        // A year from July with all its sales in its sixth month, December: nothing is due by the end of November, half by 15.5 days of December.
        var season = Season.Of([0, 0, 0, 0, 0, 10, 0, 0, 0, 0, 0, 0])!;
        Assert.Equal(0m, season.ShareGone(new DateOnly(2026, 7, 1), new DateOnly(2026, 11, 30)));
        Assert.Equal(10m / 31, season.ShareGone(new DateOnly(2026, 7, 1), new DateOnly(2026, 12, 10)));
    }

    [Fact]
    public void Only_proportions_count()
    {
        decimal[] weights = [4, 5, 6, 6, 8, 6, 5, 5, 7, 10, 19, 19];
        var august = new DateOnly(2026, 8, 31);
        Assert.Equal(0.45m, Season.Of(weights)!.ShareGone(s_january, august)); // (4 + 5 + 6 + 6 + 8 + 6 + 5 + 5) / 100
        Assert.Equal(0.45m, Season.Of([.. weights.Select(weight => weight * 2.5m)])!.ShareGone(s_january, august));
    }

    [Fact]
    public void Twelve_weights_are_needed_none_below_zero_and_one_above()
    {
        Assert.Null(Season.Of([1, 1, 1]));
        Assert.Null(Season.Of(new decimal[12]));
        Assert.Null(Season.Of([-1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1]));
    }
}
