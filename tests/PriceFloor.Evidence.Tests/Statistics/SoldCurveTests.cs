using PriceFloor.Evidence.Statistics;
using Xunit;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>The share sold by age.</summary>
public sealed class SoldCurveTests
{
    /// <summary>R's <c>aml</c>, maintained (Miller, Survival Analysis; survival 3.5-3): + is unsold so far.</summary>
    private static readonly SoldCurve s_aml = SoldCurve.Of(
    [
        new(9, ShelfEnd.Sold), new(13, ShelfEnd.Sold), new(13, ShelfEnd.OnShelf), new(18, ShelfEnd.Sold), new(23, ShelfEnd.Sold),
        new(28, ShelfEnd.OnShelf), new(31, ShelfEnd.Sold), new(34, ShelfEnd.Sold), new(45, ShelfEnd.OnShelf), new(48, ShelfEnd.Sold),
        new(161, ShelfEnd.OnShelf),
    ]);

    [Theory]
    [InlineData(9, .909091)]
    [InlineData(13, .818182)]
    [InlineData(18, .715909)]
    [InlineData(23, .613636)]
    [InlineData(31, .490909)]
    [InlineData(34, .368182)]
    [InlineData(48, .184091)]
    public void What_is_left_is_as_R_prints_it(int age, double left)
    {
        Assert.Equal(left, s_aml.LeftAfter(age), 6);
        Assert.Equal(1 - left, s_aml.ShareAt(age).Share, 6);
    }

    [Theory]
    [InlineData(9, .0866784)]
    [InlineData(48, .1534927)]
    public void So_is_its_standard_error(int age, double error) => Assert.Equal(error, s_aml.ShareAt(age).Error, 7);

    [Fact]
    public void So_are_the_median_and_the_ends()
    {
        // 0.95 by log-log at 9: left .5080802 to .986674, so sold 1 - .986674 = 0.0133 to 1 - .5080802 = 0.4919.
        Assert.Equal(31, s_aml.DaysToSell());
        Assert.Equal(new Estimate(0.0909m, 0.0133m, 0.4919m), s_aml.SoldBy(9, 0.95m));
    }

    [Fact]
    public void What_was_given_away_is_not_sold()
    {
        // Four pieces: one sold at 1, one given at 2, one sold at 3, one there at 4. C = 1/4, 1/4, 1/4 + 1/2 * 1/2 = 1/2; S = 3/4, 1/2, 1/4.
        var curve = SoldCurve.Of([new(1, ShelfEnd.Sold), new(2, ShelfEnd.Gone), new(3, ShelfEnd.Sold), new(4, ShelfEnd.OnShelf)]);
        Assert.Equal((0.25, 0.25, 0.5), (curve.ShareAt(1).Share, curve.ShareAt(2).Share, curve.ShareAt(4).Share));
        Assert.Equal(0.25, curve.LeftAfter(9));
        Assert.Equal(3, curve.DaysToSell());
        // Variance at 1: (C - C)^2 ... = 0; 1 * (4-1)*1/64 = 3/64; so the error is sqrt(3/64) = 0.216506.
        Assert.Equal(0.216506, curve.ShareAt(1).Error, 6);
    }

    [Fact]
    public void Nothing_sold_and_all_sold_have_no_other_ends()
    {
        Assert.Equal(new Estimate(0.0000m, 0m, 0m), SoldCurve.Of([new(400, ShelfEnd.OnShelf, 12)]).SoldBy(730, 0.9m));
        Assert.Equal(new Estimate(1.0000m, 1m, 1m), SoldCurve.Of([new(4, ShelfEnd.Sold, 3), new(9, ShelfEnd.Sold, 9)]).SoldBy(730, 0.9m));
    }

    [Fact]
    public void Half_sold_is_half_although_binary_numbers_say_a_bit_less()
    {
        // Ten pieces, five sold one by one: C is a sum of five times 1/10, exactly a half.
        var curve = SoldCurve.Of([.. Enumerable.Range(1, 5).Select(age => new ShelfTime(age, ShelfEnd.Sold)), new(99, ShelfEnd.OnShelf, 5)]);
        Assert.Equal(5, curve.DaysToSell());
    }

    [Fact]
    public void Those_still_there_are_counted_by_age()
    {
        Assert.Equal((11, 10, 8, 1, 0), (s_aml.AtRisk(0), s_aml.AtRisk(10), s_aml.AtRisk(14), s_aml.AtRisk(161), s_aml.AtRisk(162)));
        Assert.Equal((31, 161, null), (s_aml.OldestWith(5), s_aml.OldestWith(1), s_aml.OldestWith(12)));
    }
}
