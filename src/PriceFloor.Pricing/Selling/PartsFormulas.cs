using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The formulas of <see cref="PriceParts"/>.</summary>
internal readonly struct PartsFormulas<T> where T : IFigure<T>
{
    public PartsFormulas(PriceCheck check)
    {
        var (sale, piece, channel) = (check.Sale, check.Prices.Floor.UnitCost, check.Prices.Terms.Channel);
        T n = channel.PiecesPerOrder;
        T beforeTax = T.Named("beforeTax", sale.BeforeTax), keep = T.Named("keep", sale.Keep);
        var afterDiscount = channel.UsualDiscount == 0 ? beforeTax : T.Named("afterDiscount", sale.AfterDiscount);
        var paid = T.Named("paid", sale.Paid) / n;
        Discount = channel.UsualDiscount == 0 ? 0 : T.Named("discountPart", (beforeTax - afterDiscount) * (1 + (T)channel.SalesTax.Rate));
        Paid = T.Named("paidAPiece", channel.UsualDiscount == 0 ? paid : paid + Discount);
        SalesTax = T.Named("salesTaxPart", (afterDiscount + T.Named("shippingCharged", sale.ShippingCharged) / n) * channel.SalesTax.Rate);
        ShopShare = T.Named("shopPart", afterDiscount * channel.ShopShare);
        Fees = T.Named("feesPart", T.Named("fees", sale.AllFees) / n);
        Shipping = T.Named("shippingPart", channel.Shipping.Cost / n);
        PackingAndStall = T.Named("perPieceCosts", sale.PerPieceCosts);
        var net = T.Named("net", sale.Net);
        var beforeLosses = channel.LossShare == 0 ? net : T.Named("beforeLosses", sale.BeforeLosses);
        Returns = T.Named("returnsPart", keep - beforeLosses);
        Losses = channel.LossShare == 0 ? 0 : T.Named("lossesPart", beforeLosses - net);
        var onChannel = new ChannelFloorFormulas<T>(piece, channel);
        ForMaterials = T.Named("forMaterials", T.Max(0, T.Named("materials", piece.Materials) - T.Named("secondsCredit", piece.SecondsCredit)));
        Development = piece.DevelopmentCost == 0 ? 0
            : T.Named("developmentPart", T.Min(ForMaterials, T.Named("developmentCost", piece.DevelopmentCost)));
        Materials = piece.DevelopmentCost == 0 ? ForMaterials : T.Named("materialsPart", ForMaterials - Development);
        ForBenchTime = T.Named("forBenchTime", onChannel.Floor - ForMaterials);

        T allocated = T.Named("allocated", piece.Year.Allocated), all = allocated + T.Named("profitBeforeTax", piece.Year.Profit);
        Expenses = T.Named("expensesPart", Share(ForBenchTime, allocated, all));
        Tax = T.Named("taxPart", Share(ForBenchTime, T.Named("tax", piece.Year.TaxOnProfit), all));
        Household = T.Named("householdPart", ForBenchTime - Expenses - Tax);
    }

    /// <summary>What the buyer would pay a piece without the usual discount.</summary>
    public T Paid { get; }

    public T Discount { get; }

    public T SalesTax { get; }

    public T ShopShare { get; }

    public T Fees { get; }

    public T Shipping { get; }

    public T PackingAndStall { get; }

    public T Returns { get; }

    public T Losses { get; }

    /// <summary>Materials and one-off cost, less what seconds bring.</summary>
    public T ForMaterials { get; }

    public T Development { get; }

    public T Materials { get; }

    public T ForBenchTime { get; }

    public T Expenses { get; }

    public T Tax { get; }

    public T Household { get; }

    /// <summary>
    /// Other taxable income pays a share of what bench time must recover before the pieces do; it lightens expenses, tax and household alike,
    /// in proportion, since nobody can say which of them it paid.
    /// </summary>
    private static T Share(T forBenchTime, T part, T all) => all.Value > 0 ? forBenchTime * (part / all) : 0;
}
