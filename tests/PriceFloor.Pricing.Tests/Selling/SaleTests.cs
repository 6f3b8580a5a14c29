using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

public sealed class SaleTests
{
    private static readonly Channel s_bare = new() { Sells = Sells.Retail, Currency = "USD" };

    [Fact]
    public void A_gallery_keeps_its_share() => Assert.Equal(34.80m, Net(58, s_bare with { ShopShare = 0.4m }));

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

        static Channel Shop(Fee fee) => s_bare with
        {
            Fees = [fee],
            PiecesPerOrder = 2,
            SalesTax = new SalesTax { Rate = 0.2m },
            Shipping = new Shipping { Charged = 10, Cost = 10 },
        };
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
        var channel = s_bare with
        {
            Shipping = new Shipping { Charged = 5, Cost = 6.2m },
            PiecesPerOrder = 1.5m,
            CostPerPiece = 0.8m,
            Stall = new Stall { Cost = 180, Pieces = 30 },
        };
        Assert.Equal(Rounding.Settle(40 + (5 - 6.2m) / 1.5m - 0.8m - 6), Rounding.Settle(Net(40, channel)));
    }

    [Fact]
    public void A_return_costs_more_than_the_sale()
    {
        // 10 % come back, 80 % of these sell again. Kept 38.00 a sale (fee 2.00); lost on a return: 2.00 fee + 6 + 4 shipping + 1 packing = 13.00.
        var channel = s_bare with
        {
            Fees = [new Fee { Fixed = 2 }],
            Shipping = new Shipping { Charged = 6, Cost = 6, ReturnCost = 4 },
            CostPerPiece = 1,
            Returns = new Returns { Share = 0.1m, ResaleShare = 0.8m },
        };
        Assert.Equal(Rounding.Settle((0.9m * 37 - 0.1m * 13) / 0.92m), Rounding.Settle(Net(40, channel)));
        var refunded = channel with { Returns = channel.Returns with { FeesRefunded = true } };
        Assert.Equal(Rounding.Settle((0.9m * 37 - 0.1m * 11) / 0.92m), Rounding.Settle(Net(40, refunded)));
    }

    [Fact]
    public void Tax_inside_the_price_is_inside_the_shipping_too()
    {
        // Two pieces at 120 and 12 for shipping, 20 % inside: 100 each, 10; the buyer pays 252. Fee 25.20; 100 + (10 - 8 - 25.20) / 2 = 88.40.
        var channel = s_bare with
        {
            PiecesPerOrder = 2,
            SalesTax = new SalesTax { Rate = 0.2m, Included = true },
            Shipping = new Shipping { Charged = 12, Cost = 8 },
            Fees = [new Fee { Rate = 0.1m, Of = FeeBase.Paid }],
        };
        var sale = Sale.Of(120, channel);
        Assert.Equal((100m, 10m, 252m, 25.2m, 88.4m), (sale.BeforeTax, sale.ShippingCharged, sale.Paid, sale.Fees[0], sale.Net));
    }

    [Fact]
    public void A_return_loses_packing_and_the_stall_as_well()
    {
        // Kept 40 - 1 - 60 / 20 = 36; lost 1 + 3 = 4. A quarter comes back and none sells again: 0.75 x 36 - 0.25 x 4 = 26; if all do: 26 / 0.75.
        var channel = s_bare with { CostPerPiece = 1, Stall = new Stall { Cost = 60, Pieces = 20 }, Returns = new Returns { Share = 0.25m } };
        Assert.Equal(26m, Net(40, channel));
        Assert.Equal(Rounding.Settle(26m / 0.75m),
            Rounding.Settle(Net(40, channel with { Returns = new Returns { Share = 0.25m, ResaleShare = 1 } })));
    }

    [Fact]
    public void A_minimum_is_of_the_whole_fee_and_each_fee_has_its_own()
    {
        // 10 % of 30 + 1 = 4.00, below 4.50; 2 % of 30 + 0.30 = 0.90: 5.40 together.
        var sale = Sale.Of(30,
            s_bare with { Fees = [new Fee { Rate = 0.1m, Fixed = 1, Minimum = 4.5m }, new Fee { Rate = 0.02m, Fixed = 0.3m, Maximum = 1 }] });
        Assert.Equal([4.5m, 0.9m], sale.Fees);
        Assert.Equal(24.6m, sale.Net);
    }

    [Fact]
    public void A_price_may_bring_less_than_nothing() =>
        Assert.Equal(-4m, Net(2, s_bare with { Shipping = new Shipping { Cost = 6 } }));

    private static decimal Net(decimal price, Channel channel) => Sale.Of(price, channel).Net;
}
