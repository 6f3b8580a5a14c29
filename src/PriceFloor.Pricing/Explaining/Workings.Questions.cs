using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    /// <param name="asked">What was given, a price with its tax if that is included.</param>
    /// <param name="tax">The tax that the price holds, or that comes on top.</param>
    public static IEnumerable<Working> Of(MarkupValues asked, SalesTax? tax)
    {
        var formulas = new MarkupFormulas<WrittenFigure>(asked, tax);
        foreach (var symbol in Order(formulas.Pair))
            if (LineOf(symbol, formulas) is { } line)
                yield return line;
        foreach (var line in WithTax(formulas.Price, tax))
            yield return line;
    }

    /// <param name="asked">The first cost or the last price, a price with its tax if that is included.</param>
    /// <param name="tax">The tax that the price holds, or that comes on top.</param>
    /// <param name="steps">What each hand does.</param>
    public static IEnumerable<Working> Of(MarkupValues asked, SalesTax? tax, IReadOnlyList<ChainStep> steps)
    {
        var (lines, cost, price, prices) = asked.Cost is { } first ? Forward(first, steps) : Backward(asked, tax, steps);
        foreach (var line in lines)
            yield return line;
        for (var i = 0; i < steps.Count; i++)
        {
            var shares = new ShareFormulas<WrittenFigure>(i == 0 ? cost : prices[i - 1], prices[i], i + 1);
            foreach (var line in OfShares(shares, $" of hand {i + 1}{Named(steps[i].Name)}"))
                yield return line;
        }

        if (asked.Cost is not null)
            yield return Line(price, "what the last hand asks, before tax");
        foreach (var line in OfShares(new ShareFormulas<WrittenFigure>(cost, price, 0), " of the whole way").Concat(WithTax(price, tax)))
            yield return line;
    }

    public static IEnumerable<Working> Of(DiscountSeries series, Discounted found, bool fromNet)
    {
        var formulas = new DiscountFormulas<WrittenFigure>(series.Rates);
        yield return Line(formulas.Factor, "what the discounts leave of 1");
        yield return Line(formulas.Single, "the one discount that comes to the same");
        var given = fromNet ? WrittenFigure.Named("net", found.Net) : WrittenFigure.Named("list", found.List);
        var list = fromNet ? WrittenFigure.Named("list", formulas.ListOf(given)) : given;
        var net = fromNet ? given : WrittenFigure.Named("net", formulas.NetOf(given));
        yield return fromNet ? Line(net, "what is paid") : Line(list, "the list price");
        yield return fromNet ? Line(list, "the list price") : Line(net, "what is paid");
        yield return Line(WrittenFigure.Named("discount", DiscountFormulas<WrittenFigure>.Discount(list, net)), "list less net");
    }

    /// <summary>The two that were given, then what follows from them.</summary>
    private static string[] Order(MarkupPair pair) => pair switch
    {
        MarkupPair.CostAndProfit => ["cost", "profit", "price", "markup", "margin"],
        MarkupPair.PriceAndProfit => ["price", "profit", "cost", "markup", "margin"],
        MarkupPair.CostAndMarkup => ["cost", "markup", "price", "profit", "margin"],
        MarkupPair.CostAndMargin => ["cost", "margin", "price", "profit", "markup"],
        MarkupPair.PriceAndMargin => ["price", "margin", "cost", "profit", "markup"],
        MarkupPair.PriceAndMarkup => ["price", "markup", "cost", "profit", "margin"],
        MarkupPair.ProfitAndMarkup => ["profit", "markup", "cost", "price", "margin"],
        MarkupPair.ProfitAndMargin => ["profit", "margin", "price", "cost", "markup"],
        _ => ["cost", "price", "profit", "markup", "margin"],
    };

    /// <summary>One of the five, as it was given or as it follows; null for a share of nothing.</summary>
    private static Working? LineOf(string symbol, MarkupFormulas<WrittenFigure> formulas) => symbol switch
    {
        "cost" => Line(formulas.Cost, "what is paid for it"),
        "price" => Line(formulas.Price, "what it sells for, before tax"),
        "profit" => Line(formulas.Profit, "price less cost"),
        "markup" => formulas.Shares.HasOnCost ? Line(formulas.OnCost, "profit over cost") : null,
        _ => formulas.Shares.HasOnPrice ? Line(formulas.OnPrice, "profit over price") : null,
    };

    private static Chain Forward(decimal given, IReadOnlyList<ChainStep> steps)
    {
        var cost = WrittenFigure.Named("cost", given);
        List<Working> lines = [Line(cost, "what the first hand pays")];
        var prices = new WrittenFigure[steps.Count];
        foreach (var (i, step) in steps.Index())
        {
            prices[i] = WrittenFigure.Named("price", i + 1, ChainFormulas<WrittenFigure>.Forward(step, i == 0 ? cost : prices[i - 1]));
            lines.Add(Line(prices[i], $"what hand {i + 1}{Named(step.Name)} asks, before tax"));
        }

        return new(lines, cost, WrittenFigure.Named("price", prices[^1]), prices);
    }

    private static Chain Backward(MarkupValues asked, SalesTax? tax, IReadOnlyList<ChainStep> steps)
    {
        var price = WrittenFigure.Named("price", SalesTaxFormulas<WrittenFigure>.BeforeTax(asked.Price ?? 0, tax));
        var prices = new WrittenFigure[steps.Count];
        prices[^1] = WrittenFigure.Named("price", steps.Count, price);
        var ofTheLast = Line(prices[^1], $"the same, of hand {steps.Count}{Named(steps[^1].Name)}");
        List<Working> lines = [Line(price, "what the last hand asks, before tax"), ofTheLast];
        for (var i = steps.Count - 1; i > 0; i--)
        {
            prices[i - 1] = WrittenFigure.Named("price", i, ChainFormulas<WrittenFigure>.Backward(steps[i], prices[i]));
            lines.Add(Line(prices[i - 1], $"what hand {i}{Named(steps[i - 1].Name)} asks, which hand {i + 1} pays"));
        }

        var cost = WrittenFigure.Named("cost", ChainFormulas<WrittenFigure>.Backward(steps[0], prices[0]));
        return new([.. lines, Line(cost, "what the first hand pays")], cost, price, prices);
    }

    /// <param name="Lines">From what was given to the other end.</param>
    /// <param name="Cost">What the first hand pays.</param>
    /// <param name="Price">What the last hand asks.</param>
    /// <param name="Prices">What each hand asks.</param>
    private sealed record Chain(List<Working> Lines, WrittenFigure Cost, WrittenFigure Price, WrittenFigure[] Prices);

    private static IEnumerable<Working> OfShares(ShareFormulas<WrittenFigure> shares, string whose)
    {
        yield return Line(shares.Profit, "profit" + whose);
        if (shares.HasOnCost)
            yield return Line(shares.OnCost, "profit over cost" + whose);
        if (shares.HasOnPrice)
            yield return Line(shares.OnPrice, "profit over price" + whose);
    }

    private static IEnumerable<Working> WithTax(WrittenFigure price, SalesTax? tax)
    {
        if (tax is not null && TaxedPrice.Of(price.Value, tax).Found is not null)
            yield return Line(
                WrittenFigure.Named("priceWithTax", SalesTaxFormulas<WrittenFigure>.WithTax(price, tax)), "what the buyer pays, tax included");
    }
}
