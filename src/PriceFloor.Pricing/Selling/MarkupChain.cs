using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

/// <summary>The way from a first cost to a last price through several hands, or back.</summary>
public static class MarkupChain
{
    /// <summary>All hands as one step: from what the first pays to what the last asks.</summary>
    public static Outcome<Markup> AsOneStep(IReadOnlyList<Markup> hands) => Outcome<Markup>.Guard(() => new Markup(hands[0].Cost, hands[^1].Price));

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
