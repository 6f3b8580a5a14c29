using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using Xunit;

namespace PriceFloor.Pricing.Tests.Planning;

/// <summary>Remedies that bring a price to its target: twice what shops pay, and the floor on the channel.</summary>
public sealed class TowardTargetTests
{
    private static readonly Channel s_shop = new() { Sells = Sells.Retail, Currency = "USD" };

    [Fact]
    public void What_moves_the_floor_moves_the_target()
    {
        // An hour at 30.00 and 6.00 of materials: wholesale 36.00, target 72.00. At 50.00 the floor may be 25.00: 19.00 of time, 38 minutes;
        // or no materials at all, which leaves 5.00 too much time; or 6 / 18 less a year: 60,000 x (30 - 19) / 30 = 22,000.
        var remedies = Remedies.Of(Check(s_shop, 50, 6), RemedyGoal.Target).Value;
        Assert.Equal((50m, 72m), (Of(remedies, RemedyKind.RaiseThePrice).Before, Of(remedies, RemedyKind.RaiseThePrice).After));
        Assert.Equal(38m, Of(remedies, RemedyKind.WorkFaster).After);
        Assert.Equal("more-than-materials", Of(remedies, RemedyKind.CheaperMaterials).Reason);
        Assert.Equal(22000m, Of(remedies, RemedyKind.SpendLess).Cut);
        Assert.Equal(22000m, Of(remedies, RemedyKind.EarnTaxableElsewhere).After);
        Assert.Equal((38m, "time-takes-it-all"),
            (Of(remedies, RemedyKind.NewDesignMinutes).After, Of(remedies, RemedyKind.NewDesignMaterials).Reason!.Word));
        // 40 x 30 / 19
        Assert.Equal((63.16m, "long-week"), (Of(remedies, RemedyKind.MoreHours).After, Of(remedies, RemedyKind.MoreHours).Flag!.Word));
        Assert.Null(remedies.Balanced);
    }

    [Fact]
    public void Channel_terms_move_no_target_but_may_close_what_is_left_to_the_floor()
    {
        var gallery = s_shop with { ShopShare = 0.6m };
        Assert.Equal("moves-no-target", Of(Remedies.Of(Check(gallery, 50, 6), RemedyGoal.Target).Value, RemedyKind.LowerShopShare).Reason);
        // At 80.00 the target of 72.00 is met, but 32.00 reach the studio: 55 % would leave 36.00.
        Assert.Equal(0.55m, Of(Remedies.Of(Check(gallery, 80, 6), RemedyGoal.Target).Value, RemedyKind.LowerShopShare).After);
    }

    [Fact]
    public void The_stricter_of_floor_and_target_is_the_answer()
    {
        // At 80.00 with 60 % for the gallery 32.00 reach the studio: 26.00 of time, 52 minutes. The target alone would leave 40.00 - 6.00.
        Assert.Equal(52m, Of(Remedies.Of(Check(s_shop with { ShopShare = 0.6m }, 80, 6), RemedyGoal.Target).Value, RemedyKind.WorkFaster).After);
    }

    [Fact]
    public void Where_shops_pay_more_than_half_of_it_nothing_but_a_price_helps()
    {
        var piece = UnitCost.Of(Piece(6), Year).Value;
        var prices = ChannelPrices.Of(FloorPrice.Of(piece, 45).Value, SellingTerms.Of(s_shop).Value).Value; // shops pay 45.00: target 90.00
        var remedies = Remedies.Of(prices.Check(89).Value, RemedyGoal.Target).Value;
        Assert.All(remedies.All.Where(remedy => remedy.Kind is > RemedyKind.RaiseThePrice and < RemedyKind.ChargeMoreShipping),
            remedy => Assert.Equal("listed-wholesale-decides", remedy.Reason));
        Assert.Equal(90m, Of(remedies, RemedyKind.RaiseThePrice).After);
    }

