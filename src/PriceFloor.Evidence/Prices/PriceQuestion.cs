using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Evidence.Prices;

/// <summary>A design on a channel whose demand suggests a price.</summary>
/// <param name="Demand">How often it is ordered there.</param>
/// <param name="Piece">What a piece takes.</param>
/// <param name="Prices">Its floor price there.</param>
/// <param name="Sensitivity">How buyers of the shelf answer to price.</param>
public sealed record PriceQuestion(DesignDemand Demand, UnitCost Piece, ChannelPrices Prices, Sensitivity Sensitivity)
{
    /// <summary>The price that demand suggests; null where no price and no order is known.</summary>
    /// <param name="least">v: what a piece must bring to the studio.</param>
    /// <param name="pieces">n: pieces that are left; null where more can be made.</param>
    /// <param name="time">T: how long they can wait.</param>
    public Estimate? Best(decimal least, int? pieces, decimal time) => Demand.Curve(Sensitivity) is not { } curve ? null
        : new Estimate(At(curve.Sensitivity, least, pieces, time)!.Value, At(Sensitivity.Estimate.High, least, pieces, time),
            At(Sensitivity.Estimate.Low, least, pieces, time));

    /// <summary>What sales bring in one unit of time at a price.</summary>
    public ExpectedSales? At(decimal price) => Demand.Curve(Sensitivity) is { } curve
        ? ExpectedSales.Of(curve.RateAt(price), price, Demand.Offer, Piece) : null;

    /// <summary>The step towards a best price.</summary>
    /// <param name="best">The best price.</param>
    /// <param name="mayBeBelowFloor">Of slow stock: its cost is spent.</param>
    /// <param name="neverFalls">Of an edition: its early buyers paid as much.</param>
    public NextPrice Next(decimal best, bool mayBeBelowFloor = false, bool neverFalls = false) =>
        NextPrice.Of(best, Demand.Offer, Prices, mayBeBelowFloor, neverFalls);

    private decimal? At(decimal? sensitivity, decimal least, int? pieces, decimal time) => sensitivity is not > 0 ? null
        : (Demand.Curve(Sensitivity)! with { Sensitivity = sensitivity.Value }).Best(Prices.Terms.PriceLeaving(least), pieces, time,
            Piece.Year.Currency.Decimals);
}
