using PriceFloor.Evidence.Statistics;
using Xunit;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>The statistics of the worked example, level 0.9; every figure of it was computed twice, once by other software.</summary>
public sealed class WorkedExampleTests
{
    private readonly LearningFit _learning = LearningFit.Of(WorkedExample.Entries, 8, 0.9m).Fit!;

    [Fact]
    public void The_mean_of_7644_minutes_hides_that_the_work_got_quicker()
    {
        var ratio = Ratio.Of([.. WorkedExample.Minutes.Select(minutes => new RatioPart(minutes, 12))])!;
        Assert.Equal((7644m, 144m), (ratio.Amount, ratio.Per));
        Assert.Equal(new Estimate(53.08m, 50.39m, 55.78m), ratio.At(0.9m, 2));
    }

    [Fact]
    public void Today_a_piece_takes_48_20_minutes()
    {
        Assert.Equal(new Estimate(48.20m, 47.67m, 48.73m), _learning.Today);
        Assert.Equal(new Estimate(0.9257m, 0.9194m, 0.9320m), _learning.Rate);
        Assert.Equal(0.925709, double.Pow(2, _learning.Exponent), 6);
        Assert.Equal((77.91m, 47.37m, 45.90m), (_learning.First, _learning.MeanOfNext(60), _learning.MinutesOf(244)));
        Assert.Equal(7642.8, _learning.Fitted, 1);
        Assert.Equal(702m, decimal.Round(_learning.ExtraMinutes));
    }

    [Fact]
    public void The_first_and_last_loads_stand_for_these_pieces()
    {
        Assert.Equal(5.0952, LearningFit.Middle(0.5, 12.5, _learning.Exponent), 4);
        Assert.Equal(138.4518, LearningFit.Middle(132.5, 144.5, _learning.Exponent), 4);
    }

    [Fact]
    public void Without_fixed_minutes_it_would_be_48_15()
    {
        var free = LearningFit.Of(WorkedExample.Entries, 0, 0.9m).Fit!;
        Assert.Equal((0.9360m, 48.15m), (free.Rate.Value, free.Today.Value));
    }

    [Fact]
    public void The_load_of_six_counts()
    {
        var good = LotShare.Of(WorkedExample.Lots)!;
        Assert.Equal((144, 126), (good.Pieces, good.Counted));
        Assert.Equal((2.1472m, 67.06m), (decimal.Round(good.Together, 4), decimal.Round(good.Worth, 2)));
        Assert.Equal(new Estimate(0.8695m, 0.7971m, 0.9295m), good.At(0.9m));
        // One load of all of them says nothing of lots: plain Jeffreys, (126.5)/(145) = 0.8724.
        Assert.Equal(new Estimate(0.8724m, 0.8242m, 0.9147m), LotShare.Of([new Lot(144, 126)])!.At(0.9m));
    }

    [Fact]
    public void Of_126_pieces_90_are_sold_and_31_are_on_the_shelf()
    {
        var fates = WorkedExample.Fates().ToList();
        Assert.Equal((90, 5, 31), (Count(ShelfEnd.Sold), Count(ShelfEnd.Gone), Count(ShelfEnd.OnShelf)));
        int Count(ShelfEnd end) => fates.Count(fate => fate.Time.End == end);
    }

    [Fact]
    public void Of_pieces_made_0_8610_sell()
    {
        var curve = SoldCurve.Of(WorkedExample.Fates().Select(fate => fate.Time));
        Assert.Equal((0.5241, 0.7769), (Math.Round(curve.ShareAt(90).Share, 4), Math.Round(curve.ShareAt(180).Share, 4)));
        Assert.Equal(245, curve.OldestWith(5));
        Assert.Equal(new Estimate(0.8610m, 0.7895m, 0.9177m), curve.SoldBy(245, 0.9m));
        Assert.Equal(0.0393, curve.ShareAt(245).Error, 4);
        Assert.Equal(0.8844, curve.ShareAt(300).Share, 4);
        Assert.Equal(2, curve.AtRisk(300));
        Assert.Equal(83, curve.DaysToSell());
    }

    [Fact]
    public void Nine_designs_of_the_shelf_say_what_one_of_them_sells()
    {
        decimal[] orders = [93, 41, 18, 6, 55, 12, 29, 3, 70], weeks = [53, 50, 52, 40, 48, 30, 52, 20, 52];
        var prior = RatePrior.OfShelf([.. orders.Zip(weeks, (x, e) => new Sales(x, e))]);
        Assert.Equal((0.823678m, 0.304732m), (decimal.Round(prior.Mean, 6), decimal.Round(prior.Between, 6)));
        Assert.Equal((2.702961m, 2.226369m), (decimal.Round(prior.Exposure, 6), decimal.Round(prior.Orders, 6)));
        Assert.Equal(new Estimate(1.7989m, 1.4460m, 2.1830m), ToThree(prior.At(new Sales(62, 33), 0.9m)));
        Assert.Equal(new Estimate(1.4635m, 1.0720m, 1.9050m), ToThree(prior.At(new Sales(31, 20), 0.9m)));
        // Eight weeks at 52.00: 6, 11 and 19 orders.
        Assert.Equal((6, 11, 19), (Orders(0.05m), Orders(0.5m), Orders(0.95m)));

        static Estimate ToThree(Estimate rate) => rate with { Low = decimal.Round(rate.Low!.Value, 3), High = decimal.Round(rate.High!.Value, 3) };

        int Orders(decimal probability) => prior.OrdersWithin(new Sales(31, 20), 8, probability);
    }
}
