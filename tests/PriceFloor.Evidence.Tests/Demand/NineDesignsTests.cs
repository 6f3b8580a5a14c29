using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Statistics;
using Xunit;

namespace PriceFloor.Evidence.Tests.Demand;

/// <summary>Demand in the worked example, from lines; its figures were computed twice.</summary>
public sealed class NineDesignsTests
{
    private static readonly DesignDemand s_pendant = NineDesigns.RiverDropPendant;

    [Fact]
    public void The_pendant_had_62_orders_in_33_weeks_at_46_and_31_in_20_at_52()
    {
        Assert.Equal([(46m, 62m, 33m), (52m, 31m, 20m)], s_pendant.Runs.Select(run => (run.Price!.Value, run.Sales.Orders, run.Sales.Exposure)));
        Assert.Equal(Exposure.Listed, s_pendant.Offer.Exposure);
        Assert.False(NineDesigns.Demand.Seasons.IsKnown);
    }

    [Fact]
    public void Nine_designs_say_what_one_usually_does()
    {
        var prior = s_pendant.Prior;
        Assert.Equal((0.823678m, 0.304732m, 2.702961m, 2.226369m), (decimal.Round(prior.Mean, 6), decimal.Round(prior.Between, 6),
            decimal.Round(prior.Exposure, 6), decimal.Round(prior.Orders, 6)));
        // 20/(2.702961 + 20).
        Assert.Equal(0.8809m, decimal.Round(s_pendant.OwnWeight!.Value, 4));
    }

    [Fact]
    public void It_sells_1_46_a_week_where_the_shelfs_median_is_0_56()
    {
        Assert.Equal(new Estimate(1.4635m, 1.072m, 1.905m), ToThree(s_pendant.Rate!.Value));
        Assert.Equal(new Estimate(1.7989m, 1.446m, 2.183m), ToThree(s_pendant.Prior.At(s_pendant.Runs[0].Sales, 0.9m)));
        // Of 93/53, 41/50, 18/52, 6/40, 55/48, 12/30, 29/52, 3/20 and 70/52 the one in the middle is 29/52.
        Assert.Equal(29m / 52, NineDesigns.Demand.Shelves[0].MedianRate);
    }

    [Fact]
    public void Eight_weeks_bring_6_11_or_19_orders()
    {
        var time = s_pendant.TimeOf(56);
        Assert.Equal(8, time);
        Assert.Equal((6, 11, 19), (s_pendant.OrdersWithin(time, 0.05m), s_pendant.OrdersWithin(time, 0.5m), s_pendant.OrdersWithin(time, 0.95m)));
    }

    [Fact]
    public void With_idle_hours_the_rise_to_52_may_lose_14_6_percent_and_lost_18_6()
    {
        // k1 = 0.971*46 - 2.445 - 8.0145 = 34.2065, k2 = 0.971*52 - 2.445 - 8.0145 = 40.0325: 1 - 34.2065/40.0325 = 0.1455.
        // Lost: 1 - (33.226369/22.702961)/(64.226369/35.702961) = 1 - 1.463525/1.798908 = 0.1864.
        var change = PriceChange.Of(s_pendant, NineDesigns.Piece, Aim.IdleHours)!;
        Assert.Equal((0.1455m, 0.1864m), (change.MayLose, change.Rates.Lost));
        Assert.Equal((0.40m, 0.84m), (change.Paid, change.Rates.Fell));
        Assert.Equal(365, change.OrdersToTell);
    }

    [Fact]
    public void With_scarce_hours_it_paid_as_each_sale_costs_less_than_before()
    {
        Assert.Equal(-14.08m, decimal.Round(Margin.At(46, NineDesigns.Piece, RiverDrop.Channel, Aim.ScarceHours), 2));
        Assert.Equal(-8.26m, decimal.Round(Margin.At(52, NineDesigns.Piece, RiverDrop.Channel, Aim.ScarceHours), 2, MidpointRounding.AwayFromZero));
        var change = PriceChange.Of(s_pendant, NineDesigns.Piece, Aim.ScarceHours)!;
        Assert.Equal(0.99983, change.Rates.Chance(-14.0813, -8.2553), 5);
        Assert.Equal((1.00m, null, null), (change.Paid, change.MayLose, change.OrdersToTell));
    }

    [Fact]
    public void For_eight_weeks_16_should_be_there()
    {
        // One too few loses 48.047 - 8.0145 = 40.0325, one too many 8.0145: 40.0325/48.047 = 0.8332 of all times enough. Of a negative binomial of
        // r = 33.226369 and p = 22.702961/30.702961 that is 16 (summed term by term elsewhere: P(orders <= 16) = 0.8819, the first above it).
        Assert.Equal(new MakeUpTo(0.8332m, 16), MakeUpTo.Of(s_pendant, NineDesigns.Piece, 52, 0, 8));
    }

    [Fact]
    public void A_leftover_that_loses_nothing_is_never_one_too_many() =>
        Assert.Equal(new MakeUpTo(1, null), MakeUpTo.Of(s_pendant, NineDesigns.Piece, 52, NineDesigns.Piece.Materials, 8));

    /// <summary>0.971*10 - 2.445 = 7.265 is less than the 8.0145 of materials.</summary>
    [Fact]
    public void Below_its_materials_none_should_be_made() =>
        Assert.Equal(new MakeUpTo(0, 0), MakeUpTo.Of(s_pendant, NineDesigns.Piece, 10, 0, 8));

    [Fact]
    public void The_order_of_lines_does_not_matter()
    {
        var again = NineDesigns.Of([.. NineDesigns.Movements.Reverse()], NineDesigns.Steps).On(NineDesigns.Sku, NineDesigns.Web)!;
        Assert.Equal(s_pendant.Runs, again.Runs);
        Assert.Equal(s_pendant.Rate, again.Rate);
    }

    private static Estimate ToThree(Estimate rate) =>
        rate with { Low = decimal.Round(rate.Low!.Value, 3), High = decimal.Round(rate.High!.Value, 3) };
}
