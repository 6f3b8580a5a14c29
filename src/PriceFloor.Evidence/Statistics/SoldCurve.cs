using PriceFloor.Evidence.Lines;

namespace PriceFloor.Evidence.Statistics;

/// <summary>
/// The share sold by age, where young unsold pieces prove nothing (Kaplan-Meier for what is left, Aalen-Johansen for what was sold beside what was
/// given or lost).
/// </summary>
public sealed class SoldCurve
{
    private readonly CompactNumbers _ages, _atRisk, _sold, _gone;
    private readonly int? _daysToSell;
    private Shares? _shares;

    private SoldCurve(List<int> ages, int[] atRisk, List<int> sold, List<int> gone)
    {
        (_ages, _atRisk, _sold, _gone) = (CompactNumbers.Of(ages), CompactNumbers.Of(atRisk), CompactNumbers.Of(sold), CompactNumbers.Of(gone));
        var half = Array.FindIndex(ByAge.Sold, share => share > 0.49 && Settled.Of(share, 9) >= 0.5m);
        _daysToSell = half < 0 ? null : ages[half];
    }

    /// <summary>The shares, worked out again if they were let go.</summary>
    private Shares ByAge => _shares ??= new Shares(_atRisk, _sold, _gone);

    /// <summary>The curve of some pieces; their order does not matter.</summary>
    public static SoldCurve Of(IEnumerable<ShelfTime> pieces)
    {
        var (ages, sold, gone, ended) = (new List<int>(), new List<int>(), new List<int>(), new List<int>());
        foreach (var (days, end, count) in InOrder.Of(pieces, (one, other) => one.Days.CompareTo(other.Days)))
        {
            if (ages.Count == 0 || ages[^1] != days)
            {
                ages.Add(days);
                sold.Add(0);
                gone.Add(0);
                ended.Add(0);
            }

            sold[^1] += end == ShelfEnd.Sold ? count : 0;
            gone[^1] += end == ShelfEnd.Gone ? count : 0;
            ended[^1] += count;
        }

        var (left, atRisk) = (ended.Sum(), new int[ages.Count]);
        for (var i = 0; i < atRisk.Length; i++)
        {
            atRisk[i] = left;
            left -= ended[i];
        }

        return new SoldCurve(ages, atRisk, sold, gone);
    }

    /// <summary>How many pieces were at least that old.</summary>
    public int AtRisk(int days)
    {
        var i = _ages.CountBelow(days);
        return i == _ages.Count ? 0 : _atRisk[i];
    }

    /// <summary>The oldest age that at least so many pieces reached; null if there never were so many.</summary>
    public int? OldestWith(int pieces)
    {
        var i = _atRisk.Count - 1;
        while (i >= 0 && _atRisk[i] < pieces)
            i--;
        return i < 0 ? null : _ages[i];
    }

    /// <summary>The first age by which half of them are sold; null if never.</summary>
    public int? DaysToSell() => _daysToSell;

    /// <summary>C(days): the share sold by that age, to 4 decimals; nothing or all sold has no other ends.</summary>
    public Estimate SoldBy(int days, decimal level)
    {
        var (share, error) = ShareAt(days);
        var value = Settled.Of(share, Estimate.ShareDecimals);
        if (Settled.Of(share, 9) is 0 or 1)
            return new Estimate(value, value, value);
        var (low, high) = Ends(share, error, Estimate.Ends(level).High);
        return new Estimate(value, Settled.Of(low, Estimate.ShareDecimals), Settled.Of(high, Estimate.ShareDecimals));
    }

    /// <summary>
    /// How likely a piece that is still there at an age is sold within so many days more, to 4 decimals; past the oldest age nothing more is known
    /// to sell.
    /// </summary>
    public decimal ChanceWithin(int age, int days) => LeftAfter(age) is > 0 and var left
        ? Settled.Of(double.Clamp((ShareAt(age + days).Share - ShareAt(age).Share) / left, 0, 1), Estimate.ShareDecimals) : 0;

    /// <summary>C and its standard error at an age.</summary>
    internal (double Share, double Error) ShareAt(int days)
    {
        var (last, shares) = (Last(days), ByAge);
        if (last < 0)
            return (0, 0);
        var (share, variance) = (shares.Sold[last], 0d);
        for (var i = 0; i <= last; i++)
        {
            double n = _atRisk[i], sold = _sold[i], ended = sold + _gone[i];
            var (before, rest) = (i == 0 ? 1 : shares.Left[i - 1], share - shares.Sold[i]);
            variance += n > ended ? rest * rest * ended / (n * (n - ended)) : 0;
            variance += before * before * (n - sold) * sold / (n * n * n) - 2 * rest * before * sold / (n * n);
        }

        return (share, double.Sqrt(double.Max(0, variance)));
    }

    /// <summary>S: the share still there after an age.</summary>
    internal double LeftAfter(int days) => Last(days) is >= 0 and var last ? ByAge.Left[last] : 1;

    /// <summary>Lets go of what can be worked out again.</summary>
    internal void Release() => _shares = null;

    /// <summary>The ends by the complementary log-log, which stay within 0 and 1.</summary>
    internal static (double Low, double High) Ends(double share, double error, double upper)
    {
        var width = Quantiles.Normal(upper) * error / ((1 - share) * double.Log(1 - share));
        var (one, other) = (1 - double.Pow(1 - share, double.Exp(width)), 1 - double.Pow(1 - share, double.Exp(-width)));
        return (double.Min(one, other), double.Max(one, other));
    }

    private int Last(int days) => _ages.CountBelow(checked(days + 1)) - 1;

    /// <summary>At each age the share that is left, and the share that was sold.</summary>
    private sealed class Shares
    {
        public Shares(CompactNumbers atRisk, CompactNumbers sold, CompactNumbers gone)
        {
            (Left, Sold) = (new double[atRisk.Count], new double[atRisk.Count]);
            var (left, share) = (1d, 0d);
            for (var i = 0; i < atRisk.Count; i++)
            {
                share += left * sold[i] / atRisk[i];
                left *= 1 - (double)(sold[i] + gone[i]) / atRisk[i];
                (Left[i], Sold[i]) = (left, share);
            }
        }

        public double[] Left { get; }

        public double[] Sold { get; }
    }
}
