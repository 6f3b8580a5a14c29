using PriceFloor.Pricing.Documents;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// A cost of selling that a channel charges and that an expense of one kind may also cover: counted once, it belongs to one of them.
/// </summary>
internal sealed record SellingCost(CostKind Kind, string Words, string Pointer, Func<Channel, bool> IsChargedBy)
{
    public static readonly IReadOnlyList<SellingCost> All =
    [
        new(CostKind.CommissionsAndFees, "fees", "/fees", channel => channel.Fees.Any(fee => fee.Rate > 0 || fee.Fixed > 0 || fee.Minimum > 0)),
        new(CostKind.Shipping, "shipping", "/shipping", channel => channel.Shipping.Cost > 0 || channel.Shipping.ReturnCost > 0),
        new(CostKind.Packaging, "packaging", "/costPerPiece", channel => channel.CostPerPiece > 0),
        new(CostKind.ShowsAndStalls, "stalls", "/stall", channel => channel.Stall is { Cost: > 0 }),
    ];
}
