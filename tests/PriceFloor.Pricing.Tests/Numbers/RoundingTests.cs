using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using Xunit;

namespace PriceFloor.Pricing.Tests.Numbers;

public sealed class RoundingTests
{
    [Theory]
    [InlineData("34.285714285714285714285714286", "34.29", "34.28", "34.29")]
    [InlineData("0.125", "0.13", "0.12", "0.13")]
    [InlineData("-0.125", "-0.12", "-0.13", "-0.13")]
    [InlineData("60", "60.00", "60.00", "60.00")]
    [InlineData("60.0000000000001", "60.00", "60.00", "60.00")] // dust below the twelfth decimal
    [InlineData("60.000000000001", "60.01", "60.00", "60.00")]
    [InlineData("59.9999999999999999", "60.00", "60.00", "60.00")]
    public void Each_direction_is_what_it_says(string value, string up, string down, string nearest)
    {
        var exact = decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal((up, down, nearest), (Text(Rounding.Up(exact, 2)), Text(Rounding.Down(exact, 2)), Text(Rounding.Nearest(exact, 2))));
    }

    [Fact]
    public void A_third_of_three_is_one()
    {
        Assert.Equal(1.00m, Rounding.Up(1.00m / 3 * 3, 2)); // 0.9999999999999999999999999999 must not quote 1.00 short, nor 1.01
        Assert.Equal("1.00", Text(Rounding.Up(1m / (1m / 3) / 3, 2)));
        Assert.Equal(1440m, Rounding.Down(1440m / 7 * 7, 0));
        Assert.Equal(1440m, Rounding.Down(480m / (1m / 3), 0));
    }

    [Property(MaxTest = 500)]
    public void It_agrees_with_exact_whole_number_arithmetic(decimal value, FsCheck.NonNegativeInt places)
    {
        var decimals = places.Get % 5;
        var bounded = value % 1_000_000_000m;
        Assert.Equal(Fraction.Of(bounded).Up(decimals), Fraction.Of(Rounding.Up(bounded, decimals)));
        Assert.Equal(Fraction.Of(bounded).Down(decimals), Fraction.Of(Rounding.Down(bounded, decimals)));
        Assert.Equal(Fraction.Of(bounded).Nearest(decimals), Fraction.Of(Rounding.Nearest(bounded, decimals)));
        Assert.Equal(Fraction.Of(bounded).Settled(), Fraction.Of(Rounding.Settle(bounded)));
    }

    [Theory]
    [InlineData("8.500", "8.5", 1)]
    [InlineData("12000.0", "12000", 0)]
    [InlineData("0.000", "0", 0)]
    [InlineData("-0.0", "0", 0)]
    public void Trailing_zeros_never_count(string value, string trimmed, int decimals)
    {
        var exact = decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal((trimmed, decimals), (Text(Rounding.Trim(exact)), Rounding.DecimalsOf(exact)));
    }

    /// <summary>A zero with a sign would be written as -0 on the wire.</summary>
    [Theory]
    [InlineData("-0.0")]
    [InlineData("-0.001")]
    public void A_zero_has_no_sign(string value)
    {
        var exact = decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.False(decimal.IsNegative(Rounding.Nearest(exact, 2)));
        Assert.False(decimal.IsNegative(Rounding.Trim(decimal.Round(exact, 2))));
    }

    [Fact]
    public void Where_there_are_no_parts_nothing_is_moved() => Assert.Empty(Rounding.NearestTogether([], 0.01m, 2));

    [Fact]
    public void Money_shows_its_currencys_decimals()
    {
        Assert.Equal("8.00", Text(Currency.Of("USD").Round(8)));
        Assert.Equal("800", Text(Currency.Of("JPY").Round(800.4m)));
        Assert.Equal("8.000", Text(Currency.Of("KWD").RoundUp(7.9991m)));
        Assert.Equal("0.00", Text(Currency.Of("USD").Round(-0.001m)));
    }

    private static string Text(decimal value) => value.ToString(System.Globalization.CultureInfo.InvariantCulture);

    [Fact]
    public void Parts_rounded_together_still_add_up()
    {
        Assert.Equal([0.33m, 0.33m, 0.34m], Rounding.NearestTogether([1m / 3, 1m / 3, 1m / 3], 1, 2));
        // 0.01 and 0.01 would be -0.98: both moved up, so the last of them gives way
        Assert.Equal([0.01m, 0.00m, -1.00m], Rounding.NearestTogether([0.005m, 0.005m, -1m], -0.99m, 2));
        Assert.Equal([1m, 1m, 0m], Rounding.NearestTogether([0.6m, 0.6m, 0.6m], 2, 0)); // JPY
        Assert.Equal([2m, 3.01m], Rounding.NearestTogether([2m, 3m], 5.01m, 2)); // what rounding elsewhere left over
    }
}
