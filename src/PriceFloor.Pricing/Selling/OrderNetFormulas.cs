using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// What of one order reaches the studio: as in <see cref="SaleFormulas{T}"/>, for the whole of this order and not for an average one.
/// </summary>
internal readonly struct OrderNetFormulas<T> where T : IFigure<T>
{
    /// <param name="channel">The channel.</param>
    /// <param name="pieces">All pieces of the order.</param>
    /// <param name="value">What is paid for them, before tax.</param>
    /// <param name="shippingCharged">What is paid for shipping, before tax.</param>
    public OrderNetFormulas(Channel channel, T pieces, T value, T shippingCharged)
    {
        T a = channel.ShopShare, q = channel.Returns.Share, r = channel.Returns.ResaleShare, packing = channel.CostPerPiece;
        var (tax, shipping) = (channel.SalesTax, channel.Shipping);
        Paid = T.Named("orderPaid", SalesTaxFormulas<T>.WithTax(value + shippingCharged, tax));
        Fees = new T[channel.Fees.Count];
        for (var i = 0; i < Fees.Length; i++)
            Fees[i] = T.Named("orderFee", i + 1, SaleFormulas<T>.FeeOn(channel.Fees[i], value, shippingCharged, Paid));
        AllFees = T.Named("orderFees", Formulas.Sum(Fees));
        PerPieceCosts = T.Named("orderPerPieceCosts",
            pieces * (channel.Stall is { } stall ? packing + (T)stall.Cost / stall.Pieces : packing));
        Keep = T.Named("orderKeep", value * (1 - a) + shippingCharged - shipping.Cost - AllFees - PerPieceCosts);
        var feesLost = channel.Returns.FeesRefunded ? 0 : AllFees;
        Lost = T.Named("orderLost", feesLost + shipping.Cost + shipping.ReturnCost + PerPieceCosts);
        var net = q.Value == 0 ? Keep : ((1 - q) * Keep - q * Lost) / (1 - q * r);
        HasLosses = channel.LossShare > 0;
        BeforeLosses = HasLosses ? T.Named("orderBeforeLosses", net) : net;
        Net = T.Named("orderNet", HasLosses ? (1 - (T)channel.LossShare) * BeforeLosses - channel.LossShare * pieces * packing : net);
    }

    public T Paid { get; }

    public T[] Fees { get; }

    public T AllFees { get; }

    public T PerPieceCosts { get; }

    public T Keep { get; }

    public T Lost { get; }

    public bool HasLosses { get; }

    /// <summary>Without a symbol if no piece is lost on the channel.</summary>
    public T BeforeLosses { get; }

    public T Net { get; }

    /// <summary>Hours of selling an order of so many pieces.</summary>
    public static T SellingHoursOf(Channel channel, T pieces)
    {
        var hours = ((T)channel.Selling.MinutesPerOrder + pieces * channel.Selling.MinutesPerPiece) / 60;
        return T.Named("orderSellingHours", channel.Stall is { Hours: > 0 } stall ? hours + pieces * stall.Hours / stall.Pieces : hours);
    }
}
