using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Selling;

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
    public MarkupValues BeforeTax(SalesTax? tax) =>
        tax is { Included: true } && Price is { } price ? this with { Price = SalesTaxFormulas<Figure>.BeforeTax(price, tax).Value } : this;

    internal Fault? Contradicting(Markup markup)
    {
        foreach (var (name, given, computed) in new[]
        {
            ("cost", Cost, markup.Cost),
            ("price", Price, markup.Price),
            ("profit", Profit, markup.Profit),
            ("markup", Markup, markup.OnCost),
            ("margin", Margin, markup.OnPrice),
        })
            if (given is { } said && (computed is not { } value || Rounding.Nearest(value, int.Min(said.Scale, 12)) != Rounding.Settle(said)))
                return new Fault("/" + name, FaultCodes.Contradictory, $"{name} does not fit the other values: "
                    + $"they make it {(computed is { } other ? Rounding.Trim(Rounding.Nearest(other, 6)) : "undefined")}; leave one of them out.");
        return null;
    }
}
