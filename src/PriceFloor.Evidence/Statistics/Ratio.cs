namespace PriceFloor.Evidence.Statistics;

/// <summary>A ratio of sums, such as minutes a piece, by entries that scatter.</summary>
public sealed class Ratio
{
    /// <summary>With fewer there is no interval.</summary>
    private const int FewParts = 3;

    private readonly IReadOnlyList<RatioPart> _parts;

    private Ratio(IReadOnlyList<RatioPart> parts, decimal per)
    {
        (_parts, Per) = (parts, per);
        Amount = parts.Sum(part => part.Amount);
    }

    /// <summary>Sum u.</summary>
    public decimal Amount { get; }

    /// <summary>Sum n.</summary>
    public decimal Per { get; }

    /// <summary>m.</summary>
    public int Count => _parts.Count;

    /// <summary>r, unrounded.</summary>
    public decimal Exact => Amount / Per;

    /// <summary>The ratio of the parts; null if they come to nothing.</summary>
    public static Ratio? Of(IReadOnlyList<RatioPart> parts) => parts.Sum(part => part.Per) is > 0 and var per ? new Ratio(parts, per) : null;

    /// <summary>The ratio with that many decimals, its interval by Student's t; low never below <paramref name="least"/>.</summary>
    public Estimate At(decimal level, int decimals, decimal least = 0)
    {
        var value = Settled.Of(Exact, decimals);
        if (Count < FewParts)
            return new Estimate(value, null, null);
        var exact = Exact;
        var scatter = 0d;
        foreach (var part in _parts)
        {
            var off = (double)(part.Amount - exact * part.Per);
            scatter += off * off;
        }

        var spread = double.Sqrt((double)Count / (Count - 1) * scatter) / (double)Per * Quantiles.Student(Estimate.Ends(level).High, Count - 1);
        return new Estimate(value, decimal.Max(least, Settled.Of((double)exact - spread, decimals)), Settled.Of((double)exact + spread, decimals));
    }
}
