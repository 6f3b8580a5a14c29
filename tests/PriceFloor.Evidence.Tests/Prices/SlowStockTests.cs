using PriceFloor.Evidence.Prices;
using PriceFloor.Evidence.Statistics;
using PriceFloor.Evidence.Tests.Demand;
using Xunit;

namespace PriceFloor.Evidence.Tests.Prices;

/// <summary>Ways out of pieces that have stood for long.</summary>
public sealed class SlowStockTests
{
    private static readonly PriceQuestion s_pendant =
        new(NineDesigns.RiverDropPendant, NineDesigns.Piece, NineDesigns.Prices, NineDesigns.FourChanges);

    /// <summary>Of four pieces one is sold at 100 days and one at 400; two stand at 500. C: 1/4, then 2/4.</summary>
    private static readonly SoldCurve s_curve =
        SoldCurve.Of([new(100, ShelfEnd.Sold), new(400, ShelfEnd.Sold), new(500, ShelfEnd.OnShelf, 2)]);

    /// <summary>At 300 days three of four are there. Of these one is sold within the next 180: 1/3. At 450 nothing more is known to sell.</summary>
    [Fact]
    public void The_chance_to_sell_is_that_of_the_pieces_that_got_so_old()
    {
        Assert.Equal((0.3333m, 0m), (s_curve.ChanceWithin(300, 180), s_curve.ChanceWithin(450, 365)));
        Assert.False(SlowStock.IsUnlikely(s_curve, 300));
        Assert.True(SlowStock.IsUnlikely(s_curve, 450));
        // Within 180 days of day 150 none is sold.
        Assert.True(SlowStock.IsUnlikely(s_curve, 150));
    }

    [Fact]
    public void Worked_over_it_keeps_9_so_ten_of_them_may_be_marked_down_to_45_16()
    {
        // Worked example of the model: half the rate for eight weeks, which is the rate for four.
        var ways = SlowStock.Of(s_pendant, s_curve, new SlowPieces(Old(10), 4, 52, 9, IsAtGallery: false)).Ways;
        var down = Assert.Single(ways, way => way.Way == Way.MarkDown);
        Assert.Equal((45.16m, 45.16m), (down.Best!.Value.Value, down.Price));
        // net(45.16) = 0.971*45.16 - 2.445 = 41.40536. Ten of them over 40.0325, what one sale at 52 leaves.
        Assert.Equal(10 * 41.40536m / (48.047m - NineDesigns.Piece.Materials), down.MayDisplace);
        // Waiting: net(52) = 48.047, of which a third is sold within a year (0.3333).
        Assert.Equal(48.047m * 0.3333m, Assert.Single(ways, way => way.Way == Way.Hold).Worth);
        Assert.Equal(9, Assert.Single(ways, way => way.Way == Way.Rework).Worth);
        Assert.Equal(ways.OrderByDescending(way => way.Worth), ways);
    }

    [Fact]
    public void A_gallery_is_not_undercut()
    {
        var stock = SlowStock.Of(s_pendant, s_curve, new SlowPieces(Old(10), 8, 52, null, IsAtGallery: true));
        var down = stock.Ways[^1];
        Assert.Equal((Way.MarkDown, WayOutReason.UndercutsGallery, null), (down.Way, down.Reason, down.Worth));
    }

    [Fact]
    public void What_is_not_listed_cannot_be_held_at_a_price()
    {
        var ways = SlowStock.Of(s_pendant, s_curve, new SlowPieces(Old(3), 8, null, null, IsAtGallery: false)).Ways;
        Assert.Equal((null, WayOutReason.NoPrice), Worth(Assert.Single(ways, way => way.Way == Way.Hold)));
        Assert.DoesNotContain(ways, way => way.Way is Way.Rework or Way.Second);
    }

    [Fact]
    public void A_best_price_above_the_present_one_marks_nothing_down()
    {
        var down = Assert.Single(SlowStock.Of(s_pendant, s_curve, new SlowPieces(Old(1), 52, 52, null, IsAtGallery: false)).Ways,
            way => way.Way == Way.MarkDown);
        Assert.True(down.Best!.Value.Value > 52);
        Assert.Equal((null, null, WayOutReason.NotBelowPrice), (down.Worth, down.Price, down.Reason));
    }

    /// <summary>Of three at 300 days one in three is sold within a year, of one at 450 none: (3 * 0.3333 + 0)/4.</summary>
    [Fact]
    public void Waiting_brings_the_mean_of_pieces_of_different_ages()
    {
        var stock = new SlowPieces([.. Old(3), new AgedPieces(default, 450, 1)], 8, 52, null, IsAtGallery: false);
        Assert.Equal(48.047m * 0.3333m * 3 / 4, Assert.Single(SlowStock.Of(s_pendant, s_curve, stock).Ways, way => way.Way == Way.Hold).Worth);
    }

    [Fact]
    public void What_is_for_sale_nowhere_can_only_be_taken_apart()
    {
        var ways = SlowStock.NotOnOffer(NineDesigns.Piece, s_curve, new SlowPieces(Old(2), 0, null, 4, IsAtGallery: false)).Ways;
        Assert.Equal((Way.Rework, 4), (ways[0].Way, ways[0].Worth));
        Assert.All(ways.Skip(1), way => Assert.Equal((null, WayOutReason.NoPrice), Worth(way)));
    }

    private static AgedPieces[] Old(int pieces) => [new AgedPieces(default, 300, pieces)];

    private static (decimal?, WayOutReason?) Worth(WayOut way) => (way.Worth, way.Reason);
}
