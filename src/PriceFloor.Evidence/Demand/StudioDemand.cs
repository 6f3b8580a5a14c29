using PriceFloor.Evidence.Lines;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Demand;

/// <summary>How often the designs of one profile are ordered, and how their buyers answer to price.</summary>
public sealed class StudioDemand
{
    private readonly Dictionary<(string Sku, string Channel), DesignDemand> _designs;

    private StudioDemand(Seasons seasons, IReadOnlyList<ChannelShelf> shelves, Sensitivity sensitivity)
    {
        (Seasons, Shelves, Sensitivity) = (seasons, shelves, sensitivity);
        _designs = shelves.SelectMany(shelf => shelf.Designs).ToDictionary(design => (design.Offer.Sku, design.Offer.Key));
    }

    public Seasons Seasons { get; }

    /// <summary>One for each channel, by key.</summary>
    public IReadOnlyList<ChannelShelf> Shelves { get; }

    /// <summary>One for all of them: one design hardly ever decides.</summary>
    public Sensitivity Sensitivity { get; }

    /// <summary>A design on a channel; null where it was neither sold nor listed there.</summary>
    public DesignDemand? On(string sku, string channel) => _designs.GetValueOrDefault((sku, channel));

    /// <summary>The channels of a design, most orders first, then by key.</summary>
    public IReadOnlyList<DesignDemand> Of(string sku) => [.. Shelves.Select(shelf => On(sku, shelf.Key)).OfType<DesignDemand>()
        .OrderByDescending(design => design.All.Orders).ThenBy(design => design.Offer.Key, StringComparer.Ordinal)];

    /// <summary>
    /// Of the hours that are there, the share that the offered designs would take if all that is ordered at present prices were made: below 1 some
    /// are idle. Null where there are none. Unrounded.
    /// </summary>
    /// <param name="hours">Bench hours of the year, less those kept back.</param>
    public decimal? Scarcity(decimal hours) => hours <= 0 ? null
        : _designs.Values.Where(design => design.Offer.Price is not null || design.Offer.Prices.Count == 0)
            .Sum(design => design.OrdersAYear * design.Offer.PiecesPerOrder * design.Offer.BenchHours ?? 0) / hours;

    /// <param name="offers">The offers of all designs of one profile.</param>
    /// <param name="to">The last day that counts.</param>
    /// <param name="level">How often intervals are to hold.</param>
    public static StudioDemand Of(IEnumerable<OfferedDesign> offers, DateOnly to, decimal level)
    {
        var all = InOrder.Of(offers, (one, other) => string.CompareOrdinal(one.Sku, other.Sku));
        var seasons = Seasons.OfOffers(all, to);
        var shelves = all.GroupBy(offer => offer.Key).OrderBy(channel => channel.Key, StringComparer.Ordinal).Select(channel =>
            new ChannelShelf(channel.Key, [.. channel.Select(offer => (offer, PriceRun.Of(offer, seasons)))], seasons, level)).ToList();
        var sensitivity = Sensitivity.Of(shelves.SelectMany(shelf => shelf.Designs).Select(design => design.Priced), level);
        return new StudioDemand(seasons, shelves, sensitivity);
    }
}
