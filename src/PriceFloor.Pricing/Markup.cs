namespace PriceFloor.Pricing;

/// <summary>
/// One step from a cost to a price before tax: markup is the profit over the cost, margin the profit over the price. Unrounded.
/// 60.00 sold at 120.00: a profit of 60.00, a markup of 1 (100 %), a margin of 0.5.
/// </summary>
public sealed record Markup(decimal Cost, decimal Price)
{
    public decimal Profit => Price - Cost;

    /// <summary>Null where the cost is nothing. Computed at once, so that a share past exactness is refused with the step, not later.</summary>
    public decimal? OnCost { get; } = Cost == 0 ? null : (Price - Cost) / Cost;

    /// <summary>Null where the price is nothing.</summary>
    public decimal? OnPrice { get; } = Price == 0 ? null : (Price - Cost) / Price;

    /// <summary>
    /// Any two of the five give the rest. Markup with margin alone is <c>undetermined</c>; a further value must equal the computed one
    /// at the decimals that it was given with, else <c>contradictory</c>.
    /// </summary>
    public static Outcome<Markup> Of(MarkupValues given) => Outcome<Markup>.Guard(() =>
    {
        var found = Solve(given);
        return found.Found is { } markup && given.Contradicting(markup) is { } fault ? fault : found;
    });

    /// <summary>The price that a step makes of a cost.</summary>
    public static decimal Forward(ChainStep step, decimal cost) => step switch
    {
        { Markup: { } markup } => cost * (1 + markup),
        { Margin: { } margin } => cost / (1 - margin),
        _ => cost * (step.Multiple ?? 1),
    };

    /// <summary>The cost from which a step makes a price.</summary>
    public static decimal Backward(ChainStep step, decimal price) => step switch
    {
        { Markup: { } markup } => price / (1 + markup),
        { Margin: { } margin } => price * (1 - margin),
        _ => price / (step.Multiple ?? 1),
    };

    private static Outcome<Markup> Solve(MarkupValues given) => (given.Pair, given) switch
    {
        (MarkupPair.CostAndPrice, { Cost: { } cost, Price: { } price }) => new Markup(cost, price),
        (MarkupPair.CostAndProfit, { Cost: { } cost, Profit: { } profit }) => new Markup(cost, cost + profit),
        (MarkupPair.PriceAndProfit, { Price: { } price, Profit: { } profit }) => new Markup(price - profit, price),
        (MarkupPair.CostAndMarkup, { Cost: { } cost, Markup: { } markup }) => new Markup(cost, cost * (1 + markup)),
        (MarkupPair.CostAndMargin, { Cost: { } cost, Margin: { } margin }) => new Markup(cost, cost / (1 - margin)),
        (MarkupPair.PriceAndMargin, { Price: { } price, Margin: { } margin }) => new Markup(price * (1 - margin), price),
        (MarkupPair.PriceAndMarkup, { Price: { } price, Markup: { } markup }) => new Markup(price / (1 + markup), price),
        (MarkupPair.ProfitAndMarkup, { Profit: { } profit, Markup: { } markup }) => new Markup(profit / markup, profit / markup + profit),
        (MarkupPair.ProfitAndMargin, { Profit: { } profit, Margin: { } margin }) => new Markup(profit / margin - profit, profit / margin),
        _ => new Fault("", "undetermined", "These values fit more than one cost and price (markup and margin are two ways of saying the same); give a cost, a price or a profit with one of them."),
    };
}

/// <summary>Which two of the values decide a step.</summary>
public enum MarkupPair { None, CostAndPrice, CostAndProfit, PriceAndProfit, CostAndMarkup, CostAndMargin, PriceAndMargin, PriceAndMarkup, ProfitAndMarkup, ProfitAndMargin }

/// <summary>What is known of a step; the rest is null.</summary>
public sealed record MarkupValues(decimal? Cost, decimal? Price, decimal? Markup, decimal? Margin, decimal? Profit)
{
    public int Known => new[] { Cost, Price, Markup, Margin, Profit }.Count(value => value is not null);

