using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>One share by which all prices of some lines rise together, so that they leave enough.</summary>
public static class CommonRise
{
    private const decimal Step = 0.001m, Most = 10m, Near = 0.1m;

    /// <summary>
    /// The smallest share in steps of 0.001 that is enough; 0 if the prices are enough as they are, null if no share up to ten is. A higher price
    /// leaves more on every channel, so halving finds it; a price may then be one that its channel does not allow.
    /// </summary>
    /// <param name="sold">The lines and how many pieces of each count.</param>
    /// <param name="enough">What they must leave together toward what bench time must recover.</param>
    public static decimal? Of(IReadOnlyList<(PlannedLine Line, decimal Units)> sold, decimal enough) => Of(share =>
    {
        var left = 0m;
        foreach (var (line, units) in sold)
            if (units > 0)
                left += units * (NetOf(line.Sale, share) - line.UnitCost.Materials + line.UnitCost.SecondsCredit);
        return left;
    }, enough);

    /// <summary>The same of lines whose contributions at higher prices are known.</summary>
    /// <param name="leftAt">What all lines leave at prices that are higher by a share.</param>
    /// <param name="enough">What they must leave.</param>
    public static decimal? Of(Func<decimal, decimal> leftAt, decimal enough)
    {
        var (now, near) = (leftAt(0), leftAt(Near));
        // nearly a straight line, so the search begins where it would be enough
        var guess = now >= enough || near <= now ? 0 : decimal.Min(Most, (enough - now) / (near - now) * Near);
        return Search.FirstNear(Rounding.Up(guess / Step, 0), 0, Most / Step, steps => leftAt(steps * Step).Reaches(enough)) * Step;
    }

    /// <summary>What reaches the studio of a sale at a price that is higher by a share.</summary>
    public static decimal NetOf(Sale sale, decimal share) => Sale.Of(sale.Price * (1 + share), sale.Channel).Net;
}
