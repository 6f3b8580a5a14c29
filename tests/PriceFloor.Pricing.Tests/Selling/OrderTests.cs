using PriceFloor.Pricing.Tests.Properties;
using Xunit;
using static PriceFloor.Pricing.Tests.WorkedStudio;

namespace PriceFloor.Pricing.Tests.Selling;

/// <summary>The worked examples of the model: orders at the web shop with 5.00 of shipping charged, 6.20 to pay.</summary>
public sealed class OrderTests
{
    private static readonly Offer s_none = new(), s_free = new() { ShippingCharged = 0 };

    [Fact]
    public void An_hour_must_recover_what_the_examples_say() => Assert.Equal(55.988763957464m, Rounding.Nearest(Year.PerBenchHour, 12));

    [Fact]
    public void A_pair_of_earrings_carries_free_shipping_alone()
    {
        var order = Of(s_free, Item(1, "RB-021"));
        Assert.Equal((54.03m, 51.54m, OrderVerdict.MeetsFloor), (Cents(order.Net), Cents(order.Floors), order.Verdict));
    }

    [Fact]
    public void From_84_on_every_order_carries_free_shipping()
    {
        string[] listed = ["RB-014", "RB-021", "PN-007", "BD-003", "BD-008", "MB-001", "OR-002", "BV-004"];
        var orders = LeastOrders.Of(Web, s_free).Value;
        var least = listed.ToDictionary(sku => sku, sku => orders.Of(Piece(sku), PriceOf(sku, "web")).Value);
        Assert.Equal(new LeastOrder(2, 48), least["BD-003"]);
        Assert.Equal(new LeastOrder(2, 84), least["MB-001"]);
        Assert.Equal(1, least["RB-021"].Pieces);
        Assert.Equal(new LeastOrder(null, null), least["RB-014"]); // it is below its floor already
        Assert.Equal(84m, LeastOrder.Threshold(least.Values));
        Assert.Null(LeastOrder.Threshold([least["RB-021"], least["RB-014"]]));
    }

    [Fact]
    public void A_weak_piece_is_carried_by_a_strong_one()
    {
        var order = Of(s_none, Item(2, "RB-014"), Item(1, "OR-002"));
        Assert.Equal((160m, 149.77m, 132.96m), (order.Total, Cents(order.Net), Cents(order.Floors)));
        Assert.Equal(144.95m, Cents(Of(s_free, Item(2, "RB-014"), Item(1, "OR-002")).Net));
        Assert.Equal(Rounding.Settle(order.AboveFloor), Rounding.Settle(order.AboveFloorOfItems.Sum()));
        // 116 of the 160 belong to the pendants: 149.77 * 116 / 160 less two floors.
        Assert.Equal(Rounding.Settle(order.Net * 116 / 160 - 2 * Piece("RB-014").Floor), Rounding.Settle(order.AboveFloorOfItems[0]));
    }

    [Fact]
    public void A_gift_is_paid_for_by_the_rest()
    {
        var order = Order.Of(Web, [Item(1, "PN-007")], [Item(1, "OR-002")], s_none).Value;
        Assert.Equal((198.80m, 118.70m), (Cents(order.Net), Cents(order.Floors)));
        Assert.Equal(-Piece("OR-002").Floor, Assert.Single(order.AboveFloorOfGifts));
        Assert.Equal(Rounding.Settle(order.AboveFloor), Rounding.Settle(order.AboveFloorOfItems[0] + order.AboveFloorOfGifts[0]));
    }

    [Theory]
    [InlineData("PN-007", 499)]
    [InlineData("BV-004", 286)]
    [InlineData("RB-021", 118)]
    [InlineData("MB-001", 116)]
    [InlineData("BD-003", 94)]
    public void So_much_may_be_taken_off_one_piece(string sku, int thousandths) =>
        Assert.Equal(thousandths / 1000m, Of(s_none, Item(1, sku)).MostOff);

    [Fact]
    public void Nothing_may_be_taken_off_an_order_that_falls_short() => Assert.Null(Of(s_none, Item(1, "RB-014")).MostOff);

