namespace PriceFloor.Pricing.Documents;

/// <summary>
/// The work of selling on a channel: listing, answering, packing, bringing to the post. Each hour of it carries the year like an hour at the
/// bench, out of the calendar's <c>sellingShare</c>.
/// </summary>
public sealed record SellingTime
{
    /// <summary>Minutes for one order.</summary>
    /// <example>14</example>
    [Quantity]
    public decimal MinutesPerOrder { get; init; }

    /// <summary>Minutes for each piece, besides.</summary>
    /// <example>4</example>
    [Quantity]
    public decimal MinutesPerPiece { get; init; }
}
