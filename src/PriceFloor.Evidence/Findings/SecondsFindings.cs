using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Orders;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Findings;

/// <summary>What rejected pieces of a design still brought.</summary>
internal static class SecondsFindings
{
    private const int Few = 5;

    /// <param name="stored">What the design says of seconds.</param>
    /// <param name="sold">The design's sold lines.</param>
    /// <param name="rejected">Pieces that the bench log says were rejected.</param>
    /// <param name="money">The profile's currency.</param>
    /// <param name="level">How often the intervals are to hold.</param>
    public static IEnumerable<Found<Design>> Of(Seconds? stored, IReadOnlyList<SoldLine> sold, long rejected, Currency money, decimal level)
    {
        var lines = sold.Where(line => line.Line.Grade == Grade.Second && line.Line.Pieces > line.Returned).ToList();
        long pieces = lines.Sum(line => line.Line.Pieces - line.Returned);
        if (pieces == 0)
            yield break;
        var price = Ratio.Of([.. lines.Select(line => new RatioPart(line.Kept, line.Line.Pieces - line.Returned))])!.At(level, money.Decimals);
        if (LotShare.Of([new Lot(rejected, long.Min(pieces, rejected))])?.At(level) is { } share)
            yield return new Found<Design>(
                new Finding
                {
                    Pointer = "/seconds/share",
                    Estimate = share,
                    Observations = rejected,
                    Of = "pieces rejected",
                    Stored = stored?.Share ?? 0,
                    Says = Finding.Judge(share, stored?.Share ?? 0, pieces >= Few),
                },
                design => design with { Seconds = (design.Seconds ?? new Seconds { Price = price.Value }) with { Share = share.Value } });
        yield return new Found<Design>(
            new Finding
            {
                Pointer = "/seconds/price",
                Estimate = price,
                Observations = pieces,
                Of = "seconds sold",
                Stored = stored?.Price ?? 0,
                Says = price.Value < 0 ? Says.TooFew : Finding.Judge(price, stored?.Price ?? 0, pieces >= Few),
            },
            design => design with { Seconds = (design.Seconds ?? new Seconds { Price = 0 }) with { Price = price.Value } });
    }
}
