namespace PriceFloor.Evidence.Statistics;

/// <summary>
/// What the shelf says of one design's rate before it is looked at (credibility, Buehlmann-Straub): a gamma distribution, as orders
/// seen over a time.
/// </summary>
/// <param name="Orders">alpha.</param>
/// <param name="Exposure">beta: 0 where the shelf says nothing.</param>
public sealed record RatePrior(decimal Orders, decimal Exposure)
{
    /// <summary>With fewer designs their differences say too little: the intervals came out too narrow.</summary>
    private const int FewDesigns = 8;

    public static RatePrior Nothing { get; } = new(0.5m, 0);

    /// <summary>m: the shelf's mean rate; 0 where it says nothing.</summary>
    public decimal Mean { get; private init; }

    /// <summary>a: the variance between designs; below 0 where they differ less than chance alone would make them.</summary>
    public decimal Between { get; private init; }

    /// <summary>The prior from the shelf's designs; nothing where there are fewer than eight, or no order.</summary>
    public static RatePrior OfShelf(IReadOnlyList<Sales> designs)
    {
        if (designs.Count < FewDesigns || designs.Sum(design => design.Orders) == 0)
            return Nothing;
        var all = designs.Sum(design => design.Exposure);
        var mean = designs.Sum(design => design.Orders) / all;
        var between = BetweenOf(designs, all, mean);
        var exposure = between <= mean / all ? all : mean / between;
        return new RatePrior(mean * exposure, exposure) { Mean = mean, Between = between };
    }

    /// <summary>How much of a design's rate is its own: e/(beta + e).</summary>
    public decimal OwnWeight(Sales design) => design.Exposure / (Exposure + design.Exposure);

    /// <summary>The design's rate to 4 decimals.</summary>
    public decimal RateOf(Sales design) =>
        Settled.Of((double)(Orders + design.Orders) / (double)(Exposure + design.Exposure), Estimate.ShareDecimals);

    /// <summary>The design's rate to 4 decimals, with its interval.</summary>
    public Estimate At(Sales design, decimal level)
    {
        var (shape, rate) = ((double)(Orders + design.Orders), (double)(Exposure + design.Exposure));
        var (low, high) = Estimate.Ends(level);
        return new Estimate(RateOf(design),
            Settled.Of(Quantiles.Gamma(shape, rate, low), Estimate.ShareDecimals),
            Settled.Of(Quantiles.Gamma(shape, rate, high), Estimate.ShareDecimals));
    }

    /// <summary>The fewest orders in a time to come that are enough with that probability.</summary>
    public int OrdersWithin(Sales design, decimal time, decimal probability)
    {
        var exposure = Exposure + design.Exposure;
        return Quantiles.NegativeBinomial((double)(Orders + design.Orders), (double)(exposure / (exposure + time)), (double)probability);
    }

    private static decimal BetweenOf(IReadOnlyList<Sales> designs, decimal all, decimal mean)
    {
        var scatter = designs.Sum(design =>
            design.Exposure * (design.Orders / design.Exposure - mean) * (design.Orders / design.Exposure - mean));
        return (scatter - (designs.Count - 1) * mean) / (all - designs.Sum(design => design.Exposure * design.Exposure) / all);
    }
}
