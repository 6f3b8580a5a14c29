namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// The greatest common divisor of decimal coefficients, by Euclid's algorithm: 0.05 for 1.25 and 0.70, or a 600th of an hour for times given in
/// tenths of a minute. An integer combination of the coefficients is a multiple of it, so right-hand sides and cutoffs can be rounded to one.
/// </summary>
internal static class CommonDivisor
{
    private const decimal RoundingError = 0.0000000000000000000001m;
    private const decimal SmallestUseful = 0.0000001m;

    /// <summary>The divisor, or null if the figures have none that is worth using.</summary>
    public static decimal? Of(decimal[] figures)
    {
        var divisor = 0m;
        foreach (var figure in figures)
        {
            for (var rest = decimal.Abs(figure); rest > RoundingError;)
                (divisor, rest) = (rest, divisor == 0 ? 0 : Remainder(divisor, rest));
            if (divisor != 0 && divisor < SmallestUseful)
                return null;
        }

        return divisor != 0 && Array.TrueForAll(figures, figure => Remainder(decimal.Abs(figure), divisor) <= RoundingError) ? divisor : null;
    }

    /// <summary>The remainder of a division; within a rounding error of the divisor it is 0.</summary>
    private static decimal Remainder(decimal figure, decimal divisor)
    {
        var rest = figure % divisor;
        return divisor - rest <= RoundingError ? 0 : rest;
    }
}
