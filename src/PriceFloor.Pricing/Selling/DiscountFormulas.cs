using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The formulas of a <see cref="DiscountSeries"/>.</summary>
internal readonly struct DiscountFormulas<T> where T : IFigure<T>
{
    public DiscountFormulas(IReadOnlyList<decimal> rates)
    {
        T factor = 1;
        foreach (var (i, rate) in rates.Index())
            factor = i == 0 ? 1 - (T)rate : factor * (1 - (T)rate);
        Factor = T.Named("factor", factor);
        Single = T.Named("single", 1 - Factor);
    }

    public T Factor { get; }

    public T Single { get; }

    public T NetOf(T list) => list * Factor;

    public T ListOf(T net) => net / Factor;

    public static T Discount(T list, T net) => list - net;
}
