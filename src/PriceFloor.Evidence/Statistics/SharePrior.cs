namespace PriceFloor.Evidence.Statistics;

/// <summary>What other designs' shares say of one before it is looked at: a beta distribution, as pieces seen.</summary>
/// <param name="Counted">a: pieces that count.</param>
/// <param name="Others">b: pieces that do not.</param>
public sealed record SharePrior(decimal Counted, decimal Others)
{
    /// <summary>With fewer designs their differences say too little: the intervals came out too narrow.</summary>
    private const int FewDesigns = 8;

    /// <summary>Half a piece each (Jeffreys).</summary>
    public static SharePrior Nothing { get; } = new(0.5m, 0.5m);

    /// <summary>w: as many pieces as the prior is worth.</summary>
    public decimal Weight => Counted + Others;

    /// <summary>The prior from the shelf's designs; nothing where there are fewer than eight.</summary>
    public static SharePrior OfShelf(IReadOnlyList<LotShare> designs)
    {
        if (designs.Count < FewDesigns)
            return Nothing;
        var all = designs.Sum(design => design.Worth);
        var mean = designs.Sum(design => design.Counted / design.Together) / all;
        if (mean is 0 or 1)
            return Nothing;
        var weight = WeightOf(designs, all, mean);
        return weight <= 0 ? Nothing : new SharePrior(weight * mean, weight * (1 - mean));
    }

    private static decimal WeightOf(IReadOnlyList<LotShare> designs, decimal all, decimal mean)
    {
        var others = designs.Count - 1;
        var scatter = designs.Sum(design => design.Worth * (design.Plain - mean) * (design.Plain - mean));
        var left = all - designs.Sum(design => design.Worth * design.Worth) / all - others;
        var between = left > 0 ? (scatter - others * mean * (1 - mean)) / left : 0;
        return between <= 0 ? all : decimal.Min(all, mean * (1 - mean) / between - 1);
    }
}
