using System.Globalization;
using Xunit;

namespace PriceFloor.Pricing.Tests.PublishedValues;

/// <summary>Learning curves of textbooks: the unit model, and the cumulative average model, which is the same power of another quantity.</summary>
public sealed class LearningTables
{
    /// <summary>Standard coefficient table of operations management appendices, unit and cumulative columns (n^log2(rate), 4 decimals).</summary>
    [Theory]
    [InlineData("0.80", "1 0.8 0.7021 0.64 0.5956 0.4765 0.3812 0.2838 0.2271", "1 1.8 2.5021 3.1421 3.7377 6.3154 10.4849 20.1217 32.6508")]
    [InlineData("0.85", "1 0.85 0.7729 0.7225 0.6857 0.5828 0.4954 0.3996 0.3397", "1 1.85 2.6229 3.3454 4.0311 7.1161 12.4023 25.5131 43.7539")]
    [InlineData("0.90", "1 0.9 0.8462 0.81 0.783 0.7047 0.6342 0.5518 0.4966", "1 1.9 2.7462 3.5562 4.3392 7.9945 14.6078 32.142 58.141")]
    public void Unit_and_cumulative_coefficients_are_as_tabled(string rate, string unit, string cumulative)
    {
        var curve = Curve(Of(rate));
        int[] pieces = [1, 2, 3, 4, 5, 10, 20, 50, 100];
        Assert.Equal(unit.Split(' ').Select(Of), pieces.Select(n => Rounding.Nearest(curve.FactorOf(n), 4)));
        Assert.Equal(cumulative.Split(' ').Select(Of), pieces.Select(n => Rounding.Nearest(curve.SumTo(n), 4)));
    }

    /// <summary>The same table, Wright's totals: n times n^log2(rate).</summary>
    [Theory]
    [InlineData("0.80", "1 1.6 2.1063 2.56 2.9782 4.7651 7.6242 14.1914 22.7062")]
    [InlineData("0.85", "1 1.7 2.3187 2.89 3.4284 5.8282 9.9079 19.9812 33.968")]
    [InlineData("0.90", "1 1.8 2.5386 3.24 3.9149 7.0469 12.6844 27.5881 49.6585")]
    public void Totals_by_the_cumulative_average_are_as_tabled(string rate, string totals)
    {
        int[] pieces = [1, 2, 3, 4, 5, 10, 20, 50, 100];
        Assert.Equal(totals.Split(' ').Select(Of), pieces.Select(n => Rounding.Nearest(n * Curve(Of(rate)).FactorOf(n), 4)));
    }

    /// <summary>R package learningCurve (Boehmke), <c>unit_curve</c> and <c>unit_cum_exact</c>: 100 for the first, the 125th.</summary>
    [Theory]
    [InlineData("0.80", "21.13225")]
    [InlineData("0.85", "32.23647")]
    [InlineData("0.90", "48.00243")]
    [InlineData("0.95", "69.95640")]
    public void The_125th_piece_is_as_the_package_has_it(string rate, string minutes) =>
        Assert.Equal(Of(minutes), Rounding.Nearest(100 * Curve(Of(rate)).FactorOf(125), 5));

    /// <summary>The same package: all 125 at 85 %.</summary>
    [Fact]
    public void All_125_pieces_are_as_the_package_has_them() => Assert.Equal(5201.085m, Rounding.Nearest(100 * Curve(0.85m).SumTo(125), 3));

    /// <summary>
    /// Boehmke, <c>ca_unit</c>, <c>ca_block</c>: the difference of two cumulative averages: 110, 2,200th, 88.5 %; 75, 201st to 250th, 85 %.
    /// </summary>
    [Fact]
    public void Differences_of_cumulative_averages_are_as_the_package_has_them()
    {
        Assert.Equal(23.34001m, Rounding.Nearest(110 * (Total(0.885m, 2200) - Total(0.885m, 2199)), 5));
        Assert.Equal(806.772m, Rounding.Nearest(75 * (Total(0.85m, 250) - Total(0.85m, 200)), 3));
    }

    /// <summary>
    /// ACCA study text, 80 %, 100 hours: averages and totals as printed; the printed increment 254.76 transposes the digits of 655.36 - 409.60 =
    /// 245.76.
    /// </summary>
    [Fact]
    public void Doublings_at_80_percent_are_as_printed()
    {
        int[] pieces = [1, 2, 4, 8, 16];
        Assert.Equal([100m, 80, 64, 51.2m, 40.96m], pieces.Select(n => 100 * Curve(0.8m).FactorOf(n)));
        Assert.Equal([100m, 160, 256, 409.6m, 655.36m], pieces.Select(n => 100 * Total(0.8m, n)));
    }

    /// <summary>
    /// ACCA F5 revision answer, 90 %, 750 for the first: the average of 71 is printed as 392.35, the 71st alone as 330.75: a difference of rounded
    /// powers. With the exact exponent they are 392.34 and 333.06.
    /// </summary>
    [Fact]
    public void The_71st_batch_keeps_its_precision()
    {
        Assert.Equal(392.34m, Rounding.Nearest(750 * Curve(0.9m).FactorOf(71), 2)); // b = -0.152003; the printed -0.152 gives 392.35
        Assert.Equal(333.06m, Rounding.Nearest(750 * (Total(0.9m, 71) - Total(0.9m, 70)), 2));
    }

    /// <summary>
    /// Practice items of cumulative averages: 1,000 h at 80 % average 640 over four; 50 h average 40 over two, so the second takes 30.
    /// </summary>
    [Fact]
    public void Small_practice_items_come_out()
    {
        Assert.Equal(640m, 1000 * Curve(0.8m).FactorOf(4));
        Assert.Equal(30m, 50 * (Total(0.8m, 2) - 1));
    }

    /// <summary>
    /// Stevenson, Operations Management, ch. 7S: from 11 h at 90 % to 7 h takes 20; from 12 h at 80 % takes 6 (the printed 10 is the 85 % column).
    /// </summary>
    [Theory]
    [InlineData("0.90", 11, 20)]
    [InlineData("0.80", 12, 6)]
    public void So_many_pieces_until_one_takes_seven_hours(string rate, int first, int pieces) =>
        Assert.Equal(pieces, Enumerable.Range(1, 100).First(n => first * Curve(Of(rate)).FactorOf(n) <= 7));

    private static decimal Total(decimal rate, int pieces) => pieces * Curve(rate).FactorOf(pieces);

    private static LearningCurve Curve(decimal rate) => new(new Learning { Rate = rate });

    private static decimal Of(string number) => decimal.Parse(number, CultureInfo.InvariantCulture);
}
