using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using Xunit;

namespace PriceFloor.Pricing.Tests.Properties;

/// <summary>What must hold of every order and every run, attacked with random ones.</summary>
public sealed class OrderProperties
{
    private const int Tries = 200;

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void An_order_of_average_size_leaves_what_the_price_check_says(NonNegativeInt seed, PositiveInt cents, PositiveInt pieces)
    {
        var (channel, piece) = Studio(seed);
        var k = pieces.Get % 30 + 1;
        channel = channel with { PiecesPerOrder = k, UsualDiscount = 0 };
        if (SellingTerms.Of(channel).Found is null)
            return;
        var order = Order.Of(channel, [new OrderItem(piece, k, cents.Get / 100m)], [], new Offer()).Value;
        Assert.Equal(Rounding.Settle(k * Sale.Of(cents.Get / 100m, channel).Net), Rounding.Settle(order.Net));
        // A design whose seconds bring more than its pieces take has a floor of zero; its selling then counts in full in an order.
        if (piece.Floor > 0)
            Assert.Equal(Rounding.Settle(k * new ChannelFloor(piece, channel).Floor), Rounding.Settle(order.Floors));
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void The_least_total_carries_and_one_unit_less_does_not(NonNegativeInt seed, PositiveInt cents, PositiveInt more)
    {
        var order = Random(seed, cents, more);
        var total = order.LeastTotal.Value.Price;
        Assert.True(Scaled(order, total)!.CarriesItsShare);
        var lower = Scaled(order, total - 0.01m);
        Assert.True(lower is null || !lower.CarriesItsShare);
        Assert.Equal(order.CarriesItsShare, order.Total >= total);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void With_the_most_off_an_order_carries_and_with_a_thousandth_more_it_does_not(NonNegativeInt seed, PositiveInt cents, PositiveInt more)
    {
        var order = Random(seed, cents, more);
        bool Carries(decimal share) => Order.Of(order.Channel, order.Items, order.Gifts, order.Offer with { DiscountShare = share }).Found
            is { CarriesItsShare: true };
        if (order.MostOff is { } most)
            Assert.True(Carries(most) && (most == 0.999m || !Carries(most + 0.001m)), $"{most}");
        else
            Assert.False(Carries(0));
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void Parts_of_an_order_add_up_and_a_gift_never_helps(NonNegativeInt seed, PositiveInt cents, PositiveInt more)
    {
        var order = Random(seed, cents, more);
        var parts = order.AboveFloorOfItems.Sum() + order.AboveFloorOfGifts.Sum();
        Assert.True(decimal.Abs(parts - order.AboveFloor) < 1e-15m);
        var without = Order.Of(order.Channel, order.Items, [], order.Offer).Value;
        Assert.True(without.AboveFloor.Reaches(order.AboveFloor));
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void The_least_order_is_the_first_from_which_on_every_one_carries(NonNegativeInt seed, PositiveInt cents, PositiveInt more)
    {
        var order = Random(seed, cents, more);
        var (piece, price) = (order.Items[0].Piece, order.Items[0].Price);
        bool Carries(int pieces) =>
            Order.Of(order.Channel, [new OrderItem(piece, pieces, price)], [], order.Offer).Found is { CarriesItsShare: true };
        var lastShort = Enumerable.Range(1, LeastOrder.MostPieces).LastOrDefault(pieces => !Carries(pieces));
        int? least = lastShort == LeastOrder.MostPieces ? null : lastShort + 1;
        Assert.Equal(new LeastOrder(least, least * price), LeastOrders.Of(order.Channel, order.Offer).Value.Of(piece, price).Value);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void The_floor_total_carries_a_run_and_one_unit_less_does_not(NonNegativeInt seed, PositiveInt pieces)
    {
        var (channel, piece) = Studio(seed);
        var run = Run.Of(piece, new RunTerms(pieces.Get % 60 + 1)).Value;
        var order = MadeToOrder.Of(piece.Year, channel, [run], ExtraWork.None).Value;
        Assert.True(order.CarriesItsShare(order.FloorTotal));
        Assert.True(order.FloorTotal == 0.01m || !order.CarriesItsShare(order.FloorTotal - 0.01m));
        Assert.True(run.Starts >= run.Quantity && run.StartsToBeSure >= run.Quantity);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_run_of_more_pieces_takes_more_and_learning_never_takes_longer(NonNegativeInt seed, PositiveInt pieces, PositiveInt percent)
    {
        var (_, piece) = Studio(seed);
        var n = pieces.Get % 60 + 1;
        Run Of(int quantity, decimal rate) =>
            Run.Of(piece, new RunTerms(quantity) { Learning = new Learning { Rate = rate, MadeBefore = percent.Get % 7 } }).Value;
        var rate = 0.5m + percent.Get % 50 / 100m;
        Assert.True(Of(n + 1, rate).BenchHours >= Of(n, rate).BenchHours);
        Assert.True(Of(n, 1).BenchHours.Reaches(Of(n, rate).BenchHours));
        Assert.Equal(Run.Of(piece, new RunTerms(n)).Value.BenchHours, Of(n, 1).BenchHours);
    }

    private static (Channel Channel, UnitCost Piece) Studio(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        return (studio.Channel(), UnitCost.Of(studio.Design(), StudioYear.Of(studio.Profile(), default).Value).Value);
    }

    private static Order Random(NonNegativeInt seed, PositiveInt cents, PositiveInt more)
    {
        var (channel, piece) = Studio(seed);
        var price = cents.Get % 30_000 / 100m + 0.5m;
        Offer[] offers =
        [
            new(), new() { DiscountShare = 0.25m }, new() { AmountOff = price / 2 }, new() { ShippingCharged = channel.Shipping.Charged / 2 },
        ];
        return Order.Of(channel, [new OrderItem(piece, more.Get % 9 + 1, price), new OrderItem(piece, 2, price + 3)], [new OrderItem(piece, 1, 0)],
            offers[more.Get % offers.Length]).Value;
    }

    /// <summary>
    /// The same pieces for another total; null if nothing is left to pay. Their prices are spread so that they add up to it exactly.
    /// </summary>
    private static Order? Scaled(Order order, decimal total)
    {
        var rest = order.Items.Sum(item => item.Pieces) - 1;
        if (total <= 0)
            return null;
        OrderItem[] items = [.. order.Items.Select(item => item with { Price = 0 }), order.Items[0] with { Pieces = 1, Price = total }];
        items[0] = items[0] with { Pieces = items[0].Pieces - 1 };
        Assert.Equal(rest, items[0].Pieces + items[1].Pieces);
        return Order.Of(order.Channel, items, order.Gifts, order.Offer).Found;
    }
}
