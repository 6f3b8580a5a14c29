using System.Globalization;
using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

/// <summary>What may be taken off a price, and one price for several channels: a floor of 30.00.</summary>
public sealed class DiscountRoomTests
{
    private static readonly Channel s_shop = new() { Sells = Sells.Retail, Currency = "USD" };

    [Fact]
    public void A_price_may_be_lowered_down_to_its_floor()
    {
        Assert.Equal(0.25m, Check(s_shop, 40).DiscountRoom!.Share); // 40.00 - 25 %
        Assert.Equal(0.249m, Check(s_shop with { ShopShare = 0.2m }, 49.99m).DiscountRoom!.Share); // 37.50 of 49.99: 24.98 %
        Assert.Equal(0m, Check(s_shop, 30).DiscountRoom!.Share);
        Assert.Null(Check(s_shop, 29.99m).DiscountRoom);
    }

    [Fact]
    public void It_stands_in_place_of_the_usual_discount_and_is_taken_off_before_tax_too()
    {
        // 48.00 with 20 % tax are 40.00 before it.
        var taxed = s_shop with { SalesTax = new SalesTax { Rate = 0.2m, Included = true }, UsualDiscount = 0.1m };
        Assert.Equal(0.25m, Check(taxed, 48).DiscountRoom!.Share);
        // 32.00 less the usual 10 % falls short, but one sale without it holds, with 6.25 % off.
        Assert.Equal((Verdict.BelowFloor, 0.062m), (Check(taxed with { SalesTax = new SalesTax() }, 32).Verdict,
            Check(taxed with { SalesTax = new SalesTax() }, 32).DiscountRoom!.Share));
    }

    [Property(MaxTest = 300, EndSize = 1_000_000)]
    public void With_that_much_off_a_sale_carries_its_share_and_with_a_thousandth_more_it_does_not(NonNegativeInt seed, PositiveInt cents)
    {
        var studio = new RandomStudio(seed.Get);
        var piece = UnitCost.Of(studio.Design(), StudioYear.Of(studio.Profile(), default).Value).Value;
        var channel = studio.Channel();
        var check = ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(channel).Value)
            .Value.Check(cents.Get % 90_000 / 100m + 0.01m).Value;
        var floor = check.Prices.ChannelFloor.Floor;
        bool Holds(decimal share) => Sale.Of(check.Sale.Price, channel with { UsualDiscount = share }).Net.Reaches(floor);
        if (check.DiscountRoom is { } room)
            Assert.True(Holds(room.Share) && (room.Share == 0.999m || !Holds(room.Share + 0.001m)),
                room.Share.ToString(CultureInfo.InvariantCulture));
        else
            Assert.False(Holds(0));
    }

    [Fact]
    public void One_price_everywhere_is_the_lowest_that_every_channel_allows_and_carries()
    {
        // Whole prices of its own: 30.00; a gallery with 40 %: 50.00; a market with prices ending in 0.95 and 2.00 to pay: 32.95.
        var own = Prices(s_shop with { PriceStep = 1 });
        var gallery = Prices(s_shop with { ShopShare = 0.4m });
        Assert.Equal((30m, 60m), (One(own).FloorPrice, One(own).TargetPrice));
        Assert.Equal((50m, 60m), (One(own, gallery).FloorPrice, One(own, gallery).TargetPrice));
        var halves = Prices(s_shop with { ShopShare = 0.41m, PriceStep = 1.5m }); // 30 / 0.59 = 50.85: 51.00
        Assert.Equal(51m, One(own, gallery, halves).FloorPrice);
        Assert.Equal(60m, One(own, Prices(s_shop with { ShopShare = 0.42m, PriceStep = 2.5m }), halves).FloorPrice); // 51.73: every 7.50 is common
        Assert.Equal("no-price", Assert.Single(OnePrice.Of([own, Prices(s_shop with { PriceStep = 1, PriceEnding = 0.95m })]).Faults).Code);
    }

    private static OnePrice One(params ChannelPrices[] channels) => OnePrice.Of(channels).Value;

    private static PriceCheck Check(Channel channel, decimal price) => Prices(channel).Check(price).Value;

    private static ChannelPrices Prices(Channel channel)
    {
        var year = StudioYear.Of(new CostProfile
        {
            Currency = "USD",
            Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
            Expenses = [new Expense { Amount = 60000, Per = Per.Year }],
        }, default).Value;
        var piece = UnitCost.Of(new Design { Profile = "main", Making = new Making { MinutesPerPiece = 60 } }, year).Value;
        return ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(channel).Value).Value;
    }
}
