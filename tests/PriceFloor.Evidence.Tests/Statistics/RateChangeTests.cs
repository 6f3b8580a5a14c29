using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Statistics;
using Xunit;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>Before and after a change of price.</summary>
public sealed class RateChangeTests
{
    private static readonly RateChange s_same = RateChange.Of(RatePrior.Nothing, new Sales(20, 10), new Sales(20, 10));

    /// <summary>
    /// How much of the sales may be lost, as published: a margin of 0.40 and 5 % dearer -11.1 %, 0.42 and 10 % -19.2 % (rgmacademy pages); 2.50 down
    /// to 2.00 at a cost of 1.00 must bring 50 % more (course notes MK 4010).
    /// </summary>
    [Theory]
    [InlineData("0.40", "0.45", "0.1111")]
    [InlineData("0.42", "0.52", "0.1923")]
    [InlineData("1.50", "1.00", "-0.5000")]
    public void Break_even_changes_of_sales(string before, string after, string share) =>
        Assert.Equal(share, $"{PriceChange.MayBeLost(Number(before), Number(after))}");

    [Fact]
    public void Equal_times_tell_nothing() => Assert.Equal((0.50m, 0.50m, 0m), (s_same.Paid(10, 10), s_same.Fell, s_same.Lost));

    [Theory]
    [InlineData(-1, 1, 1)]
    [InlineData(0, 1, 1)]
    [InlineData(-1, 0, 1)]
    [InlineData(1, -1, 0)]
    [InlineData(1, 0, 0)]
    [InlineData(0, -1, 0)]
    [InlineData(0, 0, 0)]
    public void Where_only_one_of_them_leaves_something_it_is_plain(decimal before, decimal after, decimal chance) =>
        Assert.Equal(chance, s_same.Paid(before, after));

    /// <summary>2 * (1.2816 + 0.8416)^2 / ln(0.5)^2 = 9.0160/0.480453 = 18.77: 19 a side.</summary>
    [Fact]
    public void To_tell_a_half_lost_takes_19_orders_a_side() => Assert.Equal(19, RateChange.OrdersToTell(0.5m));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Nothing_tells_what_is_not_lost(decimal share) => Assert.Null(RateChange.OrdersToTell(share));

    [Property]
    public Property What_pays_more_is_likelier_to_have_paid(PositiveInt before, PositiveInt after, PositiveInt margin) =>
        Prop.ForAll(Gen.Choose(1, 100).ToArbitrary(), weeks =>
        {
            var change = RateChange.Of(RatePrior.Nothing, new Sales(before.Get, weeks), new Sales(after.Get, 10));
            var (less, more) = (change.Paid(margin.Get, 10), change.Paid(margin.Get, 11));
            return less <= more && less is >= 0 and <= 1 && more <= 1;
        });

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
