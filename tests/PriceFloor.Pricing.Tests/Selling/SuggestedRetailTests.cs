using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;
using PriceFloor.Pricing.Selling;
using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

/// <summary>What a maker suggests that shops ask for a piece. Common practice, without a published source.</summary>
public sealed class SuggestedRetailTests
{
    private static readonly Currency s_dollar = Currency.Of("USD");

    [Fact]
    public void Nobody_finds_the_piece_cheaper_at_the_maker_s_own_shop() =>
        Assert.Equal(58m, SuggestedRetail.Of([60m, 58m], 20m, new SalesTax(), 2, s_dollar));

    [Fact]
    public void A_piece_that_only_shops_buy_takes_the_studio_s_multiple() =>
        Assert.Equal(57m, SuggestedRetail.Of([], 28.50m, new SalesTax(), 2, s_dollar));

    [Fact]
    public void Sales_tax_is_not_multiplied_and_parts_of_a_cent_go_up() => // 28.50 / 1.2 = 23.75; * 2.5 = 59.375
        Assert.Equal(59.38m, SuggestedRetail.Of([], 28.50m, new SalesTax { Rate = 0.2m, Included = true }, 2.5m, s_dollar));

    [Fact]
    public void It_has_the_decimals_of_its_currency() => // 105 * 2.5 = 262.5
        Assert.Equal(263m, SuggestedRetail.Of([], 105m, new SalesTax(), 2.5m, Currency.Of("JPY")));
}
