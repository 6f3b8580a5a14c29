using System.Globalization;
using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    /// <summary>After the workings of the year: the order, and what its least total and its largest discount come to.</summary>
    public static IEnumerable<Working> Of(Order order)
    {
        var formulas = order.FormulasOf<WrittenFigure>(order.Offer);
        foreach (var line in OfCharged(order.Items, order.Offer, formulas).Concat(OfNet(formulas.Net, order.Channel))
            .Concat(OfFloors(order.Items, order.Gifts, formulas)))
            yield return line;
        foreach (var (i, item) in order.Items.Index())
            yield return Line(formulas.AboveFloorOf(i), $"of that, item {i + 1}{Named(item.Piece.Design.Name)}");
        if (order.LeastTotal.Found is { Price: var least })
            foreach (var line in Prefixed("atLeastTotal", "at the least total: ", OfTotal(order, least)))
                yield return line;
        if (order.MostOff is { } share)
            foreach (var line in Prefixed("atMostOff", "at the most off: ", OfShareOff(order, share)))
                yield return line;
    }

    /// <summary>After the workings of the year: each run, what the order must bring in, and that its floor total does.</summary>
    public static IEnumerable<Working> Of(MadeToOrder order)
    {
        foreach (var (i, run) in order.Runs.Index())
            foreach (var line in Prefixed(string.Create(CultureInfo.InvariantCulture, $"line{i + 1}"), $"line {i + 1}: ", Of(run)))
                yield return line;
        var formulas = order.FormulasOf<WrittenFigure>();
        yield return Line(formulas.Pieces, "all pieces of the order");
        if (formulas.HasExtraHours)
            yield return Line(formulas.ExtraHours, "hours besides the runs");
        yield return Line(formulas.SellingHours, "hours of selling the order");
        yield return Line(formulas.Hours, "all hours of the order");
        yield return Line(formulas.Materials, "all materials");
        yield return Line(formulas.Seconds, "what all rejected pieces bring as seconds");
        yield return Line(formulas.Bought, "what is bought for the order");
        yield return Line(formulas.Floor, "what the order must bring in");
        yield return Line(formulas.OutOfPocket, "paid out for it before fees");
        foreach (var line in Prefixed("atFloorTotal", "at the floor total: ", OfSoldFor(order, order.FloorTotal)))
            yield return line;
        if (order.OneUnitLower is { } lower)
            foreach (var line in Prefixed("oneUnitLower", "one unit lower: ", OfSoldFor(order, lower)))
                yield return line;
    }

    /// <summary>After the workings of an order made to order: what a price for it leaves.</summary>
    public static IEnumerable<Working> OfPrice(MadeToOrder order, decimal price) =>
        Prefixed("atPrice", "at the price: ", OfSoldFor(order, price).Concat(OfLeft(order, price)));

    /// <summary>After the workings of an order made to order: its floor total with a surcharge for haste.</summary>
    public static IEnumerable<Working> OfRush(MadeToOrder order, decimal share)
    {
        var total = WrittenFigure.Named("atFloorTotalOrderTotal", order.FloorTotal);
        yield return Line(MadeToOrderFormulas<WrittenFigure>.RushTotal(total, share, order.Year.Currency),
            "the floor total with the surcharge for haste, rounded up");
    }

    /// <summary>After the workings of its order: what of a run's price is for one piece, and what its quantity earns.</summary>
    public static IEnumerable<Working> Of(RunPrice price, decimal? listed)
    {
        foreach (var line in Of(price.Order))
            yield return line;
        var formulas = price.FormulasOf<WrittenFigure>();
        yield return Line(formulas.Floor, "what a piece of the run must bring in");
        yield return Line(formulas.PerPiece, "the floor total for a piece");
        yield return Line(formulas.Earned, "the share off the floor total of one piece that the quantity earns");
        if (listed is { } asked && price.MostOff(asked) is { } share)
            yield return Line(formulas.At(asked, share), "the run at its listed price with the most off, at least the floor total");
    }

    private static IEnumerable<Working> OfTotal(Order order, decimal total)
    {
        var listed = WrittenFigure.Named("orderTotal", total);
        var (beforeTax, value, shipping) = OrderFormulas<WrittenFigure>.Charged(listed, order.Channel, order.Offer);
        yield return Line(listed, "all items as listed");
        yield return Line(beforeTax, "that before sales tax");
        if (order.Offer is not { DiscountShare: null, AmountOff: null })
            yield return Line(value, "what is paid of it under the offer");
        var pieces = order.FormulasOf<WrittenFigure>(order.Offer).Pieces;
        foreach (var line in OfNet(new OrderNetFormulas<WrittenFigure>(order.Channel, pieces, value, shipping), order.Channel))
            yield return line;
    }

    private static IEnumerable<Working> OfShareOff(Order order, decimal share)
    {
        var formulas = order.FormulasOf<WrittenFigure>(order.Offer with { DiscountShare = share });
        yield return Line(formulas.Value, "what is paid of the items with so much off");
        foreach (var line in OfNet(formulas.Net, order.Channel))
            yield return line;
    }

    private static IEnumerable<Working> OfLeft(MadeToOrder order, decimal price)
    {
        var formulas = order.FormulasOf<WrittenFigure>();
        var net = formulas.SoldFor(price, order.Channel).Net.Net;
        yield return Line(formulas.AboveFloor(net), "above the floor; negative when short");
        yield return Line(WrittenFigure.Named("earnedPerBenchHour", formulas.EarnedPerHour(net)), "what it pays for an hour of the order");
    }

    private static IEnumerable<Working> OfCharged(IReadOnlyList<OrderItem> items, Offer offer, OrderFormulas<WrittenFigure> formulas)
    {
        foreach (var (i, item) in items.Index())
            yield return Line(formulas.Values[i], $"item {i + 1}{Named(item.Piece.Design.Name)} as listed");
        yield return Line(formulas.Total, "all items as listed");
        yield return Line(formulas.BeforeTax, "that before sales tax");
        if (offer is not { DiscountShare: null, AmountOff: null })
            yield return Line(formulas.Value, "what is paid of it under the offer");
        yield return Line(formulas.ShippingCharged, "shipping charged, before tax");
        yield return Line(formulas.Pieces, "all pieces of the order, gifts included");
    }

    private static IEnumerable<Working> OfNet(OrderNetFormulas<WrittenFigure> formulas, Channel channel)
    {
        yield return Line(formulas.Paid, "all that the buyer pays");
        foreach (var (i, fee) in channel.Fees.Index())
            yield return Line(formulas.Fees[i], $"fee {i + 1}{Named(fee.Name)} on the order");
        yield return Line(formulas.AllFees, "all fees on the order");
        yield return Line(formulas.PerPieceCosts, "packing and the stall's share, all pieces");
        yield return Line(formulas.Keep, "kept of the order if it stays sold");
        if (channel.Returns.Share > 0)
            yield return Line(formulas.Lost, "lost if it comes back");
        if (formulas.HasLosses)
            yield return Line(formulas.BeforeLosses, "would reach the studio if none were lost on the channel");
        yield return Line(formulas.Net, "reaches the studio");
    }

    private static IEnumerable<Working> OfFloors(IReadOnlyList<OrderItem> items, IReadOnlyList<OrderItem> gifts,
        OrderFormulas<WrittenFigure> formulas)
    {
        foreach (var (i, item) in items.Index())
            yield return Line(formulas.Floors[i], $"floors of item {i + 1}{Named(item.Piece.Design.Name)}");
        foreach (var (i, gift) in gifts.Index())
            yield return Line(formulas.GiftFloors[i], $"floors of gift {i + 1}{Named(gift.Piece.Design.Name)}");
        yield return Line(formulas.SellingHours, "hours of selling the order");
        yield return Line(formulas.AllFloors, "what all pieces and their selling must bring in");
        yield return Line(formulas.AboveFloor, "above the floors; negative when short");
    }

    private static IEnumerable<Working> OfSoldFor(MadeToOrder order, decimal total)
    {
        var (listed, value, shipping, net) = order.FormulasOf<WrittenFigure>().SoldFor(total, order.Channel);
        yield return Line(listed, "the total");
        yield return Line(value, "the total before sales tax");
        yield return Line(shipping, "shipping charged, before tax");
        foreach (var line in OfNet(net, order.Channel with { Returns = new Returns(), LossShare = 0 }))
            yield return line;
    }
}
