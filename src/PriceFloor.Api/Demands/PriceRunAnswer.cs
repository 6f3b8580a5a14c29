using PriceFloor.Evidence.Demand;
using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Api.Demands;

/// <summary>A time in which one price was asked.</summary>
/// <param name="Price" example="46.00">The price; null where none is known.</param>
/// <param name="From" example="2027-01-01">The first day.</param>
/// <param name="To" example="2027-08-19">The last day.</param>
/// <param name="Orders" example="62">Orders of these days.</param>
/// <param name="Time" example="33.00">Weighted weeks, or events, in which it could be bought.</param>
/// <param name="Rate" example="1.7989">Orders in one of them, in the light of the shelf; null where it could never be bought.</param>
/// <param name="Low" example="1.4464">The lower end of its range.</param>
/// <param name="High" example="2.1829">The upper end.</param>
public sealed record PriceRunAnswer(decimal? Price, DateOnly From, DateOnly To, decimal Orders, decimal Time, decimal? Rate, decimal? Low,
    decimal? High)
{
    internal static PriceRunAnswer Of(PriceRun run, DesignDemand demand, Currency money)
    {
        var rate = run.Sales.Exposure > 0 ? demand.Prior.At(run.Sales, demand.Level) : (Estimate?)null;
        return new PriceRunAnswer(run.Price is { } price ? Rounding.WithDecimals(price, money.Decimals) : null, run.Days.From, run.Days.To,
            run.Sales.Orders, Rounding.Nearest(run.Sales.Exposure, DemandRateAnswer.TimeDecimals), rate?.Value, rate?.Low, rate?.High);
    }
}
