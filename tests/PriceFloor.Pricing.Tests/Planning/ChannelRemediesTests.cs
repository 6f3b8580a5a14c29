using Xunit;

namespace PriceFloor.Pricing.Tests.Planning;

/// <summary>The ways to fix a price that change the channel: 2,000 hours at 30.00, a piece of an hour, worked by hand.</summary>
public sealed class ChannelRemediesTests
{
    private static readonly CostProfile s_profile = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = 60000, Per = Per.Year }],
    };

    private static readonly Channel s_shop = new() { Sells = Sells.Retail, Currency = "USD" };

    [Fact]
    public void Shipping_is_charged_by_the_order()
    {
        // 29.00 less 4.00 of shipping for two pieces: 27.00; each piece lacks 3.00, so an order must pay 6.00.
        var sold = s_shop with { PiecesPerOrder = 2, Shipping = new Shipping { Cost = 4 } };
        Is(sold, 29, RemedyKind.ChargeMoreShipping, 0, 6, null, "6.00 USD charged for shipping an order instead of 0.00 USD");
        Is(sold with { Shipping = new Shipping { Charged = 5, Cost = 4 } }, 28, RemedyKind.ChargeMoreShipping, 5, 8, 0.6m,
            "8.00 USD charged for shipping an order instead of 5.00 USD");
        IsNot(s_shop, 29, RemedyKind.ChargeMoreShipping, "no-shipping");
    }

    [Fact]
    public void What_is_paid_once_an_order_is_shared_by_its_pieces()
    {
        // 31.00 less 6.00 an order: 5 pieces would lack 20 cents each, 6 pieces carry 30.00.
        var sold = s_shop with { Shipping = new Shipping { Cost = 6 } };
        Is(sold, 31, RemedyKind.MorePiecesAnOrder, 1, 6, 5, "6 pieces an order on average instead of 1");
        // From 1.5 the next whole number is 2: 33.00 - 6.00 / 2 = 30.00.
        Is(sold with { PiecesPerOrder = 1.5m }, 33, RemedyKind.MorePiecesAnOrder, 1.5m, 2, 0.333333m, "2 pieces an order on average instead of 1.5");
        IsNot(sold, 30, RemedyKind.MorePiecesAnOrder, "not-enough"); // even a thousand leave 29.994
        IsNot(s_shop with { Fees = [new Fee { Rate = 0.1m }] }, 30, RemedyKind.MorePiecesAnOrder, "nothing-per-order");
        // A fee that is never above 5.00 an order is shared too: 31.00 - 5.00 / 5.
        Is(s_shop with { Fees = [new Fee { Rate = 0.5m, Maximum = 5 }] }, 31, RemedyKind.MorePiecesAnOrder, 1, 5, 4,
            "5 pieces an order on average instead of 1");
    }

    [Fact]
    public void Packing_an_order_takes_time_that_its_pieces_share()
    {
        // 30 min an order are 15.00: for one piece the floor is 45.00, for two 37.50, for three 35.00.
        var sold = s_shop with { Selling = new SellingTime { MinutesPerOrder = 30 } };
        Is(sold, 36, RemedyKind.MorePiecesAnOrder, 1, 3, 2, "3 pieces an order on average instead of 1");
    }

    [Fact]
    public void A_shop_may_keep_what_the_price_leaves_above_the_floor()
    {
        // 45.00: 15.00 of it may go, a third: 0.333333.
        Is(s_shop with { ShopShare = 0.4m }, 45, RemedyKind.LowerShopShare, 0.4m, 0.333333m, -0.166668m,
            "the shop keeps 33.3333 % instead of 40 %");
        IsNot(s_shop with { ShopShare = 0.4m }, 29.99m, RemedyKind.LowerShopShare, "not-enough");
        IsNot(s_shop, 29, RemedyKind.LowerShopShare, "no-shop-share");
    }

    [Fact]
    public void A_fuller_stall_spreads_its_cost_and_its_hours()
    {
        // 100.00 and 10 h at 30.00 are 400.00; at 34.00 each piece may carry 4.00: 100 pieces instead of 40.
        var fair = s_shop with { Stall = new Stall { Cost = 100, Hours = 10, Pieces = 40 } };
        Is(fair, 34, RemedyKind.FullerStall, 40, 100, 1.5m, "100 pieces a stall instead of 40");
        IsNot(fair, 30, RemedyKind.FullerStall, "not-enough"); // a million pieces still leave 0.0004 to each
        IsNot(s_shop with { Stall = new Stall { Pieces = 40 } }, 29, RemedyKind.FullerStall, "no-stall");
    }

    [Fact]
    public void Less_discount_leaves_more_of_the_price()
    {
        // 32.00 less 6.25 % are 30.00.
        Is(s_shop with { UsualDiscount = 0.1m }, 32, RemedyKind.LessDiscount, 0.1m, 0.0625m, -0.375m, "a usual discount of 6.25 % instead of 10 %");
        IsNot(s_shop with { UsualDiscount = 0.1m }, 29, RemedyKind.LessDiscount, "not-enough");
        IsNot(s_shop, 29, RemedyKind.LessDiscount, "no-discount");
    }

    [Fact]
    public void Elsewhere_is_where_the_listed_price_holds_or_this_price_would()
    {
        var check = Check(s_shop with { ShopShare = 0.5m }, 40);
        OtherChannel[] others =
        [
            new("a-fair", Prices(s_shop), 35), // listed, and 30.00 is enough
            new("b-web", Prices(s_shop), 29), // listed too low, but 40.00 would be enough
            new("c-gallery", Prices(s_shop with { ShopShare = 0.4m }), null), // 50.00 would be needed
            new("d-market", Prices(s_shop), null),
        ];
        var elsewhere = Of(Remedies.Of(check, RemedyGoal.Floor, others).Value, RemedyKind.SellElsewhere);
        Assert.Equal([new SoldElsewhere("a-fair", 35, true), new SoldElsewhere("b-web", 30, false), new SoldElsewhere("d-market", 30, false)],
            elsewhere.Channels);
        Assert.Equal(("listed 35.00 USD on a-fair, from 30.00 USD on b-web, from 30.00 USD on d-market", null, null, null),
            (elsewhere.InWords, elsewhere.Before, elsewhere.After, elsewhere.By));
        Assert.Equal("nowhere-else", Of(Remedies.Of(check, RemedyGoal.Floor, [others[2]]).Value, RemedyKind.SellElsewhere).Reason);
        // Toward the target of 60.00 neither 35.00 listed nor 40.00 is enough.
        Assert.Equal("nowhere-else", Of(Remedies.Of(check, RemedyGoal.Target, others).Value, RemedyKind.SellElsewhere).Reason);
    }

    [Fact]
    public void Channel_terms_can_help_where_a_sale_brings_nothing()
    {
        // 20.00 of which the shop keeps all but 10 %, and 3.00 of packing: -1.00 reaches the studio. The floor is 1.00.
        var small = s_profile with { Expenses = [new Expense { Amount = 2000, Per = Per.Year }] };
        var remedies = Remedies.Of(Check(s_shop with { ShopShare = 0.9m, CostPerPiece = 3 }, 20, small)).Value;
        Assert.Equal("nothing-reaches-the-studio", Of(remedies, RemedyKind.WorkFaster).Reason);
        Assert.Equal(0.8m, Of(remedies, RemedyKind.LowerShopShare).After); // 20 x 0.2 - 3 = 1
    }

    [Fact]
    public void Where_selling_takes_it_all_no_time_is_left_to_make_it_in()
    {
        // 90 minutes of selling are 45.00; at 40.00 nothing is left, at 46.00 two minutes.
        var slow = s_shop with { Selling = new SellingTime { MinutesPerPiece = 90 } };
        var none = Remedies.Of(Check(slow, 40)).Value;
        Assert.Equal(("selling-takes-it-all", "selling-takes-it-all"),
            (Of(none, RemedyKind.WorkFaster).Reason!.Word, Of(none, RemedyKind.NewDesignMinutes).Reason!.Word));
        Assert.Equal(2m, Of(Remedies.Of(Check(slow, 46)).Value, RemedyKind.WorkFaster).After);
    }

    [Fact]
    public void Ways_come_by_the_size_of_their_change()
    {
        var all = Remedies.Of(Check(s_shop with { ShopShare = 0.4m, UsualDiscount = 0.05m }, 45)).Value.All;
        Assert.Equal(RemedyKind.RaiseThePrice, all[0].Kind);
        var sizes = all.Skip(1).TakeWhile(remedy => remedy.By is not null && remedy.Possible)
            .Select(remedy => decimal.Abs(remedy.By!.Value)).ToList();
        Assert.True(sizes.Count > 3);
        Assert.Equal(sizes.Order(), sizes);
        Assert.All(all.SkipWhile(remedy => remedy.Possible), remedy => Assert.False(remedy.Possible));
    }

    private static void Is(Channel channel, decimal price, RemedyKind kind, decimal before, decimal after, decimal? by, string inWords)
    {
        var remedy = Of(Remedies.Of(Check(channel, price)).Value, kind);
        Assert.Equal((before, after, by, inWords), (remedy.Before, remedy.After, remedy.By, remedy.InWords));
    }

    private static void IsNot(Channel channel, decimal price, RemedyKind kind, string reason) =>
        Assert.Equal(reason, Of(Remedies.Of(Check(channel, price)).Value, kind).Reason);

    private static Remedy Of(Remedies remedies, RemedyKind kind) => remedies.All.Single(remedy => remedy.Kind == kind);

    private static PriceCheck Check(Channel channel, decimal price, CostProfile? profile = null) => Prices(channel, profile).Check(price).Value;

    private static ChannelPrices Prices(Channel channel, CostProfile? profile = null)
    {
        var piece = UnitCost.Of(new Design { Profile = "main", Making = new Making { MinutesPerPiece = 60 } },
            StudioYear.Of(profile ?? s_profile, default).Value).Value;
        return ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(channel).Value).Value;
    }
}
