using PriceFloor.Evidence.Statistics;
using Xunit;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>Invented studios whose true numbers are known: how often the range of a finding holds the true one. Level 0.9.</summary>
public sealed class SimulatedStudioTests
{
    private const int Studios = 1000;

    [Fact]
    public void Nine_times_in_ten_the_true_good_share_is_within_the_range_where_loads_fail_together() => Holds(random =>
    {
        // Each of 30 loads of 12 has a share of its own about 0.85: a beta of 17 and 3, so pieces of a load fail together.
        var lots = Enumerable.Range(0, 30).Select(_ => Beta(random, 17, 3)).Select(share => new Lot(12, Count(random, 12, share))).ToList();
        return (LotShare.Of(lots)!.At(0.9m), 0.85m);
    });

    [Fact]
    public void So_are_the_true_minutes() => Holds(random =>
    {
        var parts = Enumerable.Range(0, 12).Select(_ => 8 + random.Next(9)).Select(pieces =>
            new RatioPart((decimal)(pieces * 40 * double.Exp(0.15 * Normal(random) - 0.15 * 0.15 / 2)), pieces)).ToList();
        return (Ratio.Of(parts)!.At(0.9m, 2), 40);
    });

    [Fact]
    public void So_is_the_true_share_sold() => Holds(random =>
    {
        // Half of them would be sold by 120 days and 0.75 by 240; one in 800 a day is given away. Seen between 60 and 400 days after they were made.
        var pieces = Enumerable.Range(0, 150).Select(_ =>
        {
            var (sold, gone, seen) = (-Math.Log(random.NextDouble()) * 150, -Math.Log(random.NextDouble()) * 800, 60 + random.Next(340));
            var end = (int)Math.Ceiling(Math.Min(sold, gone));
            return end > seen ? new ShelfTime(seen, ShelfEnd.OnShelf) : new ShelfTime(end, sold < gone ? ShelfEnd.Sold : ShelfEnd.Gone);
        });
        // By 200 days: 800/950 of all ends are sales, and 1 - e^(-200/150 - 200/800) have ended: 0.8421 * 0.7947 = 0.6692.
        return (SoldCurve.Of([.. pieces]).SoldBy(200, 0.9m), 0.6692m);
    });

    private static void Holds(Func<Random, (Estimate Found, decimal Truth)> simulate)
    {
        var held = 0;
        for (var studio = 0; studio < Studios; studio++)
        {
            var (found, truth) = simulate(new Random(studio));
            held += found.Low <= truth && truth <= found.High ? 1 : 0;
        }

        Assert.InRange((double)held / Studios, 0.85, 0.93);
    }

    private static int Count(Random random, int pieces, double share) => Enumerable.Range(0, pieces).Count(_ => random.NextDouble() < share);

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>Of whole a and b: the sums of that many waiting times.</summary>
    private static double Beta(Random random, int a, int b)
    {
        var (one, other) = (Waits(random, a), Waits(random, b));
        return one / (one + other);
    }

    private static double Waits(Random random, int count) => Enumerable.Range(0, count).Sum(_ => -Math.Log(1 - random.NextDouble()));
}
