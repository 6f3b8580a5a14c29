using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Prices;

/// <summary>
/// Pieces that have stood for long. What they cost is spent, so what counts is the best other use of a finished piece, and a price below the floor
/// can be right. Money a piece, unrounded.
/// </summary>
public sealed class SlowStock
{
    /// <summary>Older is slow.</summary>
    public const int OldDays = 365;

    /// <summary>Slow too is what sells within so many days with less than this chance.</summary>
    public const int SoonDays = 180;

    public const decimal LeastChance = 0.25m;

    private SlowStock(IEnumerable<WayOut> ways, decimal soldSoon) => (Ways, SoldSoon) =
        ([.. ways.OrderByDescending(way => way.Worth is not null).ThenByDescending(way => way.Worth).ThenBy(way => way.Way)], soldSoon);

    /// <summary>What can be done, largest first; ways that cannot be gone, and why, last.</summary>
    public IReadOnlyList<WayOut> Ways { get; }

    /// <summary>The chance that one of them is sold within 180 days, unrounded.</summary>
    public decimal SoldSoon { get; }

    /// <summary>Whether pieces of an age are not likely to be sold in half a year.</summary>
    public static bool IsUnlikely(SoldCurve curve, int age) => curve.ChanceWithin(age, SoonDays) < LeastChance;

    /// <summary>The ways out of pieces that can be bought on a channel.</summary>
    /// <param name="question">The design on its channel.</param>
    /// <param name="curve">What share of it is sold by which age.</param>
    /// <param name="stock">The pieces.</param>
    public static SlowStock Of(PriceQuestion question, SoldCurve curve, SlowPieces stock) => new(
        [Hold(question, curve, stock), MarkDown(question, stock, decimal.Max(0, Others(question.Piece, stock).Max(way => way.Worth) ?? 0)),
            .. Others(question.Piece, stock)],
        Chance(curve, stock, SoonDays));

    /// <summary>The ways out of pieces that are for sale nowhere.</summary>
    /// <param name="piece">What a piece takes.</param>
    /// <param name="curve">What share of it is sold by which age.</param>
    /// <param name="stock">The pieces.</param>
    public static SlowStock NotOnOffer(UnitCost piece, SoldCurve curve, SlowPieces stock) => new(
        [
            new WayOut(Way.Hold, null) { Reason = WayOutReason.NoPrice }, new WayOut(Way.MarkDown, null) { Reason = WayOutReason.NoPrice },
            .. Others(piece, stock),
        ],
        Chance(curve, stock, SoonDays));

    /// <summary>What can be done without a buyer at the full price.</summary>
    private static IEnumerable<WayOut> Others(UnitCost piece, SlowPieces stock)
    {
        if (stock.Rework is { } rework)
            yield return new WayOut(Way.Rework, rework);
        if (piece.Design.Seconds?.Price is { } second)
            yield return new WayOut(Way.Second, second);
    }

    /// <summary>The mean chance that one of the pieces is sold within so many days; unrounded.</summary>
    private static decimal Chance(SoldCurve curve, SlowPieces stock, int days) =>
        stock.Lots.Sum(lot => lot.Pieces * curve.ChanceWithin(lot.Age, days)) / stock.Pieces;

    private static WayOut Hold(PriceQuestion question, SoldCurve curve, SlowPieces stock)
    {
        if (stock.Price is not { } price)
            return new WayOut(Way.Hold, null) { Reason = WayOutReason.NoPrice };
        var (net, chance) = (Sale.Of(price, question.Demand.Offer.Channel).Net, Chance(curve, stock, OldDays));
        return new WayOut(Way.Hold, net * chance) { Price = price, Net = net, Chance = chance };
    }

    private static WayOut MarkDown(PriceQuestion question, SlowPieces stock, decimal other)
    {
        if (stock.IsAtGallery)
            return new WayOut(Way.MarkDown, null) { Reason = WayOutReason.UndercutsGallery };
        if (question.Demand.Curve(question.Sensitivity) is not { } curve || question.Best(other, stock.Pieces, stock.Time) is not { } best)
            return new WayOut(Way.MarkDown, null) { Reason = stock.Price is null ? WayOutReason.NoPrice : WayOutReason.NoDemand };
        // A price above today's marks nothing down.
        if (question.Prices.Terms.Grid.Last(best.Value) is not { } marked || marked >= stock.Price)
            return new WayOut(Way.MarkDown, null) { Best = best, Reason = WayOutReason.NotBelowPrice };
        var (net, share) = (Sale.Of(marked, question.Demand.Offer.Channel).Net, curve.SoldShare(marked, stock.Pieces, stock.Time));
        var full = stock.Price is { } price ? Margin.At(price, question.Piece, question.Demand.Offer.Channel, Aim.IdleHours) : (decimal?)null;
        return new WayOut(Way.MarkDown, net * share)
        {
            Price = marked,
            Net = net,
            Chance = share,
            Best = best,
            MayDisplace = full > 0 ? stock.Pieces * net / full : null,
            FullSaleLeaves = full,
        };
    }
}