    [Fact]
    public void The_usual_discount_is_not_this_buyers()
    {
        var codes = Web with { UsualDiscount = 0.2m };
        Assert.Equal(Of(s_none, Item(1, "RB-021")).Net, Order.Of(codes, [Item(1, "RB-021")], [], s_none).Value.Net);
    }

    [Fact]
    public void An_amount_off_is_an_amount_of_the_channels_prices()
    {
        // 12.00 off 120.00 at 20 % tax, included: 90.00 is paid before tax; on top: 108.00.
        var shop = new Channel { Sells = Sells.Retail, Currency = "USD", SalesTax = new SalesTax { Rate = 0.2m, Included = true } };
        var item = new OrderItem(Piece("RB-014"), 1, 120);
        Assert.Equal(90m, Rounding.Settle(Order.Of(shop, [item], [], new Offer { AmountOff = 12 }).Value.Net));
        var onTop = shop with { SalesTax = new SalesTax { Rate = 0.2m } };
        Assert.Equal(108m, Order.Of(onTop, [item], [], new Offer { AmountOff = 12 }).Value.Net);
        var fault = Assert.Single(Order.Of(onTop, [item], [], new Offer { AmountOff = 120 }).Faults);
        Assert.Equal(("/offer/amountOff", "out-of-range"), (fault.Pointer, fault.Code.Word));
    }

    [Fact]
    public void Fees_and_selling_are_those_of_this_order()
    {
        // 100.00 at 10 % with at most 6.00, 3.00 an order of packing time at 55.988764 an hour for 12 minutes and 3 a piece.
        var shop = new Channel
        {
            Sells = Sells.Retail,
            Currency = "USD",
            PiecesPerOrder = 5,
            Fees = [new Fee { Rate = 0.1m, Maximum = 6 }],
            Selling = new SellingTime { MinutesPerOrder = 12, MinutesPerPiece = 3 },
        };
        var order = Order.Of(shop, [new OrderItem(Piece("OR-002"), 2, 50)], [new OrderItem(Piece("OR-002"), 1, 0)], s_none).Value;
        Assert.Equal((94m, 3), (order.Net, order.Pieces));
        Assert.Equal(Rounding.Settle(3 * Piece("OR-002").Floor + Year.PerBenchHour * 21 / 60), Rounding.Settle(order.Floors));
    }

    [Fact]
    public void Shipping_with_which_a_channel_takes_everything_is_refused()
    {
        // Both fees of 60 % rise together only where the first is above its minimum and the second below its maximum.
        var odd = Web with
        {
            Fees = [new Fee { Rate = 0.6m, Of = FeeBase.Price, Minimum = 60 }, new Fee { Rate = 0.6m, Of = FeeBase.PriceAndShipping, Maximum = 63 }],
        };
        Assert.NotNull(SellingTerms.Of(odd).Found); // the second stops at 100 before tax, where the first begins
        Assert.Equal("takes-everything", Assert.Single(Order.Of(odd, [Item(1, "RB-021")], [], s_free).Faults).Code);
    }

    [Fact]
    public void Its_workings_can_be_redone()
    {
        var channel = Web with
        {
            LossShare = 0.02m,
            Selling = new SellingTime { MinutesPerOrder = 9 },
            Stall = new Stall { Cost = 50, Pieces = 20, Hours = 1 },
        };
        foreach (var offer in new[] { s_none, s_free, new Offer { DiscountShare = 0.2m }, new Offer { AmountOff = 7.5m } })
        {
            var order = Order.Of(channel, [Item(2, "RB-014"), Item(1, "OR-002")], [Item(1, "BD-003")], offer).Value;
            var known = Redone.From(Workings.Of(Year).Concat(Workings.Of(order)));
            Assert.Equal((order.Net, order.Floors, order.AboveFloor), (known["orderNet"], known["orderFloors"], known["orderAboveFloor"]));
            Assert.True(known["atLeastTotalOrderNet"].Reaches(order.Floors));
            Assert.Equal(order.MostOff is not null, known.TryGetValue("atMostOffOrderNet", out var mostOff) && mostOff.Reaches(order.Floors));
        }
    }

    private static Order Of(Offer offer, params OrderItem[] items) => Order.Of(Web, items, [], offer).Value;

    private static decimal Cents(decimal money) => Rounding.Nearest(money, 2);
}
