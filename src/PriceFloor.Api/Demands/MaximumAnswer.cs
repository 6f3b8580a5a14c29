using PriceFloor.Evidence.Demand;

namespace PriceFloor.Api.Demands;

/// <summary>Pieces that the market takes in these days: what to give as maximum of a line of POST /v1/year-plans.</summary>
/// <param name="Value" example="11">As likely as not that at least so many are ordered.</param>
/// <param name="Low" example="7">Nine times in ten at least so many.</param>
/// <param name="Observations" example="93">How many were seen; with fewer than 8 (too-few) nothing should be planned with it.</param>
/// <param name="Of" example="orders">What of.</param>
public sealed record MaximumAnswer(decimal Value, decimal Low, decimal Observations, string Of)
{
    internal static MaximumAnswer? From(MarketTakes? takes) => takes is null ? null
        : new MaximumAnswer(takes.Pieces, takes.Sure, takes.Orders, "orders");
}
