using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Shelves;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Demand;

/// <summary>
/// One design on one channel: what was asked when, on which days it could be bought, and its orders. It rests on this design's own lines only, so it
/// can be kept as long as they are the same.
/// </summary>
public sealed class OfferedDesign
{
    private (DateOnly From, IReadOnlyList<int> Orders)? _byMonth;

    private OfferedDesign(string sku, string channelKey, Channel channel, DateOnly to) => (Sku, Key, Channel, To) = (sku, channelKey, channel, to);

    /// <summary>The design's key.</summary>
    public string Sku { get; }

    /// <summary>The channel's key.</summary>
    public string Key { get; }

    public Channel Channel { get; }

    public Exposure Exposure { get; private init; }

    /// <summary>The days on which it could be bought; of a stall the first day of each event.</summary>
    public IReadOnlyList<DaySpan> Days { get; private init; } = [];

    /// <summary>How many orders it has.</summary>
    public int Orders => OrderDays.Count;

    /// <summary>The day of the first order; null if there is none.</summary>
    public DateOnly? FirstOrder => Orders == 0 ? null : DateOnly.FromDayNumber(OrderDays[0]);

    /// <summary>The number of each order's day, in order.</summary>
    internal CompactNumbers OrderDays { get; private init; } = CompactNumbers.None;

    /// <summary>What was asked from which day on; each differs from the one before. Empty where no price is known.</summary>
    public IReadOnlyList<PriceStep> Prices { get; private init; } = [];

    /// <summary>The last day that counts.</summary>
    public DateOnly To { get; }

    /// <summary>t: bench hours a sold piece, as found; null where it has no floor.</summary>
    public decimal? BenchHours { get; private init; }

    /// <summary>What is asked now; null where it is not listed, or nothing is known.</summary>
    public decimal? Price => Prices.Count == 0 ? null : Prices[^1].Price;

    /// <summary>The highest price ever asked.</summary>
    public decimal? HighestAsked => Prices.Max(step => step.Price);

    public int Pieces { get; private init; }

    /// <summary>Pieces an order, unrounded; 1 where there is none.</summary>
    public decimal PiecesPerOrder => Orders == 0 ? 1 : (decimal)Pieces / Orders;

    /// <summary>Days from the first on which it could be bought, or was sold, to the last that counts; 0 where there is none.</summary>
    public int DaysOnOffer => First is { } first ? new DaySpan(first, To).Days : 0;

    /// <summary>Of the days on offer, the share on which none was there; null where the lines do not say what was.</summary>
    public decimal? SoldOutShare => Exposure == Exposure.InStock && DaysOnOffer is > 0 and var offered
        ? 1 - (decimal)Days.Sum(span => span.Days) / offered : null;

    /// <summary>The first day on which it could be bought, or was sold; null where there is none.</summary>
    internal DateOnly? First => Days.Count == 0 || FirstOrder < Days[0].From ? FirstOrder : Days[0].From;

    /// <summary>The offers of a design: each channel on which it was sold or is listed, by key.</summary>
    /// <param name="design">The design.</param>
    /// <param name="channels">All channels of the design's currency, by key.</param>
    /// <param name="listed">What was listed on a channel, by its key, in order of day.</param>
    /// <param name="events">The first day of each event of a channel, in order; asked of stalls only.</param>
    public static IReadOnlyList<OfferedDesign> Of(DesignEvidence design, IEnumerable<KeyValuePair<string, Channel>> channels,
        Func<string, IReadOnlyList<PriceStep>> listed, Func<string, IReadOnlyList<DateOnly>> events) =>
        Of(design.Known.Sku, design.Shelf, design.Log.Sold.Select(line => line.Line), design.AsFound.Found?.BenchHours, channels, listed, events);

    /// <summary>The same of a design whose findings nobody asks for.</summary>
    /// <param name="sku">Its key.</param>
    /// <param name="shelf">What became of its pieces.</param>
    /// <param name="movements">Its movements, of which sales count whose money is the channel's.</param>
    /// <param name="benchHours">Bench hours a sold piece; null: not known.</param>
    /// <param name="channels">All channels of the design's currency, by key.</param>
    /// <param name="listed">What was listed on a channel, by its key, in order of day.</param>
    /// <param name="events">The first day of each event of a channel, in order; asked of stalls only.</param>
    public static IReadOnlyList<OfferedDesign> Of(string sku, ShelfHistory shelf, IEnumerable<Movement> movements, decimal? benchHours,
        IEnumerable<KeyValuePair<string, Channel>> channels, Func<string, IReadOnlyList<PriceStep>> listed,
        Func<string, IReadOnlyList<DateOnly>> events)
    {
        var sold = movements.Where(line => line is { What: MovementKind.Sold, Grade: Grade.Good, Channel: not null } && line.On <= shelf.To)
            .ToLookup(line => line.Channel!, StringComparer.Ordinal);
        var offers = new List<OfferedDesign>();
        foreach (var (key, channel) in channels.OrderBy(channel => channel.Key, StringComparer.Ordinal))
        {
            IReadOnlyList<Movement> own = sold[key].Where(line => line.Currency is null || line.Currency == channel.Currency).ToList();
            var asked = listed(key);
            if (own.Count == 0 && asked.Count == 0)
                continue;
            own = InOrder.Of(own, InOrder.ByDay);
            var (orders, pieces) = DaysOfOrders(own);
            var (exposure, days) = OfferedDays.Of(shelf, key, channel, asked, Between(orders), events);
            offers.Add(new OfferedDesign(sku, key, channel, shelf.To)
            {
                BenchHours = benchHours,
                Exposure = exposure,
                Days = days,
                OrderDays = orders,
                Pieces = pieces,
                Prices = OfferedPrices.Of(asked, own),
            });
        }

        return offers;
    }

    /// <summary>How many orders after a day and up to the last that counts were in each month, January first. The last answer is kept.</summary>
    internal IReadOnlyList<int> OrdersByMonth(DateOnly after)
    {
        if (_byMonth is { } known && known.From == after)
            return known.Orders;
        var orders = new int[Seasons.Months];
        for (var i = OrderDays.CountBelow(after.DayNumber + 1); i < OrderDays.Count && OrderDays[i] <= To.DayNumber; i++)
            orders[DateOnly.FromDayNumber(OrderDays[i]).Month - 1]++;
        _byMonth = (after, orders);
        return orders;
    }

    /// <summary>An order is of the day of its first line. With the pieces of all.</summary>
    private static (CompactNumbers Days, int Pieces) DaysOfOrders(IReadOnlyList<Movement> sold)
    {
        var (days, known, pieces) = (new List<int>(sold.Count), new HashSet<LineId>(), 0);
        foreach (var line in sold)
        {
            pieces = checked(pieces + line.Pieces);
            if (line.Order is not { } number || known.Add(number))
                days.Add(line.On.DayNumber);
        }

        return (CompactNumbers.Of(days), pieces);
    }

    /// <summary>From the first to the last of some days; null if there is none.</summary>
    private static DaySpan? Between(CompactNumbers days) =>
        days.Count == 0 ? null : new DaySpan(DateOnly.FromDayNumber(days[0]), DateOnly.FromDayNumber(days[^1]));
}
