using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

public sealed class SellingTermsTests
{
    private static readonly Channel s_bare = new() { Sells = Sells.Retail, Currency = "USD" };

    [Theory]
    [InlineData("0.01", "0", "60.01")]
    [InlineData("1", "0", "61")]
    [InlineData("1", "0.95", "60.95")]
    [InlineData("5", "0", "65")]
    [InlineData("5", "4.5", "64.5")]
    public void The_floor_price_is_the_next_that_the_grid_allows(string step, string ending, string expected) =>
        Assert.Equal(Number(expected), Terms(s_bare with { PriceStep = Number(step), PriceEnding = Number(ending) }).FloorPrice(60.001m).Value.Price);

    [Fact]
    public void A_floor_of_nothing_still_has_a_price_above_zero()
    {
        Assert.Equal(0.01m, Terms(s_bare).FloorPrice(0).Value.Price);
        Assert.Equal(0.95m, Terms(s_bare with { PriceStep = 1, PriceEnding = 0.95m }).FloorPrice(0).Value.Price);
        Assert.Equal(1m, Terms(s_bare with { PriceStep = 1 }).FloorPrice(0).Value.Price);
    }

    [Fact]
    public void A_fee_at_its_bounds_moves_the_floor_price()
    {
        // 10 %, at least 2, at most 5. Floor 10: below 20.00 the fee is 2: 12.00. Floor 36: 10 % of 40.00. Floor 60: 65.00.
        var terms = Terms(s_bare with { Fees = [new Fee { Rate = 0.1m, Minimum = 2, Maximum = 5 }] });
        Assert.Equal((12m, 40m, 65m), (terms.FloorPrice(10).Value.Price, terms.FloorPrice(36).Value.Price, terms.FloorPrice(60).Value.Price));
    }

    [Fact]
    public void The_price_that_leaves_so_much_may_lie_off_the_grid()
    {
        // The same fee: 12 - 2, 40 * 0.9, 65 - 5; and of 10.001, 12.001. Nothing less than nothing is asked.
        var terms = Terms(s_bare with { Fees = [new Fee { Rate = 0.1m, Minimum = 2, Maximum = 5 }], PriceStep = 5 });
        Assert.Equal([12m, 40m, 65m, 12.001m, 0m], new[] { 10m, 36m, 60m, 10.001m, -9m }.Select(net => terms.PriceLeaving(net)));
    }

    [Fact]
    public void The_rates_are_judged_without_any_other_field()
    {
        // No currency, no pieces at the stall, no step: none of them is asked for.
        var broken = s_bare with
        {
            Currency = "",
            PriceStep = 0,
            Stall = new Stall { Cost = 5, Pieces = 0 },
            Fees = [new Fee { Rate = 0.6m }, new Fee { Rate = 0.4m }],
        };
        Assert.Equal("takes-everything", Assert.Single(SellingTerms.RateFaults(broken)).Code);
        Assert.Empty(SellingTerms.RateFaults(broken with { Fees = [new Fee { Rate = 0.6m }] }));
    }

    [Fact]
    public void A_channel_that_takes_everything_is_refused_on_whichever_stretch_it_does()
    {
        Assert.Equal(("/shopShare", "takes-everything"), Fault(s_bare with { ShopShare = 1 }));
        // Only while the second fee is above its minimum and below its maximum: 60 % + 50 %.
        Assert.Equal(("/fees", "takes-everything"),
            Fault(s_bare with { Fees = [new Fee { Rate = 0.6m }, new Fee { Rate = 0.5m, Minimum = 2, Maximum = 5 }] }));
        Assert.Empty(SellingTerms.Of(s_bare with { Fees = [new Fee { Rate = 0.6m }, new Fee { Rate = 0.39m, Minimum = 2, Maximum = 5 }] }).Faults);
        // Returns included: half come back, and their fee is lost.
        Assert.Equal(("/fees", "takes-everything"), Fault(s_bare with { Fees = [new Fee { Rate = 0.5m }], Returns = new Returns { Share = 0.5m } }));
        Assert.Empty(
            SellingTerms.Of(s_bare with { Fees = [new Fee { Rate = 0.5m }], Returns = new Returns { Share = 0.5m, FeesRefunded = true } }).Faults);
    }

    [Fact]
    public void Exactly_everything_is_too_much_and_a_hair_less_is_not()
    {
        Assert.Equal("takes-everything", Fault(s_bare with { ShopShare = 0.5m, Fees = [new Fee { Rate = 0.5m }] }).Item2);
        Assert.Empty(SellingTerms.Of(s_bare with { ShopShare = 0.5m, Fees = [new Fee { Rate = 0.49999999m }] }).Faults);
    }

