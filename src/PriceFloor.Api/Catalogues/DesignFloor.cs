using PriceFloor.Api.Documents;

namespace PriceFloor.Api.Catalogues;

/// <summary>
/// A design's floor in a profile's year, with its prices on every requested channel and the prices listed for it. It is valid until something that
/// it rests on changes.
/// </summary>
public sealed class DesignFloor
{
    private readonly FloorBook _book;
    private readonly IReadOnlyDictionary<string, Stored<ListedPrice>> _listed;
    private readonly IReadOnlyList<Stored<Channel>>? _channels;
    private PricesOn[] _prices = [];

    private DesignFloor(FloorBook book, Stored<CostProfile> profile, Stored<Design> design, FloorPrice floor,
        IReadOnlyDictionary<string, Stored<ListedPrice>> listed, IReadOnlyList<Stored<Channel>>? channels)
    {
        (_book, _listed, _channels) = (book, listed, channels);
        (Profile, Design, Floor) = (profile, design, floor);
    }

    public Stored<CostProfile> Profile { get; }

    public Stored<Design> Design { get; }

    public FloorPrice Floor { get; }

    public StudioYear Year => Floor.UnitCost.Year;

    /// <summary>The listed wholesale price that sets the target; null if it sets none.</summary>
    public Stored<ListedPrice>? WholesalePrice { get; private init; }

    public IEnumerable<Assumption> Assumptions => Assumed.In(Profile.Document).Concat(Assumed.In(Floor.UnitCost));

    public IEnumerable<Working> WorkingsOfTheFloor => Workings.Of(Year).Concat(Workings.Of(Floor.UnitCost)).Concat(Workings.Of(Floor));

    public IEnumerable<Warning> WarningsOfTheFloor(DateOnly today) => Warnings.In(Year, today).Concat(Warnings.In(Floor.UnitCost));

    /// <summary>The prices on one channel, or why there are none; kept until the channel changes.</summary>
    public Outcome<ChannelPrices> On(Stored<Channel> channel)
    {
        foreach (var prices in Volatile.Read(ref _prices))
            if (ReferenceEquals(prices.Channel, channel))
                return prices.Found;
        return ComputedOn(channel);
    }

    /// <summary>The price listed for the design on a stored channel; null if there is none.</summary>
    public decimal? ListedOn(Stored<Channel> channel) => channel.Revision is null ? null : _listed.GetValueOrDefault(channel.Key)?.Document.Price;

    internal static Outcome<DesignFloor> Of(FloorBook book, Catalogue catalogue, Stored<CostProfile> profile, Stored<Design> design,
        IReadOnlyDictionary<string, Stored<ListedPrice>> listed, IReadOnlyList<Stored<Channel>>? channels)
    {
        var year = book.Year(profile, catalogue.YearStart);
        if (year.Found is null)
            return year.Faults.ToList();
        var cost = UnitCost.Of(design.Document, year.Value);
        if (cost.Found is null)
            return cost.Faults.ToList();

        var wholesale = HighestWholesale(catalogue, listed, year.Value.Currency);
        var floor = FloorPrice.Of(cost.Value, wholesale?.BeforeTax);
        return floor.Found is null
            ? floor.Faults.ToList()
            : new DesignFloor(book, profile, design, floor.Value, listed, channels)
            {
                WholesalePrice = wholesale?.BeforeTax > floor.Value.Wholesale ? wholesale.Value.Listed : null,
            };
    }

    /// <summary>Whether these are the very documents that it was computed from.</summary>
    internal bool RestsOn(Stored<CostProfile> profile, Stored<Design> design, IReadOnlyDictionary<string, Stored<ListedPrice>> listed,
        IReadOnlyList<Stored<Channel>>? channels) =>
            ReferenceEquals(Profile, profile) && ReferenceEquals(Design, design) && ReferenceEquals(_listed, listed)
            && ReferenceEquals(_channels, channels);

    private Outcome<ChannelPrices> ComputedOn(Stored<Channel> channel)
    {
        var terms = _book.Terms(channel);
        var found = terms.Found is null ? terms.Faults.ToList() : ChannelPrices.Of(Floor, terms.Value);
        // If two threads compute at once, one result is not kept, and is computed again when it is asked for.
        Volatile.Write(ref _prices, [.. Volatile.Read(ref _prices).Where(prices => prices.Channel.Key != channel.Key), new PricesOn(channel, found)]);
        return found;
    }

    /// <summary>The most that a shop really pays before tax, of the prices listed on wholesale channels of the profile's currency.</summary>
    private static (decimal BeforeTax, Stored<ListedPrice> Listed)? HighestWholesale(Catalogue catalogue,
        IReadOnlyDictionary<string, Stored<ListedPrice>> listed, Currency currency) => listed
            .Select(price => (Price: price.Value, Channel: catalogue.Channel(price.Key)?.Document))
            .Where(price => price.Channel is { Sells: Sells.Wholesale } && price.Channel.Currency == currency.Code)
            .Select(price => ((decimal, Stored<ListedPrice>)?)(Sale.AfterDiscountOf(price.Price.Document.Price, price.Channel!), price.Price))
            .MaxBy(price => price!.Value.Item1);

    private sealed record PricesOn(Stored<Channel> Channel, Outcome<ChannelPrices> Found);
}
