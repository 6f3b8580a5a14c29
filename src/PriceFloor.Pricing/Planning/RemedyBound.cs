using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// What the hours, materials and losses of a piece must stay within. The floor asks that they stay within what reaches the studio, selling
/// included; the target asks that they stay within the retail price before tax over the retail multiple, and selling does not count.
/// </summary>
/// <param name="Symbol">What the workings call the amount.</param>
/// <param name="Amount">The amount that a piece may cost.</param>
/// <param name="SellingHours">Hours of selling that the amount pays for too.</param>
/// <param name="IsKept">Whether the piece stays within it as it is.</param>
internal sealed record RemedyBound(string Symbol, decimal Amount, decimal SellingHours, bool IsKept)
{
    public static RemedyBound OfTheFloor(PriceCheck check) =>
        new("net", check.Sale.Net, check.Prices.ChannelFloor.SellingHours, check.CarriesItsShare);

    /// <summary>Null on a wholesale channel: its target is its floor.</summary>
    public static RemedyBound? OfTheTarget(PriceCheck check)
    {
        if (check.Prices.Terms.Channel.Sells == Sells.Wholesale)
            return null;
        var most = MostForTheFloor<Figure>(check).Value;
        return new("mostForTheFloor", most, 0, most.Reaches(check.Prices.Floor.UnitCost.Cost));
    }

    /// <summary>X = x0/k, rounded down to the minor unit: the highest wholesale price that this retail price goes with.</summary>
    public static T MostForTheFloor<T>(PriceCheck check) where T : IFigure<T>
    {
        var year = check.Prices.Floor.UnitCost.Year;
        return T.Named("mostForTheFloor",
            T.RoundDown(T.Named("beforeTax", check.Sale.BeforeTax) / year.Profile.PriceRule.RetailMultiple, year.Currency.Decimals));
    }
}
