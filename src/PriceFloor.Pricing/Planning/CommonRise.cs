using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>One share by which all prices of some lines rise together, so that they leave enough.</summary>
public static class CommonRise
{
    private const decimal Step = 0.001m, Most = 10m;

    /// <summary>
    /// The smallest share in steps of 0.001 that is enough; 0 if the prices are enough as they are, null if no share up to ten is. A higher price
    /// leaves more on every channel, so halving finds it; a price may then be one that its channel does not allow.
    /// </summary>
    /// <param name="sold">The lines and how many pieces of each count.</param>
    /// <param name="enough">What they must leave together toward what bench time must recover.</param>
    public static decimal? Of(IReadOnlyList<(PlannedLine Line, decimal Units)> sold, decimal enough) =>
        Search.FirstFrom(0, Most / Step, steps => LeftOf(sold, steps * Step).Reaches(enough)) * Step;

    private static decimal LeftOf(IReadOnlyList<(PlannedLine Line, decimal Units)> sold, decimal share)
    {
        var left = 0m;
        foreach (var (line, units) in sold)
            if (units > 0)
                left += units * (Sale.Of(line.Sale.Price * (1 + share), line.Sale.Channel).Net - line.UnitCost.Materials
                    + line.UnitCost.SecondsCredit);
        return left;
    }
}
