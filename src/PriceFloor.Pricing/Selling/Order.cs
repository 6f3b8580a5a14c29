using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// One order of stored designs, its gifts and its offer, and whether it carries the share of all its pieces. Its buyer pays the listed prices, so the
/// channel's usual discount is not taken off; fees, shipping and selling are those of this order. Unrounded.
/// </summary>
public sealed class Order
{
    private const decimal Step = 0.001m, MostShare = 0.999m;

    private readonly OrderFormulas<Figure> _formulas;
    private readonly OrderTerms _terms;

    private Order(Channel channel, IReadOnlyList<OrderItem> items, IReadOnlyList<OrderItem> gifts, Offer offer, OrderTerms terms)
    {
        (Channel, Items, Gifts, Offer, _terms) = (channel, items, gifts, offer, terms);
        _formulas = FormulasOf<Figure>(offer);
    }

    public Channel Channel { get; }

    public IReadOnlyList<OrderItem> Items { get; }

    public IReadOnlyList<OrderItem> Gifts { get; }

    public Offer Offer { get; }

    /// <summary>n: all pieces, gifts included.</summary>
    public int Pieces => (int)_formulas.Pieces.Value;

    /// <summary>The items' prices together, as listed, before the offer.</summary>
    public decimal Total => _formulas.Total.Value;

    /// <summary>net_order: what of the order reaches the studio.</summary>
    public decimal Net => _formulas.Net.Net.Value;

    /// <summary>What all its pieces and its selling must bring in.</summary>
    public decimal Floors => _formulas.AllFloors.Value;

    /// <summary>The net less the floors; negative when short.</summary>
    public decimal AboveFloor => _formulas.AboveFloor.Value;

    /// <summary>The net reaches the floors.</summary>
    public bool CarriesItsShare => Net.Reaches(Floors);

    /// <summary>What it does for the year.</summary>
    public OrderVerdict Verdict => CarriesItsShare ? OrderVerdict.MeetsFloor : OrderVerdict.BelowFloor;

    /// <summary>Each item's part of <see cref="AboveFloor"/>: the net less the selling, shared by value, less the floors of its pieces.</summary>
    public IReadOnlyList<decimal> AboveFloorOfItems
    {
        get
        {
            var formulas = _formulas;
            return [.. Items.Select((_, i) => formulas.AboveFloorOf(i).Value)];
        }
    }

    /// <summary>Each gift's part: the floors of its pieces, below zero.</summary>
    public IReadOnlyList<decimal> AboveFloorOfGifts => Array.ConvertAll(_formulas.GiftFloors, floor => -floor.Value);

    /// <summary>
    /// The largest share off the items' prices, on a grid of 0.001, with which the order still carries its share: in place of the offer's
    /// discount, beside what else it offers. Null if it does not carry its share even with nothing taken off.
    /// </summary>
    public decimal? MostOff
    {
        get
        {
            var least = _terms.LeastValue(Floors) + AmountOffBeforeTax;
            var near = decimal.Min(MostShare, Rounding.Down((1 - least / _formulas.BeforeTax.Value) / Step, 0) * Step);
            for (var share = decimal.Min(MostShare, decimal.Max(0, near) + Step); share >= 0 && share >= near - Step; share -= Step)
                if (FormulasOf<Figure>(Offer with { DiscountShare = share }).CarriesItsShare)
                    return share;
            return null;
        }
    }

    /// <summary>
    /// The smallest sum of the items' prices, as listed and before the offer, with which the same pieces under the same offer carry their share.
    /// <c>no-price</c> if it would pass 10^12.
    /// </summary>
    public Outcome<FoundPrice> LeastTotal => Outcome<FoundPrice>.Guard(() =>
    {
        var near = (_terms.LeastValue(Floors) + AmountOffBeforeTax) / (1 - (Offer.DiscountShare ?? 0));
        return OrderTerms.LeastTotal(Channel, Sale.ListedOf(near, Channel), total =>
        {
            var (_, value, shipping) = OrderFormulas<Figure>.Charged(total, Channel, Offer);
            return value.Value > 0 && new OrderNetFormulas<Figure>(Channel, Pieces, value, shipping).Net.Value.Reaches(Floors);
        });
    });

    private decimal AmountOffBeforeTax => Sale.BeforeTaxOf(Offer.AmountOff ?? 0, Channel);

    /// <summary>
    /// An order of designs of one profile, in the channel's currency. Refused: an offer that leaves nothing to pay (<c>out-of-range</c> at
    /// <c>/offer/amountOff</c>), shipping with which the channel takes everything (<c>takes-everything</c>), figures past exactness
    /// (<c>too-large</c>).
    /// </summary>
    /// <param name="channel">The channel.</param>
    /// <param name="items">At least one, of one profile.</param>
    /// <param name="gifts">Pieces given with them; their price does not count.</param>
    /// <param name="offer">One of its three fields, or none.</param>
    public static Outcome<Order> Of(Channel channel, IReadOnlyList<OrderItem> items, IReadOnlyList<OrderItem> gifts, Offer offer) =>
        Outcome<Order>.Guard(() =>
        {
            var pieces = items.Concat(gifts).Sum(item => item.Pieces);
            var terms = OrderTerms.Of(channel, pieces, offer.ShippingCharged ?? channel.Shipping.Charged);
            if (terms.Found is null)
                return terms.Faults.ToList();
            var order = new Order(channel, items, gifts, offer, terms.Value);
            return order._formulas.Value.Value > 0 ? order : new Fault("/offer/amountOff", FaultCodes.OutOfRange,
                "The amount takes off all of the items' prices together; give less than they come to.");
        });

    internal OrderFormulas<T> FormulasOf<T>(Offer offer) where T : IFigure<T> => new(Channel, Items, Gifts, offer);
}
