using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The formulas of <see cref="ChannelPrices"/>, whose two prices were found on the channel's grid.</summary>
internal readonly struct ChannelPricesFormulas<T> where T : IFigure<T>
{
    /// <param name="floorPrice">The smallest allowed price whose net reaches the floor.</param>
    /// <param name="reachingTarget">On a retail channel the smallest allowed price that reaches the target before tax.</param>
    public ChannelPricesFormulas(decimal floorPrice, decimal? reachingTarget)
    {
        FloorPrice = T.Named("floorPrice", floorPrice);
        ReachingTarget = T.Named("reachingTarget", reachingTarget ?? 0);
        TargetPrice = T.Named("targetPrice", reachingTarget is null ? FloorPrice : T.Max(FloorPrice, ReachingTarget));
    }

    public T FloorPrice { get; }

    /// <summary>Means something only on a retail channel.</summary>
    public T ReachingTarget { get; }

    public T TargetPrice { get; }

    /// <summary>A price near the target, before tax.</summary>
    public static (T Listed, T BeforeTax) BeforeTax(string symbol, string beforeTax, decimal price, SalesTax tax)
    {
        var listed = T.Named(symbol, price);
        return (listed, T.Named(beforeTax, SalesTaxFormulas<T>.BeforeTax(listed, tax)));
    }
}
