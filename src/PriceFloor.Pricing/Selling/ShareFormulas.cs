using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The profit between a cost and a price, and its share of each.</summary>
internal readonly struct ShareFormulas<T> where T : IFigure<T>
{
    /// <param name="cost">The cost.</param>
    /// <param name="price">The price.</param>
    /// <param name="number">The number of the hand, 1 first; 0 if there is only one.</param>
    public ShareFormulas(T cost, T price, int number)
    {
        (HasOnCost, HasOnPrice) = (cost.Value != 0, price.Value != 0);
        Profit = Named("profit", number, price - cost);
        OnCost = HasOnCost ? Named("markup", number, Profit / cost) : 0;
        OnPrice = HasOnPrice ? Named("margin", number, Profit / price) : 0;
    }

    public T Profit { get; }

    /// <summary>False if the cost is nothing.</summary>
    public bool HasOnCost { get; }

    public T OnCost { get; }

    /// <summary>False if the price is nothing.</summary>
    public bool HasOnPrice { get; }

    public T OnPrice { get; }

    private static T Named(string symbol, int number, T figure) => number == 0 ? T.Named(symbol, figure) : T.Named(symbol, number, figure);
}
