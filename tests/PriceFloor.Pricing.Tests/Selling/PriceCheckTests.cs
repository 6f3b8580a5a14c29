using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

public sealed class PriceCheckTests
{
    private static readonly StudioYear s_year = StudioYear.Of(new CostProfile
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = 60000, Per = Per.Year }],
    }, default).Value;

    // 60.00 + 2.00
    private static readonly UnitCost s_piece = UnitCost.Of(
        new Design { Profile = "main", Making = new Making { PiecesPerDay = 4 }, Materials = [new MaterialLine { Amount = 2 }] }, s_year).Value;

    [Theory]
    [InlineData("61.99", Verdict.BelowFloor)]
    [InlineData("62.00", Verdict.BelowTarget)]
    [InlineData("123.99", Verdict.BelowTarget)]
    [InlineData("124.00", Verdict.MeetsTarget)]
    public void Retail_must_reach_floor_and_rule(string price, Verdict verdict) => Assert.Equal(verdict, Check(Sells.Retail, price).Verdict);

    [Theory]
    [InlineData("61.99", Verdict.BelowFloor)]
    [InlineData("62.00", Verdict.MeetsTarget)]
    public void Wholesale_must_reach_the_floor(string price, Verdict verdict) => Assert.Equal(verdict, Check(Sells.Wholesale, price).Verdict);

    [Fact]
    public void What_an_hour_really_earns_is_after_materials()
    {
        var check = Check(Sells.Retail, "52");
        Assert.Equal((25m, -10m, false), (check.EarnedPerBenchHour, check.AboveFloor, check.CarriesItsShare)); // (52 - 2) / 2 h
    }

    [Fact]
    public void The_target_is_before_sales_tax()
    {
        var prices = Prices(new Channel { Sells = Sells.Retail, Currency = "USD", SalesTax = new SalesTax { Rate = 0.2m, Included = true } });
        Assert.Equal((74.40m, 148.80m), (prices.FloorPrice, prices.TargetPrice)); // 62 x 1.2; 124 x 1.2
        Assert.Equal(Verdict.BelowTarget, prices.Check(148.79m).Value.Verdict);
    }

    [Fact]
    public void A_dear_channel_has_a_floor_above_the_rule()
    {
        var prices = Prices(new Channel { Sells = Sells.Retail, Currency = "USD", ShopShare = 0.6m });
        Assert.Equal((155m, 155m), (prices.FloorPrice, prices.TargetPrice)); // 62 / 0.4
    }

    [Fact]
    public void Two_currencies_never_meet() =>
        Assert.Equal("currency-mismatch", Assert.Single(ChannelPrices.Of(FloorPrice.Of(s_piece, null).Value,
            SellingTerms.Of(new Channel { Sells = Sells.Retail, Currency = "EUR" }).Value).Faults).Code);

    private static PriceCheck Check(Sells sells, string price) =>
        Prices(new Channel { Sells = sells, Currency = "USD" }).Check(decimal.Parse(price, System.Globalization.CultureInfo.InvariantCulture)).Value;

    private static ChannelPrices Prices(Channel channel) =>
        ChannelPrices.Of(FloorPrice.Of(s_piece, null).Value, SellingTerms.Of(channel).Value).Value;
}
