using PriceFloor.Pricing.Costing;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The formulas of a <see cref="FloorPrice"/>.</summary>
internal readonly struct FloorPriceFormulas<T> where T : IFigure<T>
{
    public FloorPriceFormulas(UnitCost piece, decimal? highestWholesale)
    {
        var decimals = piece.Year.Currency.Decimals;
        T multiple = piece.Year.Profile.PriceRule.RetailMultiple;
        Wholesale = T.Named("wholesale", T.RoundUp(T.Named("floor", piece.Floor), decimals));
        WholesaleBase = T.Named("wholesaleBase", highestWholesale is { } highest ? T.Max(Wholesale, highest) : Wholesale);
        Target = T.Named("target", multiple * WholesaleBase);
        Retail = T.Named("retail", T.RoundUp(multiple * Wholesale, decimals));
    }

    public T Wholesale { get; }

    public T WholesaleBase { get; }

    public T Target { get; }

    public T Retail { get; }
}
