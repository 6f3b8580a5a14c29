using PriceFloor.Evidence.Statistics;
using PriceFloor.Evidence.Tests.Demand;
using Xunit;

namespace PriceFloor.Evidence.Tests.Statistics;

/// <summary>How buyers answer to price.</summary>
public sealed class SensitivityTests
{
    /// <summary>Worked example of the model: four changes say 1.843 alone, 1.838 (0.75 to 3.16) with what is known in general.</summary>
    [Fact]
    public void Four_changes_of_the_shelf()
    {
        var found = NineDesigns.FourChanges;
        Assert.Equal((1.838m, 0.75m, 3.16m), (decimal.Round(found.Estimate.Value, 3), found.Estimate.Low, found.Estimate.High));
        // 31 + 15 + 9 + 12.
        Assert.Equal((67m, 4, false), (found.ChangedOrders, found.Changes, found.IsGeneral));
        Assert.Equal(1.843m, Sensitivity.MostLikely(
            [
                [NineDesigns.Run(46, 33, 62), NineDesigns.Run(52, 20, 31)],
                [NineDesigns.Run(30, 26, 22), NineDesigns.Run(34, 26, 15)],
                [NineDesigns.Run(80, 40, 12), NineDesigns.Run(90, 30, 9)],
                [NineDesigns.Run(24, 20, 14), NineDesigns.Run(22, 12, 12)],
            ]));
    }

    /// <summary>A gamma distribution of 4 and 2: mean 2, nine in ten between 0.68 and 3.88.</summary>
    [Fact]
    public void With_29_orders_after_changes_nothing_is_taken_from_the_shelf()
    {
        var found = Sensitivity.Of([[NineDesigns.Run(46, 33, 62), NineDesigns.Run(52, 20, 29)]], 0.9m);
        Assert.Equal((new Estimate(2, 0.68m, 3.88m), true), (found.Estimate, found.IsGeneral));
    }

    [Fact]
    public void Designs_of_one_price_say_nothing()
    {
        var found = Sensitivity.Of([[NineDesigns.Run(46, 33, 62)], [NineDesigns.Run(30, 33, 62), NineDesigns.Run(30, 5, 12)], []], 0.9m);
        Assert.Equal((0m, 0), (found.ChangedOrders, found.Changes));
    }

    /// <summary>
    /// 1,000 orders a week at 50.00 and 1,000 * exp(-2 * 0.2) = 670.32 at 60.00, a hundred weeks each: so many orders leave no doubt about 2.
    /// </summary>
    [Fact]
    public void Many_orders_leave_no_doubt()
    {
        var found = Sensitivity.Of([[NineDesigns.Run(50, 100, 100_000), NineDesigns.Run(60, 100, 67_032)]], 0.9m);
        Assert.Equal(2.00m, decimal.Round(found.Estimate.Value, 2));
        Assert.InRange(found.Estimate.High!.Value - found.Estimate.Low!.Value, 0, 0.1m);
    }

    [Fact]
    public void A_run_without_an_order_counts_too()
    {
        var sold = Sensitivity.Of([[NineDesigns.Run(46, 33, 62), NineDesigns.Run(52, 20, 31)]], 0.9m);
        var none = Sensitivity.Of([[NineDesigns.Run(46, 33, 62), NineDesigns.Run(52, 20, 31), NineDesigns.Run(60, 20, 0)]], 0.9m);
        Assert.True(none.Estimate.Value > sold.Estimate.Value);
    }
}
