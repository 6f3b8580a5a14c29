using PriceFloor.Evidence.Shelves;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Demand;

/// <summary>How often one design is ordered on one channel, in the light of its shelf.</summary>
public sealed class DesignDemand
{
    private const decimal DaysAYear = 365;

    private readonly ChannelShelf _shelf;

    internal DesignDemand(OfferedDesign offer, IReadOnlyList<PriceRun> runs, ChannelShelf shelf)
    {
        (Offer, Runs, _shelf) = (offer, runs, shelf);
        All = new Sales(runs.Sum(run => run.Sales.Orders), runs.Sum(run => run.Sales.Exposure));
        Present = runs.LastOrDefault(run => run.Price is not null && run.Sales.Exposure > 0) ?? runs.LastOrDefault(run => run.Sales.Exposure > 0);
    }

    public OfferedDesign Offer { get; }

    /// <summary>The times of one price each, in order.</summary>
    public IReadOnlyList<PriceRun> Runs { get; }

    /// <summary>All of them together.</summary>
    public Sales All { get; }

    /// <summary>The last of them in which it could be bought; null where there is none.</summary>
    public PriceRun? Present { get; }

    /// <summary>How often intervals are to hold.</summary>
    public decimal Level => _shelf.Level;

    public RatePrior Prior => _shelf.Prior;

    /// <summary>How much of the rate is the design's own, unrounded; the rest is the shelf's.</summary>
    public decimal? OwnWeight => Present is { } run ? Prior.OwnWeight(run.Sales) : null;

    /// <summary>Orders a weighted week, or an event, at the price that was asked last; null where it could never be bought.</summary>
    public Estimate? Rate => Present is { } run ? Prior.At(run.Sales, _shelf.Level) : null;

    /// <summary>What a price brings; null where no price or no time is known.</summary>
    public DemandCurve? Curve(Sensitivity sensitivity) => Present is { Price: { } price } && Rate is { Value: > 0 and var rate }
        ? new DemandCurve(price, rate, sensitivity.Estimate.Value) : null;

    /// <summary>Weighted weeks, or events, of so many days from the day after the last that counts.</summary>
    public decimal TimeOf(int days) => Offer.Exposure != Exposure.Events
        ? _shelf.Seasons.Weeks(new DaySpan(Offer.To.AddDays(1), Offer.To.AddDays(days))) : EventsAYear * days / DaysAYear;

    /// <summary>The same without its range, which takes longer to work out.</summary>
    public decimal? PlainRate => Present is { } run ? Prior.RateOf(run.Sales) : null;

    /// <summary>Orders a year at the price that was asked last; null where there is no rate.</summary>
    public decimal? OrdersAYear => PlainRate * (Offer.Exposure == Exposure.Events ? EventsAYear : DaysAYear / 7);

    /// <summary>The fewest orders that are enough, with that probability, in so much time.</summary>
    public int? OrdersWithin(decimal time, decimal probability) => Present is { } run && time > 0 && Prior.Exposure + run.Sales.Exposure > 0
        ? Prior.OrdersWithin(run.Sales, time, probability) : null;

    /// <summary>The last change of price between two runs of which both could be bought; null where there is none.</summary>
    public (PriceRun Before, PriceRun After)? LastChange
    {
        get
        {
            var priced = Runs.Where(run => run is { Price: not null, Sales.Exposure: > 0 }).ToList();
            for (var i = priced.Count - 1; i > 0; i--)
                if (priced[i].Price != priced[i - 1].Price)
                    return (priced[i - 1], priced[i]);
            return null;
        }
    }

    internal IReadOnlyList<PricedSales> Priced => [.. Runs.Where(run => run.Price > 0).Select(run => new PricedSales(run.Price!.Value, run.Sales))];

    private decimal EventsAYear => Offer.Channel.Stall?.TimesAYear ?? (Offer.Days.Count == 0 ? 0
        : Offer.Days.Count * DaysAYear / decimal.Max(DaysAYear, Offer.To.DayNumber - Offer.Days[0].From.DayNumber + 1));
}
