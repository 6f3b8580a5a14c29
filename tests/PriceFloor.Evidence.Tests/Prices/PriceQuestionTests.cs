using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Prices;
using PriceFloor.Evidence.Statistics;
using PriceFloor.Evidence.Tests.Demand;
using Xunit;

namespace PriceFloor.Evidence.Tests.Prices;

/// <summary>What demand suggests in the worked example; its figures were computed twice.</summary>
public sealed class PriceQuestionTests
{
    private static readonly PriceQuestion s_pendant =
        new(NineDesigns.RiverDropPendant, NineDesigns.Piece, NineDesigns.Prices, NineDesigns.FourChanges);

    private static decimal Floor => Margin.Cost(NineDesigns.Piece, RiverDrop.Channel, Aim.ScarceHours);

    [Fact]
    public void The_floor_price_and_what_buyers_bear_make_88_79()
    {
        // V = (56.3021 + 2.445)/0.971 = 60.5017, and 52/1.8382, 52/3.16, 52/0.75.
        Assert.Equal(60.5017m, decimal.Round(NineDesigns.Terms.PriceLeaving(Floor), 4));
        Assert.Equal(new Estimate(88.79m, 76.96m, 129.84m), s_pendant.Best(Floor, null, 8));
        Assert.Equal(138.44m, s_pendant.Best(Floor, 1, 12)!.Value.Value);
    }

    [Fact]
    public void One_step_from_52_is_59_80_which_is_below_the_floor_price_of_60_51()
    {
        Assert.Equal(60.51m, NineDesigns.Prices.FloorPrice);
        Assert.Equal(new NextPrice(null, NextPriceReason.FloorBeyondOneStep), s_pendant.Next(88.79m));
        Assert.Equal(new NextPrice(59.80m), s_pendant.Next(88.79m, mayBeBelowFloor: true));
    }

    [Fact]
    public void At_62_it_brings_1_50_a_week_above_the_floor_and_46_36_an_hour()
    {
        var at = s_pendant.At(62)!;
        Assert.Equal((1.03m, 1.50m, 46.36m, 51.12m), (decimal.Round(at.Orders, 2), Money(at.AboveFloor), Money(at.EarnedPerBenchHour),
            Money(at.Contribution)));
    }

    [Fact]
    public void At_52_it_is_12_08_short_but_with_idle_hours_it_leaves_more_than_at_62()
    {
        var at = s_pendant.At(52)!;
        Assert.Equal((-12.08m, 58.59m), (Money(at.AboveFloor), Money(at.Contribution)));
    }

    /// <summary>(8.0145 + 2.445)/0.971 + 52/1.8382 = 10.7719 + 28.2886 = 39.06.</summary>
    [Fact]
    public void With_idle_hours_the_best_price_is_low() =>
        Assert.Equal(39.06m, s_pendant.Best(Margin.Cost(NineDesigns.Piece, RiverDrop.Channel, Aim.IdleHours), null, 8)!.Value.Value);

    [Fact]
    public void A_next_price_lies_on_the_grid_below_the_step()
    {
        // Steps of 1.00 that end in 0.95: one step from 60.00 is 69.00, and 68.95 is the last allowed price up to it.
        var channel = RiverDrop.Channel with { PriceStep = 1, PriceEnding = 0.95m };
        Assert.Equal(68.95m, Next(channel, 60, 100m).Price);
        Assert.Equal(62.95m, Next(channel, 60, 63.50m).Price);
    }

    [Fact]
    public void A_price_stands_for_thirty_days()
    {
        var question = On(RiverDrop.Channel, [new(NineDesigns.FirstDay, 60), new(NineDesigns.LastDay.AddDays(-29), 63)]);
        Assert.Equal(NextPriceReason.ChangedLately, question.Next(88.79m).Reason);
        Assert.Equal(72.45m, On(RiverDrop.Channel, [new(NineDesigns.FirstDay, 60), new(NineDesigns.LastDay.AddDays(-30), 63)]).Next(88.79m).Price);
    }

    [Fact]
    public void Within_an_edition_the_price_never_falls()
    {
        var question = On(RiverDrop.Channel, [new(NineDesigns.FirstDay, 80)]);
        Assert.Equal(70, question.Next(70).Price);
        Assert.Equal(80, question.Next(70, neverFalls: true).Price);
    }

    /// <summary>The highest ever asked counts, not what is asked now: 70 * 1.15 = 80.50.</summary>
    [Fact]
    public void A_step_is_from_the_highest_price_ever_asked() =>
        Assert.Equal(80.50m, On(RiverDrop.Channel, [new(NineDesigns.FirstDay, 70), new(NineDesigns.FirstDay.AddDays(90), 62)]).Next(200).Price);

    [Fact]
    public void Without_a_price_there_is_nothing_to_suggest()
    {
        var question = s_pendant with { Demand = NineDesigns.Of(NineDesigns.Movements, _ => []).On(NineDesigns.Sku, NineDesigns.Web)! };
        Assert.Null(question.Best(Floor, null, 8));
        Assert.Null(question.At(52));
    }

    private static NextPrice Next(Channel channel, decimal asked, decimal best) => On(channel, [new(NineDesigns.FirstDay, asked)]).Next(best);

    private static PriceQuestion On(Channel channel, IReadOnlyList<PriceStep> steps) =>
        new(NineDesigns.Of(NineDesigns.Movements, _ => steps, channel: channel).On(NineDesigns.Sku, NineDesigns.Web)!, NineDesigns.Piece,
            ChannelPrices.Of(FloorPrice.Of(NineDesigns.Piece, null).Value, SellingTerms.Of(channel).Value).Value, NineDesigns.FourChanges);

    private static decimal Money(decimal amount) => Currency.Of("USD").Round(amount);
}
