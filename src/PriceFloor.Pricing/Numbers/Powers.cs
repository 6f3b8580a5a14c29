namespace PriceFloor.Pricing.Numbers;

/// <summary>
/// Logarithms, exponentials and powers by series in <c>decimal</c>, so that every machine gives the same digits. Their last three or four
/// digits of 28 are not exact; a <see cref="Power"/> is settled to 12 decimals.
/// </summary>
public static class Powers
{
    private const decimal Ln2 = 0.6931471805599453094172321215m;

    /// <summary>The natural logarithm of a value above zero: of 2 it is 0.693147...</summary>
    public static decimal Ln(decimal value)
    {
        var (doublings, rest) = (0, value);
        for (; rest >= 2; doublings++)
            rest /= 2;
        for (; rest < 1; doublings--)
            rest *= 2;
        // ln x = 2 * (z + z^3/3 + z^5/5 + ...) with z = (x - 1)/(x + 1), at most 1/3.
        var z = (rest - 1) / (rest + 1);
        var (sum, term, square) = (0m, z, z * z);
        for (var odd = 1; term != 0; odd += 2, term *= square)
            sum += term / odd;
        return doublings * Ln2 + 2 * sum;
    }

    /// <summary>e to the exponent. Below e^-64 it is 0; above e^66 it overflows.</summary>
    public static decimal Exp(decimal exponent)
    {
        var doublings = (int)Rounding.Nearest(exponent / Ln2, 0);
        var rest = exponent - doublings * Ln2;
        var (sum, term) = (0m, 1m);
        for (var n = 1; term != 0; term *= rest / n, n++)
            sum += term;
        for (; doublings > 0; doublings--)
            sum *= 2;
        for (; doublings < 0 && sum != 0; doublings++)
            sum /= 2;
        return sum;
    }

    /// <summary>A value above zero to any power, settled to 12 decimals: 8 to the power of 1/3 is 2.</summary>
    public static decimal Power(decimal value, decimal exponent) => Rounding.Settle(Exp(exponent * Ln(value)));
}
