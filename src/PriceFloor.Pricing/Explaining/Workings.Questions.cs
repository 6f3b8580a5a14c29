using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Selling;

namespace PriceFloor.Pricing.Explaining;

public static partial class Workings
{
    /// <param name="asked">What was given, a price with its tax where that is included.</param>
    /// <param name="tax">The tax that the price holds, or that comes on top.</param>
    /// <param name="step">What came out.</param>
    public static IEnumerable<Working> Of(MarkupValues asked, SalesTax? tax, Markup step)
    {
        var given = asked.BeforeTax(tax);
        foreach (var symbol in Order(given.Pair))
            if (LineOf(symbol, given, asked.Price, tax, step) is { } line)
                yield return line;
        foreach (var line in WithTax(step.Price, tax))
            yield return line;
    }

    /// <param name="asked">The first cost or the last price, a price with its tax where that is included.</param>
    /// <param name="tax">The tax that the price holds, or that comes on top.</param>
    /// <param name="steps">What each hand does.</param>
    /// <param name="hands">What came out for each hand.</param>
    /// <param name="whole">All hands as one step.</param>
    public static IEnumerable<Working> Of(MarkupValues asked, SalesTax? tax, IReadOnlyList<ChainStep> steps, IReadOnlyList<Markup> hands, Markup whole)
    {
        foreach (var line in asked.Cost is not null ? Forward(steps, hands) : Backward(PriceFormula(asked.Price ?? 0, tax), steps, hands))
            yield return line;
        foreach (var (i, hand) in hands.Index())
            foreach (var line in Shares(hand, i == 0 ? "cost" : $"price{i}", $"price{i + 1}", $"{i + 1}", $" of hand {i + 1}{Named(steps[i].Name)}"))
                yield return line;
        if (asked.Cost is not null)
            yield return new("price", "what the last hand asks, before tax", $"price{hands.Count}", whole.Price);
        foreach (var line in Shares(whole, "cost", "price", "", " of the whole way"))
            yield return line;
        foreach (var line in WithTax(whole.Price, tax))
            yield return line;
    }

