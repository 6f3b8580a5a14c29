using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Orders;
using PriceFloor.Evidence.Shelves;

namespace PriceFloor.Evidence.Demand;

/// <summary>
/// One design on one channel: what was asked when, on which days it could be bought, and its orders. It rests on this design's own lines only, so it
/// can be kept as long as they are the same.
/// </summary>
public sealed class OfferedDesign
{
    private OfferedDesign(DesignEvidence design, string channelKey, Channel channel) => (Design, Key, Channel) = (design, channelKey, channel);

    public DesignEvidence Design { get; }

    public string Sku => Design.Known.Sku;

    /// <summary>The channel's key.</summary>
    public string Key { get; }

    public Channel Channel { get; }

    public Exposure Exposure { get; private init; }

    /// <summary>The days on which it could be bought; of a stall the first day of each event.</summary>
    public IReadOnlyList<DaySpan> Days { get; private init; } = [];

    /// <summary>Its orders in order of day.</summary>
    public IReadOnlyList<OrderDay> Orders { get; private init; } = [];

    /// <summary>What was asked from which day on; each differs from the one before. Empty where no price is known.</summary>
    public IReadOnlyList<PriceStep> Prices { get; private init; } = [];

    /// <summary>The last day that counts.</summary>
    public DateOnly To => Design.Shelf.To;

    /// <summary>What is asked now; null where it is not listed, or nothing is known.</summary>
    public decimal? Price => Prices.Count == 0 ? null : Prices[^1].Price;

    /// <summary>The highest price ever asked.</summary>
    public decimal? HighestAsked => Prices.Max(step => step.Price);

    public int Pieces => Orders.Sum(order => order.Pieces);

    /// <summary>Pieces an order, unrounded; 1 where there is none.</summary>
    public decimal PiecesPerOrder => Orders.Count == 0 ? 1 : (decimal)Pieces / Orders.Count;

    /// <summary>Days from the first on which it could be bought, or was sold, to the last that counts; 0 where there is none.</summary>
    public int DaysOnOffer => First is { } first ? new DaySpan(first, To).Days : 0;

    /// <summary>Of the days on offer, the share on which none was there; null where the lines do not say what was.</summary>
    public decimal? SoldOutShare => Exposure == Exposure.InStock && DaysOnOffer is > 0 and var offered
        ? 1 - (decimal)Days.Sum(span => span.Days) / offered : null;

    private DateOnly? First => Days.Count == 0 ? Orders.Count == 0 ? null : Orders[0].On
        : Orders.Count == 0 || Days[0].From < Orders[0].On ? Days[0].From : Orders[0].On;

    /// <summary>The offers of a design: each channel on which it was sold or is listed, by key.</summary>
    /// <param name="design">The design.</param>
    /// <param name="channels">All channels of the design's currency, by key.</param>
    /// <param name="listed">What was listed on a channel, by its key, in order of day.</param>
    /// <param name="events">The first day of each event of a channel, in order; asked of stalls only.</param>
    public static IReadOnlyList<OfferedDesign> Of(DesignEvidence design, IEnumerable<KeyValuePair<string, Channel>> channels,
        Func<string, IReadOnlyList<PriceStep>> listed, Func<string, IReadOnlyList<DateOnly>> events)
    {
        var sold = design.Log.Sold.Where(line => line.Line.Grade == Grade.Good)
            .ToLookup(line => line.Order.Channel, StringComparer.Ordinal);
        return [.. channels.OrderBy(channel => channel.Key, StringComparer.Ordinal)
            .Select(channel => Of(design, channel.Key, channel.Value, [.. sold[channel.Key]], listed(channel.Key), events))
            .OfType<OfferedDesign>()];
    }

    private static OfferedDesign? Of(DesignEvidence design, string key, Channel channel, List<SoldLine> sold, IReadOnlyList<PriceStep> listed,
        Func<string, IReadOnlyList<DateOnly>> events)
    {
        if (sold.Count == 0 && listed.Count == 0)
            return null;
        var orders = sold.GroupBy(line => line.Order)
            .Select(lines => new OrderDay(lines.Min(line => line.Line.On), lines.Sum(line => line.Line.Pieces))).OrderBy(order => order.On).ToList();
        var prices = OfferedPrices.Of(listed, sold.Select(line => line.Line));
        var (exposure, days) = OfferedDays.Of(design.Shelf, key, channel, listed, orders, events);
        return new OfferedDesign(design, key, channel) { Exposure = exposure, Days = days, Orders = orders, Prices = prices };
    }
}
