using PriceFloor.Evidence.Demand;

namespace PriceFloor.Api.Demands;

/// <summary>Before and after the last change of price. One design's before and after hardly ever decides.</summary>
/// <param name="Before" example="46.00">The price before.</param>
/// <param name="After" example="52.00">The price after.</param>
/// <param name="Chance" example="0.40">How likely the change paid.</param>
/// <param name="MayLose" example="0.1455">
/// Of the sales, so many may be lost before it did not pay; null unless a sale leaves something at both prices.
/// </param>
/// <param name="Lost" example="0.1864">What was lost as far as is seen; below 0 where more was sold.</param>
/// <param name="Fell" example="0.84">How likely sales fell at all.</param>
/// <param name="OrdersToTell" example="365">Orders needed on each side to tell; null where nothing can be told.</param>
public sealed record PriceChangeAnswer(decimal Before, decimal After, decimal Chance, decimal? MayLose, decimal Lost, decimal Fell,
    decimal? OrdersToTell)
{
    internal static PriceChangeAnswer? Of(PriceChange? change, Currency money) => change is null ? null
        : new PriceChangeAnswer(Rounding.WithDecimals(change.Before.Price!.Value, money.Decimals),
            Rounding.WithDecimals(change.After.Price!.Value, money.Decimals), change.Paid, change.MayLose, change.Rates.Lost, change.Rates.Fell,
            change.OrdersToTell);
}