    public static IEnumerable<Working> Of(DiscountSeries series, Discounted found, bool fromNet)
    {
        yield return new("factor", "what the discounts leave of 1", string.Join(" * ", series.Rates.Select(rate => $"(1 - {Number(rate)})").DefaultIfEmpty("1")), series.Factor);
        yield return new("single", "the one discount that comes to the same", "1 - factor", series.Single);
        var (list, net) = (new Working("list", "the list price", fromNet ? "net / factor" : Number(found.List), found.List), new Working("net", "what is paid", fromNet ? Number(found.Net) : "list * factor", found.Net));
        yield return fromNet ? net : list;
        yield return fromNet ? list : net;
        yield return new("discount", "list less net", "list - net", found.Discount);
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
    private static Working? LineOf(string symbol, MarkupValues given, decimal? askedPrice, SalesTax? tax, Markup step) => (symbol, given.Pair) switch
    {
        ("cost", MarkupPair.PriceAndProfit or MarkupPair.ProfitAndMargin) => new(symbol, "what is paid for it", "price - profit", step.Cost),
        ("cost", MarkupPair.PriceAndMargin) => new(symbol, "what is paid for it", "price * (1 - margin)", step.Cost),
        ("cost", MarkupPair.PriceAndMarkup) => new(symbol, "what is paid for it", "price / (1 + markup)", step.Cost),
        ("cost", MarkupPair.ProfitAndMarkup) => new(symbol, "what is paid for it", "profit / markup", step.Cost),
        ("cost", _) => new(symbol, "what is paid for it", Number(step.Cost), step.Cost),
        ("price", MarkupPair.CostAndProfit or MarkupPair.ProfitAndMarkup) => new(symbol, "what it sells for, before tax", "cost + profit", step.Price),
        ("price", MarkupPair.CostAndMarkup) => new(symbol, "what it sells for, before tax", "cost * (1 + markup)", step.Price),
        ("price", MarkupPair.CostAndMargin) => new(symbol, "what it sells for, before tax", "cost / (1 - margin)", step.Price),
        ("price", MarkupPair.ProfitAndMargin) => new(symbol, "what it sells for, before tax", "profit / margin", step.Price),
        ("price", _) => new(symbol, "what it sells for, before tax", PriceFormula(askedPrice ?? step.Price, tax), step.Price),
        ("profit", MarkupPair.CostAndProfit or MarkupPair.PriceAndProfit or MarkupPair.ProfitAndMarkup or MarkupPair.ProfitAndMargin) => new(symbol, "price less cost", Number(given.Profit!.Value), given.Profit.Value),
        ("profit", _) => new(symbol, "price less cost", "price - cost", step.Profit),
        ("markup", MarkupPair.CostAndMarkup or MarkupPair.PriceAndMarkup or MarkupPair.ProfitAndMarkup) => new(symbol, "profit over cost", Number(given.Markup!.Value), given.Markup.Value),
        ("markup", _) => step.OnCost is { } onCost ? new(symbol, "profit over cost", "profit / cost", onCost) : null,
        (_, MarkupPair.CostAndMargin or MarkupPair.PriceAndMargin or MarkupPair.ProfitAndMargin) => new(symbol, "profit over price", Number(given.Margin!.Value), given.Margin.Value),
        _ => step.OnPrice is { } onPrice ? new(symbol, "profit over price", "profit / price", onPrice) : null,
    };

    private static IEnumerable<Working> Forward(IReadOnlyList<ChainStep> steps, IReadOnlyList<Markup> hands)
    {
        yield return new("cost", "what the first hand pays", Number(hands[0].Cost), hands[0].Cost);
        foreach (var (i, hand) in hands.Index())
            yield return new($"price{i + 1}", $"what hand {i + 1}{Named(steps[i].Name)} asks, before tax", (i == 0 ? "cost" : $"price{i}") + steps[i] switch
            {
                { Markup: { } markup } => $" * (1 + {Number(markup)})",
                { Margin: { } margin } => $" / (1 - {Number(margin)})",
                var step => $" * {Number(step.Multiple ?? 1)}",
            }, hand.Price);
    }

    private static IEnumerable<Working> Backward(string lastPrice, IReadOnlyList<ChainStep> steps, IReadOnlyList<Markup> hands)
    {
        yield return new("price", "what the last hand asks, before tax", lastPrice, hands[^1].Price);
        yield return new($"price{hands.Count}", $"the same, of hand {hands.Count}{Named(steps[^1].Name)}", "price", hands[^1].Price);
        foreach (var (i, hand) in hands.Index().Reverse())
            yield return new(i == 0 ? "cost" : $"price{i}", i == 0 ? "what the first hand pays" : $"what hand {i}{Named(steps[i - 1].Name)} asks, which hand {i + 1} pays", $"price{i + 1}" + steps[i] switch
            {
                { Markup: { } markup } => $" / (1 + {Number(markup)})",
                { Margin: { } margin } => $" * (1 - {Number(margin)})",
                var step => $" / {Number(step.Multiple ?? 1)}",
            }, hand.Cost);
    }

    private static IEnumerable<Working> Shares(Markup step, string cost, string price, string number, string whose)
    {
        yield return new("profit" + number, "profit" + whose, $"{price} - {cost}", step.Profit);
        if (step.OnCost is { } onCost)
            yield return new("markup" + number, "profit over cost" + whose, $"profit{number} / {cost}", onCost);
        if (step.OnPrice is { } onPrice)
            yield return new("margin" + number, "profit over price" + whose, $"profit{number} / {price}", onPrice);
    }

    private static string PriceFormula(decimal asked, SalesTax? tax) => tax is { Included: true } ? $"{Number(asked)} / (1 + {Number(tax.Rate)})" : Number(asked);

    private static IEnumerable<Working> WithTax(decimal price, SalesTax? tax)
    {
        if (tax is not null && TaxedPrice.Of(price, tax).Found is { } taxed)
            yield return new("priceWithTax", "what the buyer pays, tax included", $"price * (1 + {Number(tax.Rate)})", taxed.WithTax);
    }
}
