using System.Numerics;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace PriceFloor.Pricing.Tests.Costing;

public sealed class SureStartsTests
{
    /// <summary>Worked examples of the model: the exact binomial.</summary>
    [Theory]
    [InlineData(1, "0.5", "0.9", 4, "0.9375")]
    [InlineData(1, "0.5", "0.95", 5, "0.96875")]
    [InlineData(6, "0.9", "0.9", 8, "0.961908")]
    [InlineData(12, "0.93", "0.9", 14, "0.930205")]
    [InlineData(12, "0.93", "0.95", 15, "0.982467")]
    [InlineData(5, "1", "0.999", 5, "1")]
    public void So_many_starts_are_sure_enough(int pieces, string good, string sure, int starts, string chance)
    {
        Assert.Equal(starts, SureStarts.Of(pieces, Of(good), Of(sure)));
        Assert.Equal(Of(chance), Rounding.Nearest(SureStarts.Chance(starts, pieces, Of(good)), 6));
        Assert.True(starts == pieces || SureStarts.Chance(starts - 1, pieces, Of(good)) < Of(sure));
    }

    [Fact]
    public void Thirty_pendants_take_34_starts_or_35()
    {
        Assert.Equal((34, 35), (SureStarts.Of(30, 0.931m, 0.9m), SureStarts.Of(30, 0.931m, 0.95m)));
    }

    /// <summary>
    /// Hillier and Lieberman, reject allowance (Hit-and-Miss): setup 300, 100 an item, half of them good, 1,600 for none, three runs: 675 in
    /// all; start 2, then 2 or 3, then 3 or 4 (6.75, 7 and 8 hundred).
    /// </summary>
    [Fact]
    public void The_published_reject_allowance_comes_out()
    {
        var (last, lastStarts) = Best(16);
        var (second, secondStarts) = Best(last);
        var (first, firstStarts) = Best(second);
        Assert.Equal((8m, 7m, 6.75m), (last, second, first));
        Assert.Equal([3, 4], lastStarts);
        Assert.Equal([2, 3], secondStarts);
        Assert.Equal([2], firstStarts);
    }

    /// <summary>Chances far below what decimals can hold must not be lost on the way: 2,000 of 2,100 at 96 % against whole numbers.</summary>
    [Fact]
    public void Large_runs_are_exact_too()
    {
        var chance = SureStarts.Chance(2100, 2000, 0.96m);
        Assert.True(decimal.Abs(chance - Exact(2100, 2000, 96)) < 1e-15m, $"{chance}");
        Assert.InRange(SureStarts.Of(10_000, 0.5m, 0.9m), 20_000, 20_400);
    }

    [Property(MaxTest = 200, EndSize = 1000)]
    public void The_chance_is_that_of_the_binomial(PositiveInt starts, PositiveInt pieces, PositiveInt percent)
    {
        var (s, n, y) = (starts.Get % 40 + 1, pieces.Get % 40 + 1, percent.Get % 99 + 1);
        Assert.True(decimal.Abs(SureStarts.Chance(s, n, y / 100m) - Exact(s, n, y)) < 1e-20m);
    }

    /// <summary>The least of 3 + s + (1/2)^s * next, and every s that gives it.</summary>
    private static (decimal Cost, List<int> Starts) Best(decimal next)
    {
        var costs = Enumerable.Range(1, 10).Select(s => (s, Cost: 3 + s + (1 - SureStarts.Chance(s, 1, 0.5m)) * next)).ToList();
        var least = costs.Min(one => one.Cost);
        return (least, costs.Where(one => one.Cost == least).Select(one => one.s).ToList());
    }

    /// <summary>P(Bin(s, y) >= n) in whole numbers: the sum of C(s, k) y^k (100 - y)^(s - k) over 100^s.</summary>
    private static decimal Exact(int starts, int pieces, int percent)
    {
        BigInteger sum = 0, choose = 1;
        for (var k = 0; k <= starts; choose = choose * (starts - k) / (k + 1), k++)
            if (k >= pieces)
                sum += choose * BigInteger.Pow(percent, k) * BigInteger.Pow(100 - percent, starts - k);
        return (decimal)(sum * BigInteger.Pow(10, 25) / BigInteger.Pow(100, starts)) / 1e25m;
    }

    private static decimal Of(string number) => decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture);
}
