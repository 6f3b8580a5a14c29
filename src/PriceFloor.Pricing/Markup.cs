namespace PriceFloor.Pricing;

/// <summary>
/// One step from a cost to a price before tax: markup is the profit over the cost, margin the profit over the price. Unrounded.
/// 60.00 sold at 120.00: a profit of 60.00, a markup of 1 (100 %), a margin of 0.5.
/// </summary>
public sealed record Markup(decimal Cost, decimal Price)
{
    public decimal Profit => Price - Cost;

    /// <summary>Null where the cost is nothing.</summary>
    public decimal? OnCost => Cost == 0 ? null : Profit / Cost;

    /// <summary>Null where the price is nothing.</summary>
    public decimal? OnPrice => Price == 0 ? null : Profit / Price;

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

    private static Outcome<Markup> Solve(MarkupValues given) => given switch
    {
        { Cost: { } cost, Price: { } price } => new Markup(cost, price),
        { Cost: { } cost, Profit: { } profit } => new Markup(cost, cost + profit),
        { Price: { } price, Profit: { } profit } => new Markup(price - profit, price),
        { Cost: { } cost, Markup: { } markup } => new Markup(cost, cost * (1 + markup)),
        { Cost: { } cost, Margin: { } margin } when margin < 1 => new Markup(cost, cost / (1 - margin)),
        { Price: { } price, Margin: { } margin } => new Markup(price * (1 - margin), price),
        { Price: { } price, Markup: { } markup } when markup > -1 => new Markup(price / (1 + markup), price),
        { Profit: { } profit, Markup: { } markup } when markup != 0 => new Markup(profit / markup, profit / markup + profit),
        { Profit: { } profit, Margin: { } margin } when margin != 0 => new Markup(profit / margin - profit, profit / margin),
        _ => new Fault("", "undetermined", "These values fit more than one cost and price (markup and margin are two ways of saying the same); give a cost, a price or a profit with one of them."),
    };
}

/// <summary>What is known of a step; the rest is null.</summary>
public sealed record MarkupValues(decimal? Cost, decimal? Price, decimal? Markup, decimal? Margin, decimal? Profit)
{
    public int Known => new[] { Cost, Price, Markup, Margin, Profit }.Count(value => value is not null);

    internal Fault? Contradicting(Markup markup)
    {
        foreach (var (name, given, computed) in new[] { ("cost", Cost, markup.Cost), ("price", Price, markup.Price), ("profit", Profit, markup.Profit), ("markup", Markup, markup.OnCost), ("margin", Margin, markup.OnPrice) })
            if (given is { } said && (computed is not { } value || Rounding.Nearest(value, int.Min(said.Scale, 12)) != Rounding.Settle(said)))
                return new Fault("/" + name, "contradictory", $"{name} does not fit the other values: they make it {(computed is { } other ? Rounding.Trim(Rounding.Nearest(other, 6)) : "undefined")}; leave one of them out.");
        return null;
    }
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

/// <summary>A series of trade discounts, one on what the other leaves. 140 less 20 % less 15 % is 95.20, as one discount 32 %.</summary>
public sealed class DiscountSeries(IReadOnlyList<decimal> rates)
{
    /// <summary>What is left of 1.</summary>
    public decimal Factor { get; } = rates.Aggregate(1m, (left, rate) => left * (1 - rate));

    /// <summary>The one discount that comes to the same.</summary>
    public decimal Single => 1 - Factor;

    /// <summary>The list price from which these discounts make a net price. Refused with <c>too-large</c> where they leave next to nothing.</summary>
    public Outcome<Markup> FromNet(decimal net) => Factor < 0.000000000001m
        ? new Fault("/discounts/rates", "too-large", "These discounts leave next to nothing of a price, so no exact list price can be named; check the rates (0.2 is 20 %).")
        : new Markup(net, net / Factor);
}
