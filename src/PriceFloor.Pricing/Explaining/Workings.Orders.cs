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
        foreach (var line in OfCharged(order, formulas).Concat(OfNet(formulas.Net, order.Channel)).Concat(OfFloors(order, formulas)))
            yield return line;
        foreach (var (i, item) in order.Items.Index())
            yield return Line(formulas.AboveFloorOf(i), $"of that, item {i + 1}{Named(item.Piece.Design.Name)}");
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

    private static IEnumerable<Working> OfCharged(Order order, OrderFormulas<WrittenFigure> formulas)
    {
        foreach (var (i, item) in order.Items.Index())
            yield return Line(formulas.Values[i], $"item {i + 1}{Named(item.Piece.Design.Name)} as listed");
        yield return Line(formulas.Total, "all items as listed");
        yield return Line(formulas.BeforeTax, "that before sales tax");
        if (order.Offer is not { DiscountShare: null, AmountOff: null })
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

    private static IEnumerable<Working> OfFloors(Order order, OrderFormulas<WrittenFigure> formulas)
    {
        foreach (var (i, item) in order.Items.Index())
            yield return Line(formulas.Floors[i], $"floors of item {i + 1}{Named(item.Piece.Design.Name)}");
        foreach (var (i, gift) in order.Gifts.Index())
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
