using Xunit;

namespace PriceFloor.Pricing.Tests.Planning;

/// <summary>The smallest share in steps of 0.001 by which all prices must rise together.</summary>
public sealed class CommonRiseTests
{
    [Theory]
    [InlineData(100, 0)] // enough as it is
    [InlineData(99, 0)]
    [InlineData(100.1, 0.001)]
    [InlineData(104.05, 0.041)] // 100 x 1.041 = 104.1; 100 x 1.040 is 104.0
    [InlineData(104.1, 0.041)]
    [InlineData(1100, 10)]
    public void On_a_straight_line_it_is_the_next_thousandth(double enough, double share) =>
        Assert.Equal((decimal)share, CommonRise.Of(rise => 100 * (1 + rise), (decimal)enough));

    [Fact]
    public void No_share_up_to_ten_is_none() => Assert.Null(CommonRise.Of(rise => 100 * (1 + rise), 1100.1m));

    [Fact]
    public void Nothing_that_rises_leaves_more_is_none() => Assert.Null(CommonRise.Of(_ => 100, 101));

    /// <summary>Fees that reach their maximum bend the line; the answer is still the first step that is enough.</summary>
    [Fact]
    public void However_the_line_bends_it_is_the_first_step_that_is_enough()
    {
        var random = new Random(7);
        for (var i = 0; i < 300; i++)
        {
            var (steep, bend, flat) = (random.Next(1, 400), random.Next(0, 3000) / 1000m, random.Next(1, 400));
            decimal LeftAt(decimal rise) => 1000 + steep * decimal.Min(rise, bend) + flat * decimal.Max(0, rise - bend);
            var enough = 1000 + random.Next(0, 3000) / 7m;
            var first = Enumerable.Range(0, 10_001).Select(step => step / 1000m).Where(rise => LeftAt(rise) >= enough)
                .Cast<decimal?>().FirstOrDefault();
            Assert.Equal(first, CommonRise.Of(LeftAt, enough));
        }
    }
}
