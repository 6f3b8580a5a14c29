using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Demand;

/// <summary>All designs of one profile on one channel: what they usually do says what one of them does.</summary>
public sealed class ChannelShelf
{
    internal ChannelShelf(string key, IReadOnlyList<(OfferedDesign Offer, IReadOnlyList<PriceRun> Runs)> offers, Seasons seasons, decimal level)
    {
        (Key, Seasons, Level) = (key, seasons, level);
        var sales = offers.Select(offer => new Sales(offer.Runs.Sum(run => run.Sales.Orders), offer.Runs.Sum(run => run.Sales.Exposure)))
            .Where(sold => sold.Exposure > 0).ToList();
        Prior = RatePrior.OfShelf(sales);
        MedianRate = Median([.. sales.Select(sold => sold.Orders / sold.Exposure).Order()]);
        Designs = [.. offers.Select(offer => new DesignDemand(offer.Offer, offer.Runs, this))];
    }

    /// <summary>The channel's key.</summary>
    public string Key { get; }

    public Seasons Seasons { get; }

    public decimal Level { get; }

    public RatePrior Prior { get; }

    /// <summary>Orders a weighted week, or an event, of the design in the middle, unrounded; null where none could be bought.</summary>
    public decimal? MedianRate { get; }

    public IReadOnlyList<DesignDemand> Designs { get; }

    private static decimal? Median(IReadOnlyList<decimal> sorted) => sorted.Count == 0 ? null
        : (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
}
