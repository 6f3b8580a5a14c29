namespace PriceFloor.Evidence.Statistics;

/// <summary>
/// The only way of a statistical figure out of this folder: to 9 significant digits first, so that another machine's last bit turns no digit, then to
/// its decimals, both to the nearest, half away from zero.
/// </summary>
internal static class Settled
{
    private const int Digits = 9;

    /// <summary>The figure with that many decimals: 0.86954999999999 with 4 is 0.8695, 0.8695499999 is 0.8696 by 0.869550000.</summary>
    /// <exception cref="OverflowException">The figure is no number, or too large to be exact.</exception>
    public static decimal Of(double value, int decimals) => Of((decimal)value, decimals);

    /// <summary>The same for a figure that is exact already, so that both are rounded alike.</summary>
    public static decimal Of(decimal value, int decimals) => Rounding.Nearest(Significant(value), decimals);

    private static decimal Significant(decimal value)
    {
        var (places, left) = (Digits, decimal.Abs(value));
        for (; left >= 1; places--)
            left /= 10;
        for (; left is > 0 and < 0.1m && places < 28; places++)
            left *= 10;
        if (places >= 0)
            return decimal.Round(value, places, MidpointRounding.AwayFromZero);
        var unit = 1m;
        for (; places < 0; places++)
            unit *= 10;
        return decimal.Round(value / unit, 0, MidpointRounding.AwayFromZero) * unit;
    }
}
