using PriceFloor.Api.Access;
using PriceFloor.Api.Catalogues;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.OrderChecks;

/// <summary>One order checked against the stored documents.</summary>
public sealed class CheckedOrder
{
    private CheckedOrder(OrderCheckRequest request, Catalogue catalogue, Stored<Channel> channel, IReadOnlyList<OrderedPiece> items,
        IReadOnlyList<OrderedPiece> gifts) =>
            (Request, Catalogue, Channel, Items, Gifts) = (request, catalogue, channel, items, gifts);

    public OrderCheckRequest Request { get; }

    public Catalogue Catalogue { get; }

    public Stored<Channel> Channel { get; }

    public IReadOnlyList<OrderedPiece> Items { get; }

    public IReadOnlyList<OrderedPiece> Gifts { get; }

    /// <summary>The order; null if only the least order is asked for.</summary>
    public Order? Order { get; private init; }

    /// <summary>The smallest total that carries it; null with it.</summary>
    public decimal? LeastTotal { get; private init; }

    /// <summary>The least orders of the channel; null if they are not asked for.</summary>
    public LeastOrderAnswers? LeastOrder { get; private init; }

    /// <summary>The order, or why it cannot be checked, all faults at once.</summary>
    /// <param name="catalogue">The documents of one moment.</param>
    /// <param name="request">The order in question.</param>
    /// <param name="place">Where it is in the request.</param>
    /// <param name="mayRead">Whether the caller may learn what reveals costs, and what other designs there are.</param>
    public static Outcome<CheckedOrder> Of(Catalogue catalogue, OrderCheckRequest request, Place place, bool mayRead)
    {
        if (request.LeastOrder && !mayRead)
            return RequestFault.Of(ProblemTypes.KeyNotAllowed, "leastOrder is about the whole channel; it needs a key with the scope \"read\".");
        var source = new OrderSource(catalogue, catalogue.Channel(request.Channel), place, mayRead);
        var items = request.Items.Select((item, i) => OrderedPiece.OfItem(source, item, i)).ToList();
        var gifts = request.Gifts.Select((gift, i) => OrderedPiece.OfGift(source, gift, i)).ToList();
        List<Fault> faults = [.. UnknownChannel(source, request.Channel), .. items.Concat(gifts).SelectMany(piece => piece.Faults)];
        if (faults.Count > 0)
            return faults;
        var found = new CheckedOrder(request, catalogue, source.Channel!,
            [.. items.Select(item => item.Value)], [.. gifts.Select(gift => gift.Value)]);
        return found.OneYear(place) is { Count: > 0 } mixed ? mixed : found.Computed(place);
    }

    /// <summary>The answer, without what the caller's key may not learn.</summary>
    public OrderCheckAnswer Answer(Caller caller, bool workings) => OrderCheckAnswers.Of(this, caller, workings);

    private static IEnumerable<Fault> UnknownChannel(OrderSource source, string key)
    {
        if (source.Channel is null)
            yield return RequestFault.Unknown(source.Place.Error("channel", InputCodes.UnknownChannel,
                $"There is no channel \"{key}\"{(source.MayRead ? source.Catalogue.HintOfChannel(key) : "")}; case counts."));
    }

    /// <summary>Faults of an order that two years or two currencies would have to carry.</summary>
    private List<Fault> OneYear(Place place)
    {
        if (Items.Count == 0)
            return [];
        var year = Items[0].Floor.Profile;
        List<Fault> others = [.. Items.Concat(Gifts).Where(piece => piece.Floor.Profile.Key != year.Key).Select(piece =>
            RequestFault.Invalid(place.Error($"{piece.At[1..]}/sku", FaultCodes.Contradictory,
                "The designs of one order belong to one profile; this one belongs to another than the first. Check it as an order of its own.")))];
        var (sold, counted) = (Channel.Document.Currency, year.Document.Currency);
        if (others.Count == 0 && sold != counted)
            others.Add(RequestFault.Of(ProblemTypes.CurrencyMismatch,
                $"The channel \"{Channel.Key}\" sells in {sold}, the designs' profile counts in {counted}; nothing is ever converted."));
        return others;
    }

    private Outcome<CheckedOrder> Computed(Place place)
    {
        var offer = Request.Offer ?? new Offer();
        var order = Items.Count == 0 ? null
            : Order.Of(Channel.Document, [.. Items.Select(item => item.Item)], [.. Gifts.Select(gift => gift.Item)], offer);
        if (order is { Found: null })
            return order.Faults.Select(fault => fault.Code == FaultCodes.OutOfRange
                ? RequestFault.Invalid(place.Error(fault.Pointer.TrimStart('/'), fault.Code, fault.Detail)) : fault).ToList();
        var total = order?.Value.LeastTotal;
        if (total is { Found: null })
            return total.Faults.ToList();
        var least = Request.LeastOrder ? LeastOrderAnswers.Of(Catalogue, Channel, offer) : null;
        return least is { Found: null }
            ? least.Faults.ToList()
            : new CheckedOrder(Request, Catalogue, Channel, Items, Gifts)
            {
                Order = order?.Value,
                LeastTotal = total?.Value.Price,
                LeastOrder = least?.Value,
            };
    }
}
