using System.Globalization;
using FsCheck.Xunit;
using Xunit;

namespace PriceFloor.Pricing.Tests.Numbers;

public sealed class SquareRootTests
{
    /// <summary>The first digits of the roots, as tables print them.</summary>
    [Theory]
    [InlineData("2", "1.414213562373095048801688724")]
    [InlineData("3", "1.732050807568877293527446342")]
    [InlineData("10", "3.162277660168379331998893544")]
    [InlineData("0.5", "0.707106781186547524400844362")]
    [InlineData("1000000000000000000000000", "1000000000000")]
    [InlineData("0.0000000000000001", "0.00000001")]
    [InlineData("0", "0")]
    [InlineData("144", "12")]
    [InlineData("0.0225", "0.15")]
    [InlineData("99.999999", "9.99999994999999987499999937")]
    public void A_root_has_its_digits(string number, string root) =>
        Assert.Equal(Number(root), decimal.Round(SquareRoot.Of(Number(number)), 26, MidpointRounding.ToEven),
            new Within(0.000000000000000000000001m));

    [Fact]
    public void Nothing_below_zero_has_one() => Assert.Throws<ArgumentOutOfRangeException>(() => SquareRoot.Of(-0.01m));

    [Property(MaxTest = 500)]
    public void The_root_of_a_square_is_the_number(decimal number)
    {
        var side = decimal.Abs(number % 1_000_000m);
        var exact = decimal.Round(side, 6, MidpointRounding.ToEven);
        Assert.Equal(exact, Rounding.Settle(SquareRoot.Of(exact * exact)));
    }

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);

    private sealed class Within(decimal tolerance) : IEqualityComparer<decimal>
    {
        public bool Equals(decimal one, decimal other) => decimal.Abs(one - other) <= tolerance;

        public int GetHashCode(decimal number) => 0;
    }
}
