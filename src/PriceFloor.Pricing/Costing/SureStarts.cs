using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Costing;

/// <summary>
/// How many pieces to start if so many must come out good and each start does so with the same chance. Of 12 started at 93 % all come out good
/// only 42 times in 100; 14 are enough 93 times, 15 98 times.
/// </summary>
public static class SureStarts
{
    /// <summary>The smallest number of starts of which enough come out good with at least the chance asked for.</summary>
    /// <param name="pieces">Good pieces wanted, 1 or more.</param>
    /// <param name="goodShare">The chance of each start, above 0 to 1.</param>
    /// <param name="sure">The chance asked for, below 1.</param>
    public static int Of(int pieces, decimal goodShare, decimal sure) =>
        Chances(pieces, goodShare).First(one => one.Chance.Reaches(sure)).Starts;

    /// <summary>The chance that of so many starts at least so many come out good.</summary>
    public static decimal Chance(int starts, int pieces, decimal goodShare) =>
        pieces <= 0 ? 1 : starts < pieces ? 0 : Chances(pieces, goodShare).ElementAt(starts - pieces).Chance;

    /// <summary>
    /// The chance that the last of the pieces is there by each start, from the first that can bring it: added up from the chances that it comes at
    /// exactly this one, which are kept as a number times a power of ten, because most of them are far below 10^-28.
    /// </summary>
    private static IEnumerable<(int Starts, decimal Chance)> Chances(int pieces, decimal goodShare)
    {
        var here = Small.Power(goodShare, pieces);
        var chance = here.Value;
        for (var starts = pieces; ; starts++)
        {
            yield return (starts, chance);
            here = here.Times((1 - goodShare) * starts / (starts + 1 - pieces));
            chance += here.Value;
        }
    }

    /// <summary>A number times 10^-<paramref name="Zeros"/>.</summary>
    private readonly record struct Small(decimal Number, int Zeros)
    {
        private const int MostZeros = 28;

        public decimal Value => Zeros > MostZeros ? 0 : Number * new decimal(1, 0, 0, isNegative: false, (byte)Zeros);

        /// <summary>By squares: as many products as the exponent has binary digits, or twice as many.</summary>
        public static Small Power(decimal number, int exponent)
        {
            var (power, square) = (new Small(1, 0), new Small(1, 0).Times(number));
            for (; exponent > 0; exponent >>= 1, square = square.Times(square))
                if ((exponent & 1) == 1)
                    power = power.Times(square);
            return power;
        }

        public Small Times(decimal factor) => Times(new Small(factor, 0));

        private Small Times(Small factor)
        {
            var (number, zeros) = (Number * factor.Number, Zeros + factor.Zeros);
            for (; number is < 0.001m and > 0; zeros += 3)
                number *= 1000;
            for (; number >= 1000; zeros -= 3)
                number /= 1000;
            return new Small(number, zeros);
        }
    }
}
