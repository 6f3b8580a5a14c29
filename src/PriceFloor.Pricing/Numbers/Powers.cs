namespace PriceFloor.Pricing.Numbers;

/// <summary>
/// Logarithms, exponentials and powers by series in whole numbers, so that every machine gives the same digits. Their last three or four digits
/// of 28 are not exact; a <see cref="Power"/> is settled to 12 decimals.
/// </summary>
public static class Powers
{
    private const decimal Ln2 = 0.6931471805599453094172321215m;

    /// <summary>Halvings in one division.</summary>
    private const int MostHalvings = 32;

    /// <summary>The natural logarithm of a value above zero: of 2 it is 0.693147...</summary>
    public static decimal Ln(decimal value)
    {
        var (doublings, rest) = (0, value);
        for (; rest >= 2; doublings++)
            rest /= 2;
        for (; rest < 1; doublings--)
            rest *= 2;
        // ln x = 2 * (z + z^3/3 + z^5/5 + ...) with z = (x - 1)/(x + 1), at most 1/3.
        var z = FixedPoint.Of((rest - 1) / (rest + 1));
        return doublings * Ln2 + 2 * (z * FixedPoint.Series(FixedPoint.OddReciprocals, z * z)).Value;
    }

    /// <summary>e to the exponent. Below e^-64 it is 0; above e^66 it overflows.</summary>
    public static decimal Exp(decimal exponent)
    {
        var doublings = (int)decimal.Truncate(exponent / Ln2) - (exponent < 0 ? 1 : 0);
        var rest = decimal.Max(0, exponent - doublings * Ln2);
        var sum = FixedPoint.Series(FixedPoint.FactorialReciprocals, FixedPoint.Of(rest)).Value;
        for (; doublings > 0; doublings--)
            sum *= 2;
        for (; doublings < -MostHalvings && sum != 0; doublings += MostHalvings)
            sum /= 1L << MostHalvings;
        return sum == 0 ? 0 : sum / (1L << -doublings);
    }

    /// <summary>A value above zero to any power, settled to 12 decimals: 8 to the power of 1/3 is 2.</summary>
    public static decimal Power(decimal value, decimal exponent) => Rounding.Settle(Exp(exponent * Ln(value)));
}
