using PriceFloor.Evidence.Statistics;
using Xunit;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>The one way from statistics to decimals.</summary>
public sealed class SettledTests
{
    [Theory]
    [InlineData(0.12345, 4, "0.1235")]
    [InlineData(0.12344999999999, 4, "0.1235")] // nine digits: 0.123450000
    [InlineData(0.123449999, 4, "0.1234")] // nine digits: 0.123449999
    [InlineData(-0.12345, 4, "-0.1235")]
    [InlineData(0.00005, 4, "0.0001")]
    [InlineData(48.195, 2, "48.20")]
    [InlineData(0, 2, "0.00")]
    [InlineData(123456789.6, 0, "123456790")]
    [InlineData(12345678965.0, 0, "12345679000")] // nine digits of eleven
    public void Nine_digits_first(double figure, int decimals, string settled) => Assert.Equal(settled, $"{Settled.Of(figure, decimals)}");

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e300)]
    public void What_is_no_figure_is_too_large(double figure) => Assert.Throws<OverflowException>(() => Settled.Of(figure, 4));

    [Fact]
    public void An_exact_figure_is_rounded_alike() => Assert.Equal(0.8695m, Settled.Of(0.86945m, 4));
}
