using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests;

public sealed class MarkupTests
{
    [Property(MaxTest = 300, EndSize = 1_000_000)]
    public void Every_pair_leads_back_to_the_same_cost_and_price(PositiveInt costCents, PositiveInt profitCents)
    {
        var whole = new Markup(costCents.Get / 100m, (costCents.Get + profitCents.Get) / 100m);
        foreach (var values in new MarkupValues[]
        {
            new(whole.Cost, null, whole.OnCost, null, null), new(whole.Cost, null, null, whole.OnPrice, null), new(whole.Cost, null, null, null, whole.Profit),
            new(null, whole.Price, whole.OnCost, null, null), new(null, whole.Price, null, whole.OnPrice, null), new(null, whole.Price, null, null, whole.Profit),
            new(null, null, whole.OnCost, null, whole.Profit), new(null, null, null, whole.OnPrice, whole.Profit),
        })
        {
            var found = Markup.Of(values).Value;
            Near.Equal(whole.Cost, found.Cost, 0.000001m);
            Near.Equal(whole.Price, found.Price, 0.000001m);
        }
    }

    [Property(MaxTest = 300, EndSize = 1_000_000)]
    public void A_chain_there_and_back_is_where_it_began(PositiveInt cents)
    {
        ChainStep[] steps = [new() { Markup = 0.37m }, new() { Margin = 0.41m }, new() { Multiple = 2.2m }];
        var cost = cents.Get / 100m;
        var forth = MarkupChain.From(cost, steps).Value;
        Near.Equal(cost, MarkupChain.BackFrom(forth[^1].Price, steps).Value[0].Cost);
    }

    [Theory]
    [InlineData("0.33", true)] // a third, at two decimals
    [InlineData("0.3333", true)]
    [InlineData("0.34", false)]
    [InlineData("0.330", false)] // said to three decimals, it is 0.333
    public void A_further_value_must_fit_at_the_decimals_it_was_given_with(string markup, bool fits)
    {
        var given = decimal.Parse(markup, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(!fits, Markup.Of(new MarkupValues(3, 4, given, null, null)).Faults.Any(fault => fault is { Code: "contradictory", Pointer: "/markup" }));
    }
}
