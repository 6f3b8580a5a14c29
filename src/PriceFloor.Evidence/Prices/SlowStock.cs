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

    private SlowStock(IReadOnlyList<WayOut> ways, decimal soldSoon) => (Ways, SoldSoon) = (ways, soldSoon);

    /// <summary>What can be done, largest first; ways that cannot be gone, and why, last.</summary>
    public IReadOnlyList<WayOut> Ways { get; }

    /// <summary>The chance that one of them is sold within 180 days, to 4 decimals.</summary>
    public decimal SoldSoon { get; }

    /// <summary>Whether pieces of an age are slow: older than a year, or not likely to be sold in half a year.</summary>
    public static bool Is(SoldCurve curve, int age) => age > OldDays || curve.ChanceWithin(age, SoonDays) < LeastChance;

    /// <summary>The ways out of pieces of one age.</summary>
    /// <param name="question">The design on its channel.</param>
    /// <param name="curve">What share of it is sold by which age.</param>
    /// <param name="stock">The pieces.</param>
    public static SlowStock Of(PriceQuestion question, SoldCurve curve, SlowPieces stock)
    {
        var seconds = question.Piece.Design.Seconds?.Price;
        var other = decimal.Max(0, decimal.Max(stock.Rework ?? 0, seconds ?? 0));
        var ways = new List<WayOut> { Hold(question, curve, stock), MarkDown(question, stock, other) };
        if (stock.Rework is { } rework)
            ways.Add(new WayOut(Way.Rework, rework));
        if (seconds is { } second)
            ways.Add(new WayOut(Way.Second, second));
        return new SlowStock([.. ways.OrderByDescending(way => way.Worth is not null).ThenByDescending(way => way.Worth).ThenBy(way => way.Way)],
            curve.ChanceWithin(stock.Age, SoonDays));
    }

    /// <summary>So many full-price sales lost elsewhere, and a mark-down was for nothing; null where a full-price sale leaves nothing.</summary>
    internal static decimal? MayDisplace(int pieces, decimal marked, decimal price, PriceQuestion question)
    {
        var (channel, piece) = (question.Demand.Offer.Channel, question.Piece);
        var full = Margin.At(price, piece, channel, Aim.IdleHours);
        return full > 0 ? pieces * Sale.Of(marked, channel).Net / full : null;
    }

    private static WayOut Hold(PriceQuestion question, SoldCurve curve, SlowPieces stock) =>
        new(Way.Hold, stock.Price is { } price
            ? Sale.Of(price, question.Demand.Offer.Channel).Net * curve.ChanceWithin(stock.Age, OldDays) : null)
        {
            Price = stock.Price,
        };

    private static WayOut MarkDown(PriceQuestion question, SlowPieces stock, decimal other)
    {
        if (stock.IsAtGallery)
            return new WayOut(Way.MarkDown, null) { UndercutsGallery = true };
        if (question.Demand.Curve(question.Sensitivity) is not { } curve || question.Best(other, stock.Pieces, stock.Time) is not { } best)
            return new WayOut(Way.MarkDown, null);
        // A price above today's marks nothing down.
        var next = question.Prices.Terms.Grid.Last(best.Value);
        if (next is not { } marked || marked >= stock.Price)
            return new WayOut(Way.MarkDown, null) { Best = best };
        return new WayOut(Way.MarkDown, Sale.Of(marked, question.Demand.Offer.Channel).Net * curve.SoldShare(marked, stock.Pieces, stock.Time))
        {
            Price = marked,
            Best = best,
            MayDisplace = stock.Price is { } price ? MayDisplace(stock.Pieces, marked, price, question) : null,
        };
    }
}
