using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The cost and the price of one step, of whichever two of the five values decide it.</summary>
internal readonly struct MarkupFormulas<T> where T : IFigure<T>
{
    /// <param name="asked">What was given, a price with its tax if that is included.</param>
    /// <param name="tax">The tax that the price holds, or that comes on top.</param>
    public MarkupFormulas(MarkupValues asked, SalesTax? tax)
    {
        T cost = T.Named("cost", asked.Cost ?? 0), price = T.Named("price", SalesTaxFormulas<T>.BeforeTax(asked.Price ?? 0, tax));
        T markup = T.Named("markup", asked.Markup ?? 0), margin = T.Named("margin", asked.Margin ?? 0), profit = T.Named("profit", asked.Profit ?? 0);
        Pair = asked.BeforeTax(tax).Pair;
        Cost = Pair switch
        {
            MarkupPair.PriceAndProfit => T.Named("cost", price - profit),
            MarkupPair.PriceAndMargin => T.Named("cost", price * (1 - margin)),
            MarkupPair.PriceAndMarkup => T.Named("cost", price / (1 + markup)),
            MarkupPair.ProfitAndMarkup => T.Named("cost", profit / markup),
            MarkupPair.ProfitAndMargin => T.Named("cost", T.Named("price", profit / margin) - profit),
            _ => cost,
        };
        Price = Pair switch
        {
            MarkupPair.CostAndProfit or MarkupPair.ProfitAndMarkup => T.Named("price", Cost + profit),
            MarkupPair.CostAndMarkup => T.Named("price", cost * (1 + markup)),
            MarkupPair.CostAndMargin => T.Named("price", cost / (1 - margin)),
            MarkupPair.ProfitAndMargin => T.Named("price", profit / margin),
            _ => price,
        };
        Shares = new ShareFormulas<T>(Cost, Price, 0);
        (Profit, OnCost, OnPrice) = (
            Pair is MarkupPair.CostAndProfit or MarkupPair.PriceAndProfit or MarkupPair.ProfitAndMarkup or MarkupPair.ProfitAndMargin
                ? profit : Shares.Profit,
            Pair is MarkupPair.CostAndMarkup or MarkupPair.PriceAndMarkup or MarkupPair.ProfitAndMarkup ? markup : Shares.OnCost,
            Pair is MarkupPair.CostAndMargin or MarkupPair.PriceAndMargin or MarkupPair.ProfitAndMargin ? margin : Shares.OnPrice);
    }

    public MarkupPair Pair { get; }

    public T Cost { get; }

    public T Price { get; }

    public ShareFormulas<T> Shares { get; }

    /// <summary>As it was given, or as it follows.</summary>
    public T Profit { get; }

    public T OnCost { get; }

    public T OnPrice { get; }
}
