using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Orders;

/// <summary>What good pieces of a design brought on a channel, unrounded. Seconds are not in it: a design's credit has them.</summary>
/// <param name="Sku">The design's key.</param>
/// <param name="Channel">The channel's key.</param>
/// <param name="Pieces">Sold, less those that came back.</param>
/// <param name="Net">What of it reached the studio.</param>
public sealed record SoldOnChannel(string Sku, string Channel, int Pieces, decimal Net)
{
    /// <summary>What the lines of some days sold, by design and channel. What came back is taken off the last sales among them.</summary>
    /// <param name="movements">The lines, in any order.</param>
    /// <param name="channel">A channel by its key; lines of a channel that is not there do not count.</param>
    public static IReadOnlyList<SoldOnChannel> Of(IEnumerable<Movement> movements, Func<string, Channel?> channel) =>
        [.. OrderBook.Of(movements, channel).Orders.SelectMany(order => order.Lines).Where(line => line.Line.Grade == Grade.Good)
            .GroupBy(line => (line.Line.Sku, line.Order.Channel))
            .OrderBy(group => group.Key.Sku, StringComparer.Ordinal).ThenBy(group => group.Key.Channel, StringComparer.Ordinal)
            .Select(group => new SoldOnChannel(group.Key.Sku, group.Key.Channel, group.Sum(line => line.Line.Pieces - line.Returned),
                group.Sum(line => line.Kept)))];
}
