using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The formulas of a <see cref="Sale"/>.</summary>
internal readonly struct SaleFormulas<T> where T : IFigure<T>
{
    public SaleFormulas(decimal price, Channel channel)
    {
        T n = channel.PiecesPerOrder, a = channel.ShopShare, q = channel.Returns.Share, r = channel.Returns.ResaleShare;
        var (tax, shipping) = (channel.SalesTax, channel.Shipping);
        Price = T.Named("price", price);
        BeforeTax = T.Named("beforeTax", SalesTaxFormulas<T>.BeforeTax(Price, tax));
        ShippingCharged = T.Named("shippingCharged", SalesTaxFormulas<T>.BeforeTax(shipping.Charged, tax));
        AfterDiscount = channel.UsualDiscount == 0 ? BeforeTax : T.Named("afterDiscount", BeforeTax * (1 - (T)channel.UsualDiscount));
        Paid = T.Named("paid", SalesTaxFormulas<T>.WithTax(n * AfterDiscount + ShippingCharged, tax));
        Fees = new T[channel.Fees.Count];
        for (var i = 0; i < Fees.Length; i++)
            Fees[i] = T.Named("fee", i + 1, FeeOn(channel.Fees[i], n * AfterDiscount, ShippingCharged, Paid));
        AllFees = T.Named("fees", Formulas.Sum(Fees));

        T packing = channel.CostPerPiece;
        PerPieceCosts = T.Named("perPieceCosts", channel.Stall is { } stall ? packing + (T)stall.Cost / stall.Pieces : packing);
        Keep = T.Named("keep", AfterDiscount * (1 - a) + (ShippingCharged - shipping.Cost - AllFees) / n - PerPieceCosts);
        var feesLost = channel.Returns.FeesRefunded ? 0 : AllFees;
        Lost = T.Named("lost", feesLost / n + ((T)shipping.Cost + shipping.ReturnCost) / n + PerPieceCosts);
        var net = ((1 - q) * Keep - q * Lost) / (1 - q * r);
        if (channel.LossShare == 0)
        {
            Revenue = T.Named("revenueAPiece", AfterDiscount * (1 - q) / (1 - q * r));
            BeforeLosses = Net = T.Named("net", net);
            return;
        }

        T paidFor = 1 - channel.LossShare;
        Revenue = T.Named("revenueAPiece", AfterDiscount * paidFor * (1 - q) / (1 - q * r));
        BeforeLosses = T.Named("beforeLosses", net);
        Net = T.Named("net", paidFor * BeforeLosses - channel.LossShare * packing);
    }

    public T Price { get; }

    public T BeforeTax { get; }

    /// <summary>The price before tax itself if the channel has no usual discount.</summary>
    public T AfterDiscount { get; }

    public T ShippingCharged { get; }

    public T Paid { get; }

    public T[] Fees { get; }

    public T AllFees { get; }

    public T PerPieceCosts { get; }

    public T Keep { get; }

    public T Lost { get; }

    public T Revenue { get; }

    /// <summary>The net itself if no piece is lost on the channel.</summary>
    public T BeforeLosses { get; }

    public T Net { get; }

    /// <summary>A fee on an order, kept within its bounds; without a symbol.</summary>
    public static T FeeOn(Fee fee, T pieces, T shipping, T paid)
    {
        var on = fee.Of switch { FeeBase.Price => pieces, FeeBase.PriceAndShipping => pieces + shipping, _ => paid };
        var amount = fee.Rate * on + fee.Fixed;
        if (fee.Minimum is { } minimum)
            amount = T.Max(minimum, amount);
        return fee.Maximum is { } maximum ? T.Min(maximum, amount) : amount;
    }
}
