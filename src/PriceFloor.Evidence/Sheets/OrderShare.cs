namespace PriceFloor.Evidence.Sheets;

/// <summary>What a line has of the amounts of its order.</summary>
/// <param name="Discount">Taken off its value.</param>
/// <param name="Fees">Null if the order says no fees.</param>
/// <param name="ShippingCharged">Null if the order says none.</param>
/// <param name="ShippingCost">Null if the order says none.</param>
internal readonly record struct OrderShare(decimal Discount, decimal? Fees, decimal? ShippingCharged, decimal? ShippingCost)
{
    /// <summary>Why the line cannot be used; null if it can.</summary>
    public Code? Fault { get; init; }
}