    [Fact]
    public void A_fee_on_what_the_buyer_pays_is_taken_of_the_tax_too()
    {
        // 0.84 of 1.2 is 1.008 of the price before tax; 0.83 is 0.996.
        var taxed = s_bare with { SalesTax = new SalesTax { Rate = 0.2m } };
        Assert.Equal("takes-everything", Fault(taxed with { Fees = [new Fee { Rate = 0.84m, Of = FeeBase.Paid }] }).Item2);
        Assert.Empty(SellingTerms.Of(taxed with { Fees = [new Fee { Rate = 0.83m, Of = FeeBase.Paid }] }).Faults);
        Assert.Equal("takes-everything", Fault(
            taxed with { SalesTax = new SalesTax { Rate = 0.2m, Included = true }, Fees = [new Fee { Rate = 0.84m, Of = FeeBase.Paid }] }).Item2);
    }

    [Fact]
    public void A_fee_that_never_leaves_its_minimum_takes_nothing_more_until_it_does()
    {
        // 100 % of the price, but at least 5 and at most 5: a fixed fee of 5 at every price.
        Assert.Equal(15m, Terms(s_bare with { Fees = [new Fee { Rate = 1, Minimum = 5, Maximum = 5 }] }).FloorPrice(10).Value.Price);
        // At most 5, with nothing to keep it at 5 from below: up to 5.00 it takes every cent.
        Assert.Equal("takes-everything", Fault(s_bare with { Fees = [new Fee { Rate = 1, Maximum = 5 }] }).Item2);
    }

    /// <summary>
    /// 60 % of the price beside 50 % + 1.00, at least 10.00, with 6.00 charged for shipping and 20 % tax: from where the second
    /// leaves its minimum, nothing is left.
    /// </summary>
    [Theory]
    [InlineData(FeeBase.Price, true, "18.00")] // 0.5 x 18 + 1 = 10
    [InlineData(FeeBase.PriceAndShipping, true, "13.00")] // shipping is 5.00 before tax: 0.5 x (13 + 5) + 1 = 10
    [InlineData(FeeBase.PriceAndShipping, false, "12.00")] // 0.5 x (12 + 6) + 1 = 10
    [InlineData(FeeBase.Paid, true, "10.00")] // 0.5 x 1.2 x (10 + 5) + 1 = 10
    [InlineData(FeeBase.Paid, false, "9.00")] // 0.5 x 1.2 x (9 + 6) + 1 = 10
    public void The_price_from_which_nothing_more_is_left_is_told(FeeBase of, bool included, string from)
    {
        var faults = SellingTerms.Of(s_bare with
        {
            Fees = [new Fee { Rate = 0.6m }, new Fee { Rate = 0.5m, Fixed = 1, Minimum = 10, Of = of }],
            SalesTax = new SalesTax { Rate = 0.2m, Included = included },
            Shipping = new Shipping { Charged = 6 },
        }).Faults;
        Assert.StartsWith($"From a price before tax of {from} on, ", Assert.Single(faults).Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stretch_that_takes_everything_is_found_however_short_it_is()
    {
        // 3.00 and the whole price up to 5.00 together: from 0 to 2.00.
        Assert.Equal("takes-everything", Fault(s_bare with { Fees = [new Fee { Rate = 1, Fixed = 3, Maximum = 5 }] }).Item2);
        // 60 % and 50 % from 4.00 (a fee of 2.00) to 4.60 (2.30).
        Assert.Equal("takes-everything",
            Fault(s_bare with { Fees = [new Fee { Rate = 0.6m }, new Fee { Rate = 0.5m, Minimum = 2, Maximum = 2.3m }] }).Item2);
    }

    [Fact]
    public void A_target_is_found_before_sales_tax_on_the_grid()
    {
        // 62.38 before 20 % of tax is 74.856 listed: on whole dollars 75, ending in 0.95: 74.95.
        var taxed = s_bare with { SalesTax = new SalesTax { Rate = 0.2m, Included = true }, PriceStep = 1 };
        Assert.Equal((75m, 74.95m),
            (Terms(taxed).PriceReaching(62.38m).Value.Price, Terms(taxed with { PriceEnding = 0.95m }).PriceReaching(62.38m).Value.Price));
        Assert.Equal(63m, Terms(taxed with { SalesTax = new SalesTax { Rate = 0.2m } }).PriceReaching(62.38m).Value.Price);
    }

    [Fact]
    public void No_price_is_an_answer_too() => Assert.Equal("no-price", Assert.Single(Terms(s_bare).FloorPrice(1_000_000_000_001m).Faults).Code);

    [Theory]
    [InlineData("5", "0", "60", true)]
    [InlineData("5", "0", "61", false)]
    [InlineData("1", "0.95", "0.95", true)]
    [InlineData("1", "0.95", "0.50", false)]
    public void A_price_is_on_the_grid_or_off_it(string step, string ending, string price, bool allowed) =>
        Assert.Equal(allowed, new PriceGrid(Number(step), Number(ending)).Allows(Number(price)));

    private static SellingTerms Terms(Channel channel) => SellingTerms.Of(channel).Value;

    private static (string, string) Fault(Channel channel) =>
        Assert.Single(SellingTerms.Of(channel).Faults) is var fault ? (fault.Pointer, fault.Code) : default;

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
