using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Explaining;

public sealed class MarkupWorkingsTests
{
    private static readonly SalesTax s_included = new() { Rate = 0.2m, Included = true };

    [Property(MaxTest = 200, EndSize = 1_000_000)]
    public void Every_pair_can_be_redone_with_and_without_tax(PositiveInt costCents, int profitCents, PositiveInt rate)
    {
        var whole = new Markup(costCents.Get / 100m, decimal.Max(0.01m, (costCents.Get + profitCents) / 100m));
        foreach (var tax in new[]
        {
            null,
            new SalesTax { Rate = rate.Get % 30 / 100m },
            new SalesTax { Rate = rate.Get % 30 / 100m, Included = true },
        })
            for (var given = 1; given < 32; given++)
            {
                var values = new MarkupValues(Given(1, whole.Cost), Given(2, whole.Price), Given(4, whole.OnCost), Given(8, whole.OnPrice),
                    Given(16, whole.Profit));
                var asked = tax is { Included: true } && values.Price is { } price
                    ? values with { Price = decimal.Round(price * (1 + tax.Rate), 6) }
                    : values;
                if (Markup.Of(asked.BeforeTax(tax)).Found is not { } found)
                    continue;
                var redone = Redone.From(Workings.Of(asked, tax));
                Near.Equal(found.Cost, redone["cost"]);
                Near.Equal(found.Price, redone["price"]);
                Near.Equal(found.OnPrice!.Value, redone["margin"]);
                Assert.Equal(tax is not null, redone.ContainsKey("priceWithTax"));

                decimal? Given(int bit, decimal? value) => (given & bit) == 0 ? null : value;
            }
    }

    [Property(MaxTest = 200, EndSize = 1_000_000)]
    public void A_chain_can_be_redone_forward_and_back(PositiveInt cents, PositiveInt kinds)
    {
        var steps = Enumerable.Range(0, 1 + kinds.Get % 6).Select(i => ((kinds.Get >> i) % 3) switch
        {
            0 => new ChainStep { Name = "dealer", Markup = (1 + kinds.Get % 300) / 100m },
            1 => new ChainStep { Margin = (1 + kinds.Get % 90) / 100m },
            _ => new ChainStep { Name = "shop", Multiple = (100 + kinds.Get % 300) / 100m },
        }).ToList();
        foreach (var asked in new[]
        {
            new MarkupValues(cents.Get / 100m, null, null, null, null),
            new MarkupValues(null, cents.Get / 100m, null, null, null),
        })
        {
            var hands = asked.Cost is { } cost
                ? MarkupChain.From(cost, steps).Value
                : MarkupChain.BackFrom(asked.BeforeTax(s_included).Price!.Value, steps).Value;
            var redone = Redone.From(Workings.Of(asked, s_included, steps));
            Assert.Equal((hands[0].Cost, hands[^1].Price, hands[^1].Price * 1.2m), (redone["cost"], redone["price"], redone["priceWithTax"]));
            for (var i = 1; i <= hands.Count; i++)
                Assert.Equal((hands[i - 1].Price, hands[i - 1].Profit, hands[i - 1].OnPrice),
                    (redone[$"price{i}"], redone[$"profit{i}"], redone[$"margin{i}"]));
        }
    }

    [Property(MaxTest = 200, EndSize = 1_000_000)]
    public void Discounts_can_be_redone_from_either_end(PositiveInt cents, PositiveInt seed)
    {
        var series = new DiscountSeries([.. Enumerable.Range(0, seed.Get % 5).Select(i => (seed.Get >> i) % 90 / 100m)]);
        var fromList = Redone.From(Workings.Of(series, series.FromList(cents.Get / 100m), fromNet: false));
        var fromNet = Redone.From(Workings.Of(series, series.FromNet(cents.Get / 100m).Value, fromNet: true));
        Assert.Equal((series.Factor, series.Single), (fromList["factor"], fromNet["single"]));
        Near.Equal(cents.Get / 100m, fromNet["list"] - fromNet["discount"]);
    }

    [Fact]
    public void What_was_given_comes_first_and_the_rest_follows()
    {
        // 120.00 holds 20 % tax: 100.00; a margin of 0.4 leaves a cost of 60.00, a profit of 40.00, a markup of two thirds.
        var asked = new MarkupValues(null, 120, null, 0.4m, null);
        var lines = Workings.Of(asked, s_included).ToList();
        Assert.Equal(
            ["price = 120 / (1 + 0.2)", "margin = 0.4", "cost = price * (1 - margin)", "profit = price - cost", "markup = profit / cost",
                "priceWithTax = price * (1 + 0.2)"],
            lines.Select(line => $"{line.Symbol} = {line.Formula}"));
        Assert.Equal([100m, 0.4m, 60m, 40m, 2m / 3, 120m], lines.Select(line => line.Value));
    }

    [Fact]
    public void A_share_of_nothing_is_not_worked_out()
    {
        var asked = new MarkupValues(0, 0, null, null, null);
        Assert.Equal(["cost", "price", "profit"], Workings.Of(asked, null).Select(line => line.Symbol));
    }

    [Fact]
    public void A_share_past_exactness_is_refused_with_the_step()
    {
        // A margin of 0.9999 takes four digits each: three lead 10^12 back to 1, nine to 10^-24. 10^12 over that
        // is 10^36; decimal ends at 7.9 x 10^28.
        ChainStep[] Hands(int count) => [.. Enumerable.Repeat(new ChainStep { Margin = 0.9999m }, count)];
        Assert.NotNull(MarkupChain.AsOneStep(MarkupChain.BackFrom(1_000_000_000_000m, Hands(3)).Value).Found);
        var hands = MarkupChain.BackFrom(1_000_000_000_000m, Hands(9)).Value;
        Assert.Equal("too-large", Assert.Single(MarkupChain.AsOneStep(hands).Faults).Code);
    }
}