    [Fact]
    public void On_a_wholesale_channel_the_target_is_the_floor()
    {
        var wholesale = s_shop with { Sells = Sells.Wholesale };
        var floor = Remedies.Of(Check(wholesale, 30, 6)).Value;
        var target = Remedies.Of(Check(wholesale, 30, 6), RemedyGoal.Target).Value;
        Assert.Equal(floor.All, target.All, (one, other) => (one.Kind, one.After, one.Reason) == (other.Kind, other.After, other.Reason));
        Assert.NotNull(target.Balanced);
    }

    /// <summary>Each figure, fed back, makes the price meet its target; one unit less of its last decimal does not.</summary>
    [Property(MaxTest = 300, EndSize = 1_000_000)]
    public void A_remedy_fed_back_reaches_the_target_and_a_hair_less_does_not(NonNegativeInt seed, PositiveInt part)
    {
        var studio = new RandomStudio(seed.Get);
        var piece = UnitCost.Of(studio.Design(), StudioYear.Of(studio.Profile(), default).Value).Value;
        var channel = studio.Channel();
        var prices = ChannelPrices.Of(FloorPrice.Of(piece, null).Value, SellingTerms.Of(channel).Value).Value;
        var price = decimal.Round(prices.TargetPrice * (1 - part.Get % 60 / 100m), 2);
        if (piece.Floor < 1 || price <= 0)
            return;
        var year = piece.Year;
        var remedies = Remedies.Of(prices.Check(price).Value, RemedyGoal.Target).Value;
        foreach (var remedy in remedies.All.Where(remedy => remedy.Possible && remedy.After != remedy.Before && remedy.After is not null))
            switch (remedy.Kind)
            {
                case RemedyKind.WorkFaster or RemedyKind.NewDesignMinutes:
                    Turns(remedy, 0.01m, minutes => Meets(year.PerBenchHour, minutes / 60, piece.Materials));
                    break;
                case RemedyKind.CheaperMaterials or RemedyKind.NewDesignMaterials:
                    Turns(remedy, 0.01m, materials => Meets(year.PerBenchHour, piece.BenchHours, materials));
                    break;
                case RemedyKind.SpendLess:
                    Assert.True(Meets((year.BenchMustEarn - remedy.Cut!.Value) / year.CarryingHours, piece.BenchHours, piece.Materials));
                    Assert.False(remedy.Cut > 0.01m
                        && Meets((year.BenchMustEarn - remedy.Cut.Value + 0.01m) / year.CarryingHours, piece.BenchHours, piece.Materials));
                    break;
                case RemedyKind.RaiseThePrice:
                    Assert.Equal(Verdict.MeetsTarget, prices.VerdictOf(remedy.After!.Value));
                    break;
            }

        void Turns(Remedy remedy, decimal hair, Func<decimal, bool> isEnough)
        {
            Assert.True(isEnough(remedy.After!.Value), $"{remedy.Kind} {remedy.After} is not enough");
            Assert.False(isEnough(remedy.After.Value + hair), $"{remedy.Kind} {remedy.After + hair} would do already");
        }

        bool Meets(decimal perHour, decimal hours, decimal materials)
        {
            var sale = Sale.Of(price, channel);
            var floor = decimal.Max(0, perHour * hours + materials - piece.SecondsCredit);
            var onChannel = decimal.Max(0, perHour * (hours + prices.ChannelFloor.SellingHours) + materials - piece.SecondsCredit);
            return sale.Net.Reaches(onChannel) && (channel.Sells == Sells.Wholesale
                || sale.BeforeTax.Reaches(year.Profile.PriceRule.RetailMultiple * year.Currency.RoundUp(floor)));
        }
    }

    private static StudioYear Year { get; } = StudioYear.Of(new CostProfile
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = 60000, Per = Per.Year }],
    }, default).Value;

    private static Design Piece(decimal materials) =>
        new() { Profile = "main", Making = new Making { MinutesPerPiece = 60 }, Materials = [new MaterialLine { Amount = materials }] };

    private static Remedy Of(Remedies remedies, RemedyKind kind) => remedies.All.Single(remedy => remedy.Kind == kind);

    private static PriceCheck Check(Channel channel, decimal price, decimal materials) => ChannelPrices
        .Of(FloorPrice.Of(UnitCost.Of(Piece(materials), Year).Value, null).Value, SellingTerms.Of(channel).Value).Value.Check(price).Value;
}
