using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// A channel for one order of so many pieces. The whole order is sold as one piece would be on a channel that charges the costs of each piece so
/// many times, so what is known of such a channel holds for the order: its net rises with every total.
/// </summary>
internal sealed class OrderTerms
{
    private readonly SellingTerms _asOnePiece;

    private OrderTerms(SellingTerms asOnePiece) => _asOnePiece = asOnePiece;

    /// <summary>Refused with <c>takes-everything</c> if somewhere a higher total would leave no more.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="pieces">All pieces of the order; 0 for work alone.</param>
    /// <param name="shippingCharged">What the buyer pays for shipping, as the channel's prices are.</param>
    public static Outcome<OrderTerms> Of(Channel channel, int pieces, decimal shippingCharged)
    {
        var terms = SellingTerms.Of(channel with
        {
            PiecesPerOrder = 1,
            UsualDiscount = 0,
            CostPerPiece = pieces * channel.CostPerPiece,
            Stall = channel.Stall is { } stall ? stall with { Cost = pieces * stall.Cost } : null,
            Shipping = channel.Shipping with { Charged = shippingCharged },
        });
        return terms.Found is null ? terms.Faults.ToList() : new OrderTerms(terms.Value);
    }

    /// <summary>What is paid for the pieces before tax where a fee leaves its minimum or reaches its maximum, and zero; in order.</summary>
    public IReadOnlyList<decimal> Corners => _asOnePiece.Corners;

    /// <summary>About what must be paid for the pieces before tax for the net to reach a floor, exact but for the last digits.</summary>
    public decimal LeastValue(decimal floor) => _asOnePiece.LeastAfterDiscount(floor);

    /// <summary>The smallest total on the currency's minor unit that is enough.</summary>
    /// <param name="near">About where it lies.</param>
    /// <param name="isEnough">Holds for every total from some point on.</param>
    public static Outcome<FoundPrice> LeastTotal(Channel channel, decimal near, Func<decimal, bool> isEnough) =>
        near <= Limits.HighestPrice && new PriceGrid(Currency.Of(channel.Currency).MinorUnit, 0).First(near, isEnough) is { } total
            ? new FoundPrice(total)
            : new Fault("", FaultCodes.NoPrice, "No total up to 10^12 would be enough; check the channel's fees and the bench time and materials.");
}
