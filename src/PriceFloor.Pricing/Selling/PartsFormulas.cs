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
        Paid = T.Named("paidAPiece", T.Named("paid", sale.Paid) / n);
        SalesTax = T.Named("salesTaxPart", (beforeTax + T.Named("shippingCharged", sale.ShippingCharged) / n) * channel.SalesTax.Rate);
        ShopShare = T.Named("shopPart", beforeTax * channel.ShopShare);
        Fees = T.Named("feesPart", T.Named("fees", sale.AllFees) / n);
        Shipping = T.Named("shippingPart", channel.Shipping.Cost / n);
        PackingAndStall = T.Named("perPieceCosts", sale.PerPieceCosts);
        Returns = T.Named("returnsPart", keep - T.Named("net", sale.Net));
        ForMaterials = T.Named("forMaterials", T.Max(0, T.Named("materials", piece.Materials) - T.Named("secondsCredit", piece.SecondsCredit)));
        ForBenchTime = T.Named("forBenchTime", T.Named("floor", piece.Floor) - ForMaterials);

        T allocated = T.Named("allocated", piece.Year.Allocated), all = allocated + T.Named("profitBeforeTax", piece.Year.Profit);
        Expenses = T.Named("expensesPart", Share(ForBenchTime, allocated, all));
        Tax = T.Named("taxPart", Share(ForBenchTime, T.Named("tax", piece.Year.TaxOnProfit), all));
        Household = T.Named("householdPart", ForBenchTime - Expenses - Tax);
    }

    public T Paid { get; }

    public T SalesTax { get; }

    public T ShopShare { get; }

    public T Fees { get; }

    public T Shipping { get; }

    public T PackingAndStall { get; }

    public T Returns { get; }

    public T ForMaterials { get; }

    public T ForBenchTime { get; }

    public T Expenses { get; }

    public T Tax { get; }

    public T Household { get; }

    /// <summary>
    /// Other taxable income pays a share of the pool before the pieces do; it lightens expenses, tax and household alike, in proportion,
    /// since nobody can say which of them it paid.
    /// </summary>
    private static T Share(T forBenchTime, T part, T all) => all.Value > 0 ? forBenchTime * (part / all) : 0;
}
