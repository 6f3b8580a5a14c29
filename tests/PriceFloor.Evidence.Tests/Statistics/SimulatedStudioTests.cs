using System.Globalization;
using PriceFloor.Evidence.Statistics;
using Xunit;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>
/// Invented studios whose true numbers are known: how often the range of a finding holds the true one. Level 0.9. A nightly run simulates more of
/// them, by PRICEFLOOR_SIMULATED_STUDIOS.
/// </summary>
public sealed class SimulatedStudioTests
{
    private static readonly int s_studios = int.TryParse(Environment.GetEnvironmentVariable("PRICEFLOOR_SIMULATED_STUDIOS"),
        CultureInfo.InvariantCulture, out var set) ? set : 1000;

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

    [Fact]
    public void So_are_the_minutes_of_today_of_a_design_that_is_still_learned() => Holds(random =>
        (Learned(random).Today, 8 + (decimal)(70 * Math.Pow(LearnedPieces, LearningExponent))));

    [Fact]
    public void So_is_the_rate_at_which_it_is_learned() => Holds(random => (Learned(random).Rate, (decimal)Math.Pow(2, LearningExponent)));

    [Fact]
    public void So_is_the_rate_of_one_design_among_others_of_the_shelf() => Holds(random =>
    {
        // Twelve designs whose orders a week differ as a gamma of 2 and 2.5 does; each 20 to 59 weeks on offer.
        var (rates, designs) = (new List<double>(), new List<Sales>());
        for (var i = 0; i < 12; i++)
        {
            var weeks = 20 + random.Next(40);
            rates.Add(Waits(random, 2) / 2.5);
            designs.Add(new Sales(Arrivals(random, rates[i] * weeks), weeks));
        }

        return (RatePrior.OfShelf(designs).At(designs[0], 0.9m), (decimal)rates[0]);
    });

    [Fact]
    public void So_is_the_rate_of_a_design_that_stands_alone() => Holds(random =>
    {
        var rate = 0.3 + random.NextDouble();
        return (RatePrior.Nothing.At(new Sales(Arrivals(random, rate * 40), 40), 0.9m), (decimal)rate);
    });

    private const int LearnedEntries = 12, LearnedPieces = 144;
    private const double LearningExponent = -0.15;

    /// <summary>
    /// Twelve batches of twelve: 8 minutes that cannot be learned away and 70 * n^-0.15, each batch some hundredths quicker or slower by chance.
    /// </summary>
    private static LearningFit Learned(Random random)
    {
        var entries = Enumerable.Range(0, LearnedEntries).Select(batch =>
        {
            var curve = Enumerable.Range((12 * batch) + 1, 12).Sum(n => 70 * Math.Pow(n, LearningExponent));
            return new LearningEntry(12, (decimal)((12 * 8) + (curve * Math.Exp((0.06 * Normal(random)) - (0.06 * 0.06 / 2)))));
        });
        return LearningFit.Of([.. entries], 8, 0.9m).Fit!;
    }

    /// <summary>How many come in a time in which so many are to be expected: waits between them are exponential.</summary>
    private static int Arrivals(Random random, double expected)
    {
        var (count, time) = (0, Waits(random, 1));
        for (; time < expected; count++)
            time += Waits(random, 1);
        return count;
    }

    private static void Holds(Func<Random, (Estimate Found, decimal Truth)> simulate)
    {
        var held = 0;
        for (var studio = 0; studio < s_studios; studio++)
        {
            var (found, truth) = simulate(new Random(studio));
            held += found.Low <= truth && truth <= found.High ? 1 : 0;
        }

        Assert.InRange((double)held / s_studios, 0.85, 0.93);
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
