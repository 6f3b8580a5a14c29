using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// A whole-number programme: the units, from so many to so many of each choice, that gain most within the rows; among those that gain the same,
/// the ones that gain most of a second thing. Gains of 3 and 5 within x &lt;= 4, 2y &lt;= 12 and 3x + 2y &lt;= 18 are best at x = 2, y = 6: 36.
/// </summary>
internal sealed class MixProgramme(decimal[] gains, decimal[] seconds, MixRow[] rows, decimal[] least, decimal[] most)
{
    /// <summary>Figures that differ by less are the same.</summary>
    public const decimal LastDecimal = 0.000000000001m;

    public decimal[] Gains => gains;

    public decimal[] Seconds => seconds;

    public MixRow[] Rows => rows;

    public decimal[] Least => least;

    public decimal[] Most => most;

    public int Count => gains.Length;

    /// <summary>The least by which two gains that differ can differ, dust aside.</summary>
    public decimal Step { get; } = decimal.Max(LastDecimal, MixGrid.Of(gains) - LastDecimal ?? 0);

    public bool Holds(decimal[] units) => Array.TrueForAll(rows, row => row.Holds(Sum(row.Takes, units)));

    /// <summary>The same rows, asked for something else between other bounds.</summary>
    public MixProgramme Asking(decimal[] gain, decimal[] atLeast, decimal[] atMost) => new(gain, gain, rows, atLeast, atMost);

    public static decimal Sum(decimal[] each, decimal[] units)
    {
        var sum = 0m;
        for (var i = 0; i < units.Length; i++)
            if (units[i] != 0 && each[i] != 0)
                sum += each[i] * units[i];
        return sum;
    }

    /// <summary>The whole part of a figure that is 0 or more; 2.9999999999999999 is 3.</summary>
    public static decimal Whole(decimal value) => decimal.Truncate(Rounding.Settle(value));
}
