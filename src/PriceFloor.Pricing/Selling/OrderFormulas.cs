using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The formulas of an <see cref="Order"/>.</summary>
internal readonly struct OrderFormulas<T> where T : IFigure<T>
{
    public OrderFormulas(Channel channel, IReadOnlyList<OrderItem> items, IReadOnlyList<OrderItem> gifts, Offer offer)
    {
        Values = new T[items.Count];
        for (var i = 0; i < Values.Length; i++)
            Values[i] = T.Named("itemValue", i + 1, items[i].Pieces * (T)items[i].Price);
        Total = T.Named("orderTotal", Formulas.Sum(Values));
        (BeforeTax, Value, ShippingCharged) = Charged(Total, channel, offer);
        var count = 0;
        for (var i = 0; i < items.Count + gifts.Count; i++)
            count += (i < items.Count ? items[i] : gifts[i - items.Count]).Pieces;
        Pieces = T.Named("orderPieces", count);
        Net = new OrderNetFormulas<T>(channel, Pieces, Value, ShippingCharged);

        (Floors, GiftFloors) = (FloorsOf("itemFloor", items), FloorsOf("giftFloor", gifts));
        SellingHours = OrderNetFormulas<T>.SellingHoursOf(channel, Pieces);
        var floors = gifts.Count > 0 ? Formulas.Sum(Floors) + Formulas.Sum(GiftFloors) : Formulas.Sum(Floors);
        PerBenchHour = T.Named("perBenchHour", items[0].Piece.Year.PerBenchHour);
        AllFloors = T.Named("orderFloors", SellingHours.Value == 0 ? floors : floors + PerBenchHour * SellingHours);
        AboveFloor = T.Named("orderAboveFloor", Net.Net - AllFloors);
    }

    public T[] Values { get; }

    public T Total { get; }

    public T BeforeTax { get; }

    /// <summary>What is paid for the items, before tax; the total before tax itself if nothing is taken off.</summary>
    public T Value { get; }

    public T ShippingCharged { get; }

    public T Pieces { get; }

    public OrderNetFormulas<T> Net { get; }

    public T[] Floors { get; }

    public T[] GiftFloors { get; }

    public T SellingHours { get; }

    public T PerBenchHour { get; }

    public T AllFloors { get; }

    public T AboveFloor { get; }

    /// <summary>Whether something is paid for the items, and the net reaches the floors.</summary>
    public bool CarriesItsShare => Value.Value > 0 && Net.Net.Value.Reaches(AllFloors.Value);

    /// <summary>An item's part of what the order leaves: the net less its selling, shared by value, less the item's own floor.</summary>
    /// <param name="item">Its index.</param>
    public T AboveFloorOf(int item) => T.Named("itemAboveFloor", item + 1,
        (SellingHours.Value == 0 ? Net.Net : Net.Net - PerBenchHour * SellingHours) * (Values[item] / Total) - Floors[item]);

    /// <summary>What the items come to before tax, what is paid for them under an offer, and what for shipping.</summary>
    public static (T BeforeTax, T Value, T ShippingCharged) Charged(T total, Channel channel, Offer offer)
    {
        var beforeTax = T.Named("orderBeforeTax", SalesTaxFormulas<T>.BeforeTax(total, channel.SalesTax));
        var value = offer.DiscountShare is { } share ? beforeTax * (1 - (T)share) : beforeTax;
        if (offer.AmountOff is { } off)
            value -= SalesTaxFormulas<T>.BeforeTax(off, channel.SalesTax);
        var shipping = SalesTaxFormulas<T>.BeforeTax(offer.ShippingCharged ?? channel.Shipping.Charged, channel.SalesTax);
        return (beforeTax, offer is { DiscountShare: null, AmountOff: null } ? beforeTax : T.Named("orderValue", value),
            T.Named("orderShipping", shipping));
    }

    private static T[] FloorsOf(string symbol, IReadOnlyList<OrderItem> items)
    {
        var floors = new T[items.Count];
        for (var i = 0; i < floors.Length; i++)
            floors[i] = T.Named(symbol, i + 1, items[i].Pieces * (T)items[i].Piece.Floor);
        return floors;
    }
}
