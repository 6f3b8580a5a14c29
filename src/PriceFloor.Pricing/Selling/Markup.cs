using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>
/// One step from a cost to a price before tax: markup is the profit over the cost, margin the profit over the price. Unrounded.
/// 60.00 sold at 120.00: a profit of 60.00, a markup of 1 (100 %), a margin of 0.5.
/// </summary>
public sealed record Markup(decimal Cost, decimal Price)
{
    private readonly ShareFormulas<Figure> _shares = new(Cost, Price, 0);

    public decimal Profit => _shares.Profit.Value;

    /// <summary>Null if the cost is nothing. Computed at once, so that a share past exactness is refused with the step, not later.</summary>
    public decimal? OnCost => _shares.HasOnCost ? _shares.OnCost.Value : null;

    /// <summary>Null if the price is nothing.</summary>
    public decimal? OnPrice => _shares.HasOnPrice ? _shares.OnPrice.Value : null;

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
    public static decimal Forward(ChainStep step, decimal cost) => ChainFormulas<Figure>.Forward(step, cost).Value;

    /// <summary>The cost from which a step makes a price.</summary>
    public static decimal Backward(ChainStep step, decimal price) => ChainFormulas<Figure>.Backward(step, price).Value;

    private static Outcome<Markup> Solve(MarkupValues given)
    {
        if (given.Pair == MarkupPair.None)
            return new Fault("", FaultCodes.Undetermined, "These values fit more than one cost and price (markup and margin are two ways of saying "
                + "the same); give a cost, a price or a profit with one of them.");
        var formulas = new MarkupFormulas<Figure>(given, null);
        return new Markup(formulas.Cost.Value, formulas.Price.Value);
    }
}
