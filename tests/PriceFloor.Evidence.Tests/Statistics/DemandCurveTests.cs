using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PriceFloor.Evidence.Statistics;
using Xunit;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>The best price of a design that can be made again, and of the last few.</summary>
public sealed class DemandCurveTests
{
    private const decimal Least = 60.50168m;

    private static readonly DemandCurve s_curve = new(52, 1.4635m, 1.8382m);

    /// <summary>Worked example of the model: 88.79, and of the last pieces in twelve weeks.</summary>
    [Theory]
    [InlineData(1, "138.44")]
    [InlineData(2, "119.66")]
    [InlineData(3, "109.22")]
    [InlineData(6, "94.25")]
    [InlineData(12, "88.86")]
    [InlineData(50, "88.79")]
    [InlineData(null, "88.79")]
    public void The_fewer_are_left_the_more_each_is_worth(int? pieces, string price) =>
        Assert.Equal(Number(price), s_curve.Best(Least, pieces, 12, 2));

    /// <summary>Worked example of the model: what brings 9.00 otherwise (V = 11.79), half the rate, eight weeks.</summary>
    [Theory]
    [InlineData(5, "60.94")]
    [InlineData(10, "45.16")]
    [InlineData(24, "40.08")]
    public void Slow_stock_is_worth_less_than_the_floor(int pieces, string price) =>
        Assert.Equal(Number(price), (s_curve with { Rate = 0.73175m }).Best((9 + 2.445m) / 0.971m, pieces, 8, 2));

    [Fact]
    public void At_62_it_sells_1_03_a_week() => Assert.Equal(1.03m, decimal.Round(s_curve.RateAt(62), 2));

    /// <summary>
    /// One piece, half an order expected: 1 - e^(-1/2) = 0.3935. Two: that and P(two or more) = 1 - 1.5*e^(-1/2) = 0.0902: 0.2418 each.
    /// </summary>
    [Theory]
    [InlineData(1, "0.3935")]
    [InlineData(2, "0.2418")]
    public void The_share_sold_in_time(int pieces, string share) =>
        Assert.Equal(Number(share), new DemandCurve(50, 0.25m, 2).SoldShare(50, pieces, 2));

    [Fact]
    public void Where_many_come_all_are_sold() => Assert.Equal(1, new DemandCurve(50, 5000, 2).SoldShare(50, 1000, 10));

    /// <summary>
    /// The formula against dynamic programming: of so many thin slices of time, from the last back, the price that brings most, where selling one now
    /// leaves one fewer for the rest.
    /// </summary>
    [Fact]
    public void It_is_what_dynamic_programming_finds()
    {
        const int Slices = 6000, Pieces = 6;
        const double Time = 12, Slice = Time / Slices, Cost = 60.50168, Above = 52 / 1.8382;
        var atCost = 1.4635 * Math.Exp(-1.8382 * (Cost - 52) / 52);
        var (worth, prices) = (new double[Pieces + 1], new double[Pieces + 1]);
        for (var slice = 0; slice < Slices; slice++)
        {
            var before = worth.ToArray();
            for (var left = 1; left <= Pieces; left++)
                (worth[left], prices[left]) = Best(before[left], before[left - 1]);
        }

        foreach (var pieces in Enumerable.Range(1, Pieces))
            Assert.Equal(prices[pieces], (double)s_curve.Best(Least, pieces, 12, 2), 0.05);

        // What a slice brings is highest where its price is right: found by halving the range in which it is.
        (double Worth, double Price) Best(double stay, double sold)
        {
            var (low, high) = (Cost, Cost + 400);
            for (var i = 0; i < 60; i++)
            {
                var (one, other) = (low + (high - low) / 3, high - (high - low) / 3);
                (low, high) = At(one, stay, sold) < At(other, stay, sold) ? (one, high) : (low, other);
            }

            return (At(low, stay, sold), low);
        }

        double At(double price, double stay, double sold)
        {
            var chance = atCost * Math.Exp(-(price - Cost) / Above) * Slice;
            return stay + chance * (price - Cost + sold - stay);
        }
    }

    [Property]
    public Property It_falls_with_pieces_and_rises_with_time() => Prop.ForAll(Curves(), Gen.Choose(1, 60).ToArbitrary(),
        Gen.Choose(1, 60).ToArbitrary(), (curve, pieces, weeks) =>
        {
            var (best, endless) = (curve.Best(50, pieces, weeks, 2), curve.Best(50, null, weeks, 2));
            return curve.Best(50, pieces + 1, weeks, 2) <= best && curve.Best(50, pieces, weeks + 1, 2) >= best && best >= endless
                && endless == decimal.Round(50 + curve.Price / curve.Sensitivity, 2, MidpointRounding.AwayFromZero)
                && curve.Best(50, 100_000, weeks, 2) == endless;
        });

    [Property]
    public Property Fewer_come_at_a_higher_price_and_more_are_sold_in_more_time() => Prop.ForAll(Curves(),
        Gen.Choose(1, 30).ToArbitrary(), (curve, pieces) =>
            curve.RateAt(80) <= curve.RateAt(70)
            && curve.SoldShare(70, pieces, 4) >= curve.SoldShare(80, pieces, 4)
        && curve.SoldShare(70, pieces, 5) >= curve.SoldShare(70, pieces, 4) && curve.SoldShare(70, pieces, 4) is >= 0 and <= 1);

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static Arbitrary<DemandCurve> Curves() => (from price in Gen.Choose(1, 300)
                                                       from rate in Gen.Choose(1, 500)
                                                       from sensitivity in Gen.Choose(20, 700)
                                                       select new DemandCurve(price, rate / 100m, sensitivity / 100m)).ToArbitrary();
}
