using System.Globalization;
using FsCheck.Xunit;
using Xunit;

namespace PriceFloor.Pricing.Tests.Changes;

public sealed class RangeDistributionTests
{
    private static readonly RangeDistribution s_weeks = RangeDistribution.OneInTenBeyond(42, 46, 47);

    [Theory]
    [InlineData("0.1", "42")]
    [InlineData("0.3", "44")]
    [InlineData("0.5", "46")]
    [InlineData("0.7", "46.5")]
    [InlineData("0.9", "47")]
    [InlineData("0", "41")] // 46 - 1.25 x 4
    [InlineData("1", "47.25")] // 46 + 1.25 x 1
    [InlineData("0.00048828125", "41.0048828125")] // the first of 1,024 draws: 46 - 4 x 0.49951171875/0.4
    public void One_time_in_ten_it_is_beyond_each_end_and_half_the_time_below_the_likely_value(string probability, string weeks) =>
        Assert.Equal(Number(weeks), s_weeks.At(Number(probability)));

    /// <summary>46 + 0.3125 x (1 - 4) = 45.0625; 1.5625/6 x (1 + 16) - 0.9375 x 0.9375 = 4.42708333 - 0.87890625 = 3.54817708.</summary>
    [Fact]
    public void It_has_the_mean_and_variance_of_its_straight_lines()
    {
        Assert.Equal(45.0625m, s_weeks.Mean);
        Assert.Equal(3.548177083333m, Rounding.Settle(s_weeks.Variance));
        Assert.Equal((41m, 47.25m), (s_weeks.Least, s_weeks.Most));
    }

    [Theory]
    [InlineData("42", "46", "47", false)]
    [InlineData("0.9", "1", "1.12", false)]
    [InlineData("42", "46", "47", true)]
    [InlineData("5", "5", "9", true)]
    public void A_thousand_even_draws_have_its_mean_and_variance(string low, string likely, string high, bool never)
    {
        var range = never ? RangeDistribution.NeverBeyond(Number(low), Number(likely), Number(high))
            : RangeDistribution.OneInTenBeyond(Number(low), Number(likely), Number(high));
        var draws = Enumerable.Range(0, 1024).Select(place => range.At((2m * place + 1) / 2048)).ToList();
        var mean = draws.Sum() / 1024;
        Assert.InRange(mean - range.Mean, -0.0001m, 0.0001m);
        Assert.InRange(draws.Sum(draw => (draw - mean) * (draw - mean)) / 1024 / range.Variance, 0.999m, 1.001m);
        Assert.All(draws, draw => Assert.InRange(draw, range.Least, range.Most));
    }

    /// <summary>The standard deviation of a symmetric range is 0.7217 of its half width; of a triangle from -1 to 1 it is 0.4082.</summary>
    [Fact]
    public void A_symmetric_range_has_the_standard_deviation_of_its_trapezium()
    {
        Assert.Equal(0.7217m, Rounding.Nearest(SquareRoot.Of(RangeDistribution.OneInTenBeyond(-1, 0, 1).Variance), 4)); // root of 3.125/6
        Assert.Equal(0.4082m, Rounding.Nearest(SquareRoot.Of(RangeDistribution.NeverBeyond(-1, 0, 1).Variance), 4)); // root of 1/6
    }

    /// <summary>Quantiles printed in the documentation of stdlib.io, dists/triangular/quantile, to the digits printed.</summary>
    [Theory]
    [InlineData("0.9", "-1", "0", "1", "0.553")]
    [InlineData("0.1", "-1", "0.5", "1", "-0.452")]
    [InlineData("0.1", "-20", "-2", "0", "-14.000")]
    [InlineData("0.8", "0", "0", "20", "11.056")]
    [InlineData("0.4", "2", "2.5", "4", "2.658")]
    [InlineData("0.8", "2", "2.5", "4", "3.225")]
    public void A_triangle_has_the_published_quantiles(string probability, string low, string likely, string high, string published) => Assert.Equal(
        Number(published), Rounding.Nearest(RangeDistribution.NeverBeyond(Number(low), Number(likely), Number(high)).At(Number(probability)), 3));

    /// <summary>Means and variances printed in the documentation of stdlib.io, dists/triangular (0, 0.8, 1: variance printed 0.047).</summary>
    [Theory]
    [InlineData("0", "0.8", "1", "0.600", "0.047")]
    [InlineData("4", "5", "12", "7.000", "3.167")]
    [InlineData("2", "5", "8", "5.000", "1.500")]
    public void A_triangle_has_the_published_mean_and_variance(string low, string likely, string high, string mean, string variance)
    {
        var triangle = RangeDistribution.NeverBeyond(Number(low), Number(likely), Number(high));
        Assert.Equal((Number(mean), Number(variance)), (Rounding.Nearest(triangle.Mean, 3), Rounding.Nearest(triangle.Variance, 3)));
    }

    [Fact]
    public void A_triangle_never_passes_its_ends()
    {
        var triangle = RangeDistribution.NeverBeyond(42, 46, 47);
        Assert.Equal((42m, 47m), (triangle.At(0), triangle.At(1)));
        Assert.Equal(46m, triangle.At(0.8m)); // (46 - 42)/(47 - 42)
    }

    [Property(MaxTest = 300)]
    public void More_probability_is_never_a_lower_value(ushort place, ushort low, ushort up, ushort upAgain, bool never)
    {
        var (likely, high) = ((decimal)low + up, (decimal)low + up + upAgain);
        var range = never ? RangeDistribution.NeverBeyond(low, likely, high) : RangeDistribution.OneInTenBeyond(low, likely, high);
        var (one, next) = (range.At(place / 65536m), range.At((place + 1) / 65536m));
        Assert.True(Rounding.Settle(one) <= Rounding.Settle(next), $"{range} at {place}: {one}, then {next}");
        Assert.InRange(Rounding.Settle(one), range.Least, range.Most);
    }

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}