    /// <summary>The first two, in the model's order, that fit just one cost and price; any further value is only compared.</summary>
    public MarkupPair Pair => this switch
    {
        { Cost: not null, Price: not null } => MarkupPair.CostAndPrice,
        { Cost: not null, Profit: not null } => MarkupPair.CostAndProfit,
        { Price: not null, Profit: not null } => MarkupPair.PriceAndProfit,
        { Cost: not null, Markup: not null } => MarkupPair.CostAndMarkup,
        { Cost: not null, Margin: < 1 } => MarkupPair.CostAndMargin,
        { Price: not null, Margin: not null } => MarkupPair.PriceAndMargin,
        { Price: not null, Markup: > -1 } => MarkupPair.PriceAndMarkup,
        { Profit: not null, Markup: not null and not 0 } => MarkupPair.ProfitAndMarkup,
        { Profit: not null, Margin: not null and not 0 } => MarkupPair.ProfitAndMargin,
        _ => MarkupPair.None,
    };

    /// <summary>The same with a price that holds tax taken back to its price before tax: 120.00 with 20 % included is 100.00.</summary>
    public MarkupValues BeforeTax(SalesTax? tax) => tax is { Included: true } && Price is { } price ? this with { Price = price / (1 + tax.Rate) } : this;

    internal Fault? Contradicting(Markup markup)
    {
        foreach (var (name, given, computed) in new[] { ("cost", Cost, markup.Cost), ("price", Price, markup.Price), ("profit", Profit, markup.Profit), ("markup", Markup, markup.OnCost), ("margin", Margin, markup.OnPrice) })
            if (given is { } said && (computed is not { } value || Rounding.Nearest(value, int.Min(said.Scale, 12)) != Rounding.Settle(said)))
                return new Fault("/" + name, "contradictory", $"{name} does not fit the other values: they make it {(computed is { } other ? Rounding.Trim(Rounding.Nearest(other, 6)) : "undefined")}; leave one of them out.");
        return null;
    }
}

/// <summary>A price before tax and what the buyer pays: 100.00 and 120.00 at 20 %.</summary>
public sealed record TaxedPrice(decimal BeforeTax, decimal WithTax)
{
    public static Outcome<TaxedPrice> Of(decimal beforeTax, SalesTax tax) => Outcome<TaxedPrice>.Guard(() => new TaxedPrice(beforeTax, beforeTax * (1 + tax.Rate)));
}

/// <summary>One hand on the way from maker to buyer: exactly one of markup, margin and multiple.</summary>
public sealed record ChainStep
{
    /// <summary>A name for people.</summary>
    /// <example>shop</example>
    [System.ComponentModel.DataAnnotations.MaxLength(Limits.NameLength)]
    public string? Name { get; init; }

    /// <summary>Profit over cost: 1 doubles the price.</summary>
    /// <example>1</example>
    [Share(Most = "1000000")]
    public decimal? Markup { get; init; }

    /// <summary>Profit over price; below 1.</summary>
    /// <example>0.5</example>
    [Share(Most = "0.9999")]
    public decimal? Margin { get; init; }

    /// <summary>The price is so many times the cost; above 0.</summary>
    /// <example>2</example>
    [Quantity(Above = true)]
    public decimal? Multiple { get; init; }
}

/// <summary>The way from a first cost to a last price through several hands, or back.</summary>
public static class MarkupChain
{
    /// <summary>All hands as one step: from what the first pays to what the last asks.</summary>
    public static Outcome<Markup> Whole(IReadOnlyList<Markup> hands) => Outcome<Markup>.Guard(() => new Markup(hands[0].Cost, hands[^1].Price));

    /// <summary>50.00 through a shop that doubles and a dealer with a margin of 0.2: 100.00, then 125.00.</summary>
    public static Outcome<List<Markup>> From(decimal cost, IEnumerable<ChainStep> steps) => Outcome<List<Markup>>.Guard(() =>
    {
        var chain = new List<Markup>();
        foreach (var step in steps)
            chain.Add(new Markup(chain.Count == 0 ? cost : chain[^1].Price, Markup.Forward(step, chain.Count == 0 ? cost : chain[^1].Price)));
        return chain;
    });

    /// <summary>What the first price must be for the last to be this one: 120.00 in a shop with a margin of 0.5 is 60.00.</summary>
    public static Outcome<List<Markup>> BackFrom(decimal price, IEnumerable<ChainStep> steps) => Outcome<List<Markup>>.Guard(() =>
    {
        var chain = new List<Markup>();
        foreach (var step in steps.Reverse())
        {
            var paid = chain.Count == 0 ? price : chain[0].Cost;
            chain.Insert(0, new Markup(Markup.Backward(step, paid), paid));
        }

        return chain;
    });
}
