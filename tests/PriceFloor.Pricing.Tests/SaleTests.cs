using Xunit;

namespace PriceFloor.Pricing.Tests;

public sealed class SaleTests
{
    private static readonly Channel s_bare = new() { Sells = Sells.Retail, Currency = "USD" };

    [Fact]
    public void A_gallery_keeps_its_share() => Assert.Equal(34.80m, Net(58, s_bare with { StockistShare = 0.4m }));

    [Fact]
    public void Sales_tax_inside_a_price_is_not_the_makers()
    {
        Assert.Equal(100m, Net(120, s_bare with { SalesTax = new SalesTax { Rate = 0.2m, Included = true } }));
        Assert.Equal(120m, Net(120, s_bare with { SalesTax = new SalesTax { Rate = 0.2m } }));
    }

    [Fact]
    public void A_fee_is_taken_of_what_it_says()
    {
        // Two pieces of 50 and 10 for shipping, 20 % tax on top: price 100, with shipping 110, paid 132. Shipping itself costs 10.
        decimal Fee(FeeBase of) => Sale.Of(50, Shop(new Fee { Rate = 0.1m, Fixed = 1, Of = of })).Fees[0];
        Assert.Equal((11m, 12m, 14.2m), (Fee(FeeBase.Price), Fee(FeeBase.PriceAndShipping), Fee(FeeBase.Paid)));
        Assert.Equal(50 - 14.2m / 2, Net(50, Shop(new Fee { Rate = 0.1m, Fixed = 1, Of = FeeBase.Paid })));

        static Channel Shop(Fee fee) => s_bare with { Fees = [fee], PiecesPerOrder = 2, SalesTax = new SalesTax { Rate = 0.2m }, Shipping = new Shipping { Charged = 10, Cost = 10 } };
    }

    [Theory]
    [InlineData(10, 2)] // 1.00 is raised to the minimum
    [InlineData(30, 3)]
    [InlineData(90, 5)] // 9.00 is cut to the maximum
    public void A_fee_stays_between_its_bounds(int price, int fee) =>
        Assert.Equal(fee, Sale.Of(price, s_bare with { Fees = [new Fee { Rate = 0.1m, Minimum = 2, Maximum = 5 }] }).Fees[0]);

    [Fact]
    public void A_minimum_holds_without_a_maximum_and_a_maximum_without_a_minimum()
    {
        Assert.Equal(2m, Sale.Of(10, s_bare with { Fees = [new Fee { Rate = 0.1m, Minimum = 2 }] }).Fees[0]);
        Assert.Equal(0.5m, Sale.Of(10, s_bare with { Fees = [new Fee { Rate = 0.1m, Maximum = 0.5m }] }).Fees[0]);
    }

    [Fact]
    public void Shipping_packing_and_the_stall_are_paid_from_the_price()
    {
        var channel = s_bare with { Shipping = new Shipping { Charged = 5, Cost = 6.2m }, PiecesPerOrder = 1.5m, CostPerPiece = 0.8m, Event = new StallEvent { Cost = 180, Pieces = 30 } };
        Assert.Equal(Rounding.Settle(40 + (5 - 6.2m) / 1.5m - 0.8m - 6), Rounding.Settle(Net(40, channel)));
    }

    [Fact]
    public void A_return_costs_more_than_the_sale()
    {
        // 10 % come back, 80 % of these sell again. Kept 38.00 a sale (fee 2.00); lost on a return: 2.00 fee + 6 + 4 shipping + 1 packing = 13.00.
        var channel = s_bare with { Fees = [new Fee { Fixed = 2 }], Shipping = new Shipping { Charged = 6, Cost = 6, ReturnCost = 4 }, CostPerPiece = 1, Returns = new Returns { Share = 0.1m, ResaleShare = 0.8m } };
        Assert.Equal(Rounding.Settle((0.9m * 37 - 0.1m * 13) / 0.92m), Rounding.Settle(Net(40, channel)));
        var refunded = channel with { Returns = channel.Returns with { FeesRefunded = true } };
        Assert.Equal(Rounding.Settle((0.9m * 37 - 0.1m * 11) / 0.92m), Rounding.Settle(Net(40, refunded)));
    }

    private static decimal Net(decimal price, Channel channel) => Sale.Of(price, channel).Net;
}
