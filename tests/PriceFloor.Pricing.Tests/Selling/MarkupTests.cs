using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

public sealed class MarkupTests
{
    [Property(MaxTest = 300, EndSize = 1_000_000)]
    public void Every_pair_leads_back_to_the_same_cost_and_price(PositiveInt costCents, PositiveInt profitCents)
    {
        var whole = new Markup(costCents.Get / 100m, (costCents.Get + profitCents.Get) / 100m);
        foreach (var values in new MarkupValues[]
        {
            new(whole.Cost, null, whole.OnCost, null, null), new(whole.Cost, null, null, whole.OnPrice, null), new(whole.Cost, null,
                null, null, whole.Profit),
            new(null, whole.Price, whole.OnCost, null, null), new(null, whole.Price, null, whole.OnPrice, null), new(null, whole.Price,
                null, null, whole.Profit),
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
        Assert.Equal(!fits,
            Markup.Of(new MarkupValues(3, 4, given, null, null)).Faults.Any(fault => fault is { Code.Word: "contradictory", Pointer: "/markup" }));
    }

    [Fact]
    public void What_is_told_to_more_than_twelve_decimals_is_held_to_twelve()
    {
        Assert.Empty(Markup.Of(new MarkupValues(3, 4, 0.33333333333333m, null, null)).Faults);
        Assert.Equal("/markup", PointerOf(new MarkupValues(3, 4, 0.33333333333500m, null, null)));
    }

    [Fact]
    public void Each_value_that_does_not_fit_is_pointed_at()
    {
        // 60.00 sold at 100.00: a profit of 40.00, a markup of two thirds, a margin of 0.4.
        Assert.Equal("/profit", PointerOf(new MarkupValues(60, 100, null, null, 41)));
        Assert.Equal("/markup", PointerOf(new MarkupValues(60, 100, 0.6m, 0.4m, 40)));
        Assert.Equal("/margin", PointerOf(new MarkupValues(60, 100, 0.7m, 0.5m, 40)));
        Assert.Equal("/markup", PointerOf(new MarkupValues(0, 10, 1, null, null))); // no markup leads from nothing to 10.00
        Assert.Empty(Markup.Of(new MarkupValues(60, 100, 0.67m, 0.4m, 40)).Faults);
    }

    [Fact]
    public void Values_that_fit_more_than_one_step_are_undetermined()
    {
        MarkupValues[] open =
        [
            new(null, null, 1, 0.5m, null), // the same said twice
            new(60, null, null, 1, null), // no price is all profit on a cost of 60.00
            new(null, 100, -1, null, null), // sold for nothing at any cost
            new(null, null, 0, null, 40), // no profit over cost, and a profit
            new(null, null, null, 0, 40),
            new(60, null, null, null, null),
        ];
        Assert.All(open, values => Assert.Equal("undetermined", Assert.Single(Markup.Of(values).Faults).Code));
        Assert.Equal([2, 2, 2, 2, 2, 1], open.Select(values => values.Known));
        Assert.Equal(60m / 0.01m, Markup.Of(new MarkupValues(60, null, null, 0.99m, null)).Value.Price);
        Assert.Equal(10_000m, Markup.Of(new MarkupValues(null, 100, -0.99m, null, null)).Value.Cost); // 100 / 0.01
    }

    [Fact]
    public void A_share_of_nothing_is_none()
    {
        Assert.Equal((null, 1m), (new Markup(0, 10).OnCost, new Markup(0, 10).OnPrice));
        Assert.Equal((-1m, null), (new Markup(10, 0).OnCost, new Markup(10, 0).OnPrice));
    }

    [Fact]
    public void Tax_in_the_price_is_taken_out_first_and_tax_on_top_is_not()
    {
        // 120.00 with 20 % in it is 100.00; where 20 % come on top it is 120.00, and a buyer pays 144.00.
        var asked = new MarkupValues(60, 120, null, null, null);
        Assert.Equal(100m, asked.BeforeTax(new SalesTax { Rate = 0.2m, Included = true }).Price);
        Assert.Equal(120m, asked.BeforeTax(new SalesTax { Rate = 0.2m }).Price);
        Assert.Equal(120m, asked.BeforeTax(null).Price);
        Assert.Null((asked with { Price = null }).BeforeTax(new SalesTax { Rate = 0.2m, Included = true }).Price);
        Assert.Equal((120m, 144m),
            (TaxedPrice.Of(120, new SalesTax { Rate = 0.2m }).Value.BeforeTax, TaxedPrice.Of(120, new SalesTax { Rate = 0.2m }).Value.WithTax));
    }

    [Fact]
    public void Each_hand_of_a_chain_pays_what_the_one_before_asks()
    {
        // 50.00 doubled is 100.00; with a margin of 0.2 it sells at 125.00; that 1.2 times is 150.00. And so back.
        ChainStep[] steps = [new() { Markup = 1 }, new() { Margin = 0.2m }, new() { Multiple = 1.2m }];
        Markup[] hands = [new(50, 100), new(100, 125), new(125, 150)];
        Assert.Equal(hands, MarkupChain.From(50, steps).Value);
        Assert.Equal(hands, MarkupChain.BackFrom(150, steps).Value);
        Assert.Equal(new Markup(50, 150), MarkupChain.AsOneStep(hands).Value);
    }

    [Fact]
    public void Discounts_that_leave_next_to_nothing_have_no_list_price()
    {
        // 99.99 % three times leave 10^-12, from which 1.00 leads back to 10^12; four times leave 10^-16.
        Assert.Equal(1_000_000_000_000m, new DiscountSeries([0.9999m, 0.9999m, 0.9999m]).FromNet(1).Value.List);
        var fault = Assert.Single(new DiscountSeries([0.9999m, 0.9999m, 0.9999m, 0.9999m]).FromNet(1).Faults);
        Assert.Equal(("/discounts/rates", "too-large"), (fault.Pointer, fault.Code));
    }

    private static string PointerOf(MarkupValues values) =>
        Assert.Single(Markup.Of(values).Faults, fault => fault.Code.Word == "contradictory").Pointer;
}
