using System.Globalization;
using PriceFloor.Evidence.Prices;

namespace PriceFloor.Api.Demands;

/// <summary>How a rate and a best price came about. What a curve or a quantile gives stands as a number.</summary>
internal static class DemandWorkings
{
    public static IEnumerable<Working> Of(PriceQuestion question, DemandQuery asked, SuggestedPrices suggested)
    {
        var (demand, piece) = (question.Demand, question.Piece);
        foreach (var line in Workings.Of(piece.Year).Concat(Workings.Of(piece)))
            yield return line;
        if (demand.Present is not { } run || demand.Rate is null)
            yield break;
        yield return Given("shelfOrders", "orders that the shelf stands for", demand.Prior.Orders);
        yield return Given("shelfTime", "time that the shelf stands for", demand.Prior.Exposure);
        yield return Given("ownOrders", "orders at the price that was asked last", run.Sales.Orders);
        yield return Given("ownTime", "time at the price that was asked last", run.Sales.Exposure);
        yield return new("ordersARate", "orders in one unit of time", "(shelfOrders + ownOrders) / (shelfTime + ownTime)",
            (demand.Prior.Orders + run.Sales.Orders) / (demand.Prior.Exposure + run.Sales.Exposure));
        if (demand.Curve(question.Sensitivity) is not { } curve || asked.Pieces is not null)
            yield break;
        var least = question.Prices.Terms.PriceLeaving(suggested.Least);
        yield return Given("sensitivity", "per cent of buyers that 1 % more loses", curve.Sensitivity);
        yield return Given("priceAsked", "the price that was asked last", curve.Price);
        yield return Given("priceLeavingIt", "the price that leaves what a piece must bring", least);
        yield return new("bestPrice", "the price that brings most", "priceLeavingIt + priceAsked / sensitivity", least + curve.Above);
    }

    private static Working Given(string symbol, string label, decimal value) =>
        new(symbol, label, value.ToString(CultureInfo.InvariantCulture), value);
}
