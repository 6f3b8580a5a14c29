using PriceFloor.Evidence.Statistics;

namespace PriceFloor.Api.Demands;

/// <summary>How buyers answer to price: 1 % more loses about so many per cent of them.</summary>
/// <param name="Value" example="1.8382">So many per cent.</param>
/// <param name="Low" example="0.75">The lower end of its range.</param>
/// <param name="High" example="3.16">The upper end.</param>
/// <param name="From" example="shelf">
/// "shelf": from the changes of all designs of the profile; "general": fewer than 30 orders came after one, so what is known in general.
/// </param>
/// <param name="Orders" example="67">Orders after changes of price.</param>
/// <param name="Changes" example="4">Designs, each on one channel, whose price changed.</param>
public sealed record SensitivityAnswer(decimal Value, decimal Low, decimal High, string From, decimal Orders, int Changes)
{
    internal static SensitivityAnswer Of(Sensitivity found) => new(found.Estimate.Value, found.Estimate.Low!.Value, found.Estimate.High!.Value,
        found.IsGeneral ? "general" : "shelf", found.ChangedOrders, found.Changes);
}
