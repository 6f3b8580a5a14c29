namespace PriceFloor.Pricing.Planning.Solver;

/// <summary>
/// The grid that sums of whole pieces lie on: the greatest figure of which every figure is a multiple, 0.05 for 1.25 and 0.70, or a
/// 600th of an hour for times told in tenths of a minute. What lies between two points of the grid need not be looked for.
/// </summary>
internal static class MixGrid
{
    private const decimal Dust = 0.0000000000000000000001m;
    private const decimal Coarse = 0.0000001m;

    /// <summary>The grid, or null where the figures share none that is worth using.</summary>
    public static decimal? Of(decimal[] figures)
    {
        var grid = 0m;
        foreach (var figure in figures)
        {
            for (var rest = decimal.Abs(figure); rest > Dust;)
                (grid, rest) = (rest, grid == 0 ? 0 : Rest(grid, rest));
            if (grid != 0 && grid < Coarse)
                return null;
        }

        return grid != 0 && Array.TrueForAll(figures, figure => Rest(decimal.Abs(figure), grid) <= Dust) ? grid : null;
    }

    /// <summary>What is left of a figure when the other is taken from it as often as it goes; dust on either side is nothing.</summary>
    private static decimal Rest(decimal figure, decimal other)
    {
        var rest = figure % other;
        return other - rest <= Dust ? 0 : rest;
    }
}
