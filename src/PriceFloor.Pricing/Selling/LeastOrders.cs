using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// The least orders of a channel under an offer, such as free shipping. Between two corners of the fees an order of one design gains as much with
/// each further piece, so only the ends of such a stretch are looked at.
/// </summary>
public sealed class LeastOrders
{
    private readonly IReadOnlyList<decimal> _corners;

    private LeastOrders(Channel channel, Offer offer, IReadOnlyList<decimal> corners) => (Channel, Offer, _corners) = (channel, offer, corners);

    public Channel Channel { get; }

    public Offer Offer { get; }

    /// <summary>Refused with <c>takes-everything</c> if the channel takes everything with the shipping of the offer.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="offer">One of its three fields, or none.</param>
    public static Outcome<LeastOrders> Of(Channel channel, Offer offer)
    {
        var terms = OrderTerms.Of(channel, 1, offer.ShippingCharged ?? channel.Shipping.Charged);
        return terms.Found is null ? terms.Faults.ToList() : new LeastOrders(channel, offer, terms.Value.Corners);
    }

    /// <summary>The least order of a piece at a price as listed. Refused: figures past exactness (<c>too-large</c>).</summary>
    public Outcome<LeastOrder> Of(UnitCost piece, decimal price) => Outcome<LeastOrder>.Guard(() =>
    {
        var most = LeastOrder.MostPieces;
        foreach (var least in StretchesOf(price))
        {
            if (!Carries(piece, most, price))
                return most == LeastOrder.MostPieces ? new LeastOrder(null, null) : Of(most + 1, price);
            if (!Carries(piece, least, price))
                return Of(FirstBetween(piece, least, most, price), price);
            most = least - 1;
        }

        return Of(1, price);
    });

    /// <summary>The largest of the least orders of more than one piece; at least one.</summary>
    internal static T ThresholdOf<T>(IReadOnlyList<T> totals) where T : IFigure<T> => T.Named("threshold", totals.Aggregate(T.Max));

    internal OrderFormulas<T> FormulasOf<T>(OrderItem item) where T : IFigure<T> => new(Channel, [item], [], Offer);

    private static LeastOrder Of(int pieces, decimal price) => new(pieces, pieces * price);

    /// <summary>The smallest number of pieces of each stretch without a corner, in descending order down to 1.</summary>
    private IEnumerable<int> StretchesOf(decimal price)
    {
        var off = Sale.BeforeTaxOf(Offer.AmountOff ?? 0, Channel);
        var each = Sale.BeforeTaxOf(price, Channel) * (1 - (Offer.DiscountShare ?? 0));
        return _corners.Where(corner => corner + off < (LeastOrder.MostPieces - 1) * each)
            .Select(corner => (int)Rounding.Down((corner + off) / each, 0) + 1).Append(1).Distinct().OrderDescending();
    }

    /// <summary>The smallest number of pieces that carries its share, if the least does not, the most does, and no corner is between.</summary>
    private int FirstBetween(UnitCost piece, int least, int most, decimal price)
    {
        while (most - least > 1)
        {
            var middle = (least + most) / 2;
            (least, most) = Carries(piece, middle, price) ? (least, middle) : (middle, most);
        }

        return most;
    }

    private bool Carries(UnitCost piece, int pieces, decimal price) =>
        FormulasOf<Figure>(new OrderItem(piece, pieces, price)).CarriesItsShare;
}
