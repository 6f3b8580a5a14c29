using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

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
        _ => new Fault("", FaultCodes.Undetermined, "These values fit more than one cost and price (markup and margin are two ways of saying the same); give a cost, a price or a profit with one of them."),
    };
}
