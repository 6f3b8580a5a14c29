namespace PriceFloor.Pricing.Numbers;

/// <summary>
/// Rounds figures, once, at the edge, and nowhere else. <c>decimal</c> quotients are inexact in the 28th digit, so every
/// comparison and every rounding first settles its operands half-even to 12 decimals: 1.00 over one of three pieces must not
/// quote 1.01, and a capacity of 1440 must not come out as 1439.
/// </summary>
public static class Rounding
{
    private const int SettledDecimals = 12;

    /// <summary>What the figure is, without the dust of division.</summary>
    public static decimal Settle(decimal value) => decimal.Round(value, SettledDecimals, MidpointRounding.ToEven);

    /// <summary>Least that must be (floor, what bench time must recover, what an hour must earn): 34.2857 becomes 34.29.</summary>
    public static decimal Up(decimal value, int decimals) => Round(value, decimals, MidpointRounding.ToPositiveInfinity);

    /// <summary>Most that may be (capacity, minutes that a price allows): 1632.57 pieces become 1632.</summary>
    public static decimal Down(decimal value, int decimals) => Round(value, decimals, MidpointRounding.ToNegativeInfinity);

    /// <summary>Everything else, half away from zero: 0.125 becomes 0.13.</summary>
    public static decimal Nearest(decimal value, int decimals) => Round(value, decimals, MidpointRounding.AwayFromZero);

    /// <summary>
    /// Parts of a whole, each to the nearest, and then moved by one unit if they would not add up: first those that rounding moved
    /// furthest the other way; of equals the last. Three thirds of 1.00 are 0.33, 0.33 and 0.34.
    /// </summary>
    /// <param name="parts">The parts, unrounded.</param>
    /// <param name="whole">What they must add up to, with that many decimals at most.</param>
    /// <param name="decimals">How many decimals.</param>
    public static IReadOnlyList<decimal> NearestTogether(IReadOnlyList<decimal> parts, decimal whole, int decimals)
    {
        var rounded = parts.Select(part => Nearest(part, decimals)).ToList();
        var unit = new decimal(1, 0, 0, isNegative: false, (byte)decimals);
        var missing = whole - rounded.Sum();
        var step = missing < 0 ? -unit : unit;
        var order = parts.Index().OrderByDescending(part => (part.Item - rounded[part.Index]) * step).ThenByDescending(part => part.Index)
            .Select(part => part.Index).ToList();
        for (var i = 0; missing != 0 && order.Count > 0; i = (i + 1) % order.Count, missing -= step)
            rounded[order[i]] += step;
        return rounded;
    }

    /// <summary>Whether a figure reaches another.</summary>
    public static bool Reaches(this decimal value, decimal least) => Settle(value) >= Settle(least);

    /// <summary>The same value without trailing zeros: 8.500 becomes 8.5.</summary>
    public static decimal Trim(decimal value)
    {
        // Dividing by one with 28 zeros makes decimal drop the zeros it need not carry.
        var trimmed = value / 1.0000000000000000000000000000m;
        return trimmed == 0 ? 0 : trimmed;
    }

    /// <summary>How many decimals the value needs; trailing zeros never count.</summary>
    public static int DecimalsOf(decimal value) => Trim(value).Scale;

    /// <summary>Whether the value needs no more decimals than that.</summary>
    public static bool HasAtMost(decimal value, int decimals) => value.Scale <= decimals || DecimalsOf(value) <= decimals;

    /// <summary>The same value with at least this many decimals written out: 8 becomes 8.00.</summary>
    public static decimal WithDecimals(decimal value, int decimals)
    {
        if (value.Scale == decimals && value != 0)
            return value; // as most are that have just been rounded
        var trimmed = Trim(value);
        return trimmed.Scale >= decimals ? trimmed : trimmed + new decimal(0, 0, 0, isNegative: false, (byte)decimals);
    }

    private static decimal Round(decimal value, int decimals, MidpointRounding direction) =>
        WithDecimals(decimal.Round(Settle(value), decimals, direction), decimals);
}
