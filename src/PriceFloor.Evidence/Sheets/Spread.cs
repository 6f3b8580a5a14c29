using System.Numerics;

namespace PriceFloor.Evidence.Sheets;

/// <summary>Spreads an amount over lines so that the parts add up to it exactly.</summary>
public static class Spread
{
    /// <summary>
    /// Parts by weight in whole minor units, the largest remainders first; of equals the first. 1.00 over three equal weights is 0.34, 0.33 and 0.33.
    /// </summary>
    /// <param name="amount">Whole minor units, at least 0.</param>
    /// <param name="weights">At least 0 each; if all are 0, all weigh the same.</param>
    public static IReadOnlyList<long> ByWeight(long amount, IReadOnlyList<decimal> weights)
    {
        if (weights.Count == 1)
            return [amount];
        var whole = weights.Any(weight => weight > 0) ? WholeOf(weights) : [.. weights.Select(_ => BigInteger.One)];
        var all = whole.Aggregate(BigInteger.Add);
        var parts = whole.Select(weight => (long)(amount * weight / all)).ToArray();
        var left = (int)(amount - parts.Sum());
        foreach (var index in Enumerable.Range(0, parts.Length).OrderByDescending(index => amount * whole[index] % all).Take(left))
            parts[index]++;
        return parts;
    }

    /// <summary>The weights in a unit so small that all are whole.</summary>
    private static BigInteger[] WholeOf(IReadOnlyList<decimal> weights)
    {
        var decimals = weights.Max(weight => (int)weight.Scale);
        return [.. weights.Select(weight => Unscaled(weight) * BigInteger.Pow(10, decimals - weight.Scale))];
    }

    private static BigInteger Unscaled(decimal weight)
    {
        var bits = decimal.GetBits(weight);
        return ((BigInteger)(uint)bits[2] << 64) + ((BigInteger)(uint)bits[1] << 32) + (uint)bits[0];
    }
}
