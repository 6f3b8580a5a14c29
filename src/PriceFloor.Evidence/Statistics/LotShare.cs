namespace PriceFloor.Evidence.Statistics;

/// <summary>
/// A share of pieces that fail together, by the beta distribution of as many pieces as the lots are worth. 126 good of 144 in twelve loads, one of
/// which broke in half, are worth 67 single pieces: 0.8695 (0.7971 to 0.9295).
/// </summary>
public sealed record LotShare
{
    /// <summary>With fewer lots their scatter says nothing.</summary>
    private const int FewLots = 5;

    private LotShare(long pieces, long counted, int lots, decimal together) =>
        (Pieces, Counted, Lots, Together) = (pieces, counted, lots, together);

    /// <summary>N.</summary>
    public long Pieces { get; }

    /// <summary>K.</summary>
    public long Counted { get; }

    /// <summary>m.</summary>
    public int Lots { get; }

    /// <summary>deff: how many pieces of a lot stand for one, at least 1.</summary>
    public decimal Together { get; }

    /// <summary>N/deff: how many single pieces they are worth.</summary>
    public decimal Worth => Pieces / Together;

    /// <summary>y: the plain share.</summary>
    public decimal Plain => (decimal)Counted / Pieces;

    /// <summary>The share of the lots; null if no piece was seen.</summary>
    public static LotShare? Of(IReadOnlyList<Lot> lots)
    {
        var (pieces, counted) = (lots.Sum(lot => lot.Pieces), lots.Sum(lot => lot.Counted));
        return pieces == 0 ? null : new LotShare(pieces, counted, lots.Count, TogetherOf(lots, pieces, counted));
    }

    /// <summary>The share to 4 decimals with its interval. No piece that counts: low is 0; all: high is 1.</summary>
    /// <param name="level">How often the interval is to hold.</param>
    /// <param name="prior">What is known before the lots; absent: nothing (Jeffreys).</param>
    public Estimate At(decimal level, SharePrior? prior = null)
    {
        var known = prior ?? SharePrior.Nothing;
        var (a, b) = (known.Counted + Counted / Together, known.Others + (Pieces - Counted) / Together);
        var (low, high) = Estimate.Ends(level);
        return new Estimate(Settled.Of(a / (a + b), Estimate.ShareDecimals),
            Counted == 0 ? 0 : Settled.Of(Quantiles.Beta((double)a, (double)b, low), Estimate.ShareDecimals),
            Counted == Pieces ? 1 : Settled.Of(Quantiles.Beta((double)a, (double)b, high), Estimate.ShareDecimals));
    }

    private static decimal TogetherOf(IReadOnlyList<Lot> lots, long pieces, long counted)
    {
        if (lots.Count < FewLots || counted == 0 || counted == pieces)
            return 1;
        var share = (decimal)counted / pieces;
        var scatter = lots.Sum(lot => (lot.Counted - share * lot.Pieces) * (lot.Counted - share * lot.Pieces));
        var variance = (decimal)lots.Count / (lots.Count - 1) * scatter / pieces / pieces;
        return decimal.Max(1, variance * pieces / (share * (1 - share)));
    }
}
