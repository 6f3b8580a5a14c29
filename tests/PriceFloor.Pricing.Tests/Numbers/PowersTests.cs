using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace PriceFloor.Pricing.Tests.Numbers;

/// <summary>
/// Logarithms and powers in exact decimals; the long constants are those of the tables of constants (OEIS A001113, A002162, A002392).
/// </summary>
public sealed class PowersTests
{
    [Fact]
    public void Known_constants_come_out_to_25_decimals()
    {
        Assert.Equal(2.7182818284590452353602875m, decimal.Round(Powers.Exp(1), 25));
        Assert.Equal(0.6931471805599453094172321m, decimal.Round(Powers.Ln(2), 25));
        Assert.Equal(2.3025850929940456840179915m, decimal.Round(Powers.Ln(10), 25));
        Assert.Equal(0m, Powers.Ln(1));
    }

    [Fact]
    public void Roots_and_whole_powers_are_settled_to_what_they_are()
    {
        Assert.Equal(2m, Powers.Power(8, 1m / 3));
        Assert.Equal(1.414213562373m, Powers.Power(2, 0.5m));
        Assert.Equal(0.25m, Powers.Power(4, -1));
        Assert.Equal(1m, Powers.Power(123.456m, 0));
        Assert.Equal(0.001m, Powers.Power(1000, -1));
    }

    [Fact]
    public void What_is_too_small_is_nothing_and_what_is_too_large_overflows()
    {
        Assert.Equal(0m, Powers.Exp(-200));
        Assert.Throws<OverflowException>(() => Powers.Exp(70));
    }

    [Property(MaxTest = 300, EndSize = 1_000_000)]
    public void The_exponential_undoes_the_logarithm(PositiveInt thousandths)
    {
        var value = thousandths.Get / 1000m;
        Assert.True(decimal.Abs(Powers.Exp(Powers.Ln(value)) - value) <= value * 1e-24m);
    }

    [Property(MaxTest = 300, EndSize = 1_000_000)]
    public void The_logarithm_of_a_product_is_the_sum(PositiveInt one, PositiveInt other) =>
        Assert.True(decimal.Abs(Powers.Ln((decimal)one.Get * other.Get) - Powers.Ln(one.Get) - Powers.Ln(other.Get)) <= 1e-25m);
}
