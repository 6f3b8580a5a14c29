using Xunit;

namespace PriceFloor.Pricing.Tests;

/// <summary>The studio of the documentation from its bills to the verdict on one price, every figure calculated by hand.</summary>
public sealed class ExampleStudioTests
{
    private static readonly StudioYear s_year = StudioYear.Of(ExampleStudio.Profile, default).Value;

    private static readonly UnitCost s_pendant = UnitCost.Of(ExampleStudio.Pendant, s_year).Value;

    private static readonly ChannelPrices s_prices =
        ChannelPrices.Of(FloorPrice.Of(s_pendant, null).Value, SellingTerms.Of(ExampleStudio.WebShop).Value).Value;

    [Fact]
    public void What_the_year_pays()
    {
        Assert.Equal(375m, s_year.Depreciation); // (3,200 - 200) / 8, its third year of use
        Assert.Equal(2088m, s_year.BusinessShares); // 17,400 x 0.12
        Assert.Equal(12843m, s_year.Expenses); // 6,480 rent + 3,900 rod and frit + 375 + 2,088
        Assert.Equal((3900m, 8943m), (s_year.Traced, s_year.Allocated));
        Assert.Equal((1800m, 20112m), (s_year.NotDeductible, s_year.Household)); // 17,400 x 0.88 + 3,000 + 1,800
        Assert.Equal(3360m, s_year.TaxableIncome);
    }

    [Fact]
    public void What_the_year_has_of_time()
    {
        Assert.Equal(228m, s_year.Workdays); // 240 less 12 of classes
        Assert.Equal(1305.6m, s_year.BenchHours); // 228 x 8 x 0.65 + 120
    }

    [Fact]
    public void What_must_be_left_and_the_profit_that_leaves_it()
    {
        Assert.Equal(25536m, s_year.PayAYear); // 14 x 1,824 h
        Assert.Equal(27336m, s_year.Need); // 25,536 and the loan's 1,800: more than the household's 20,112
        // In the 12 % band: of one more unit 0.1412955 goes to the first levy (0.9235 x 0.153) and 0.12 x (1 - 0.07064775) to the second,
        // so 0.74718223 stays; 0.74718223 Y = 27,336 + 1,192.50 - 0.12 x (15,750 + 11,925) = 25,207.50.
        Assert.Equal(Rounding.Settle(25207.50m / 0.74718223m), Rounding.Settle(s_year.Profit)); // 33,736.7499
        Assert.Equal((4766.85m, 1633.90m),
            (Nearest(s_year.TaxRules.LeviesOn(s_year.Profit)[0]), Nearest(s_year.TaxRules.LeviesOn(s_year.Profit)[1])));
        Assert.Equal(27336m, Rounding.Settle(s_year.Profit - s_year.TaxOnProfit));
    }

    [Fact]
    public void What_the_pieces_must_bring()
    {
        Assert.Equal(43219.75m, Least(s_year.RequiredRevenue)); // 12,843 + 33,736.7499 - 3,360
        Assert.Equal(39319.75m, Least(s_year.BenchMustEarn)); // 8,943 + 33,736.7499 - 3,360
        Assert.Equal(189.57m, Least(s_year.PerDay)); // 43,219.7499 / 228 = 189.5603
        Assert.Equal(947.81m, Least(s_year.PerWeek)); // over 45.6 weeks: 947.8015
        Assert.Equal(30.12m, Least(s_year.PerBenchHour)); // / 1,305.6 = 30.1162
        Assert.Equal(14m, s_year.TakeHomePerHour); // (27,336 - 1,800) / 1,824
    }

    [Fact]
    public void What_one_sold_pendant_takes()
    {
        // 1 / (0.95 x 0.98) = 1.074114 starts, 1 / 0.98 = 1.020408 enter annealing.
        Assert.Equal(1.074114m, Rounding.Nearest(s_pendant.Time.Starts, 6));
        // 1.074114 x 34 + 1.020408 x 20 / 24 + 9 + 1.074114 x 15 / 12 = 47.712854 min; / 60 / 0.9 sold = 0.883571 h.
        Assert.Equal(0.883571m, Rounding.Nearest(s_pendant.BenchHours, 6));
        // Rod 1.074114 x 38 x 0.062 / 0.92, kiln 1.020408 x 0.21 x 16 / 24, box 1.55: 4.443523; / 0.9 = 4.937247.
        Assert.Equal(4.937247m, Rounding.Nearest(s_pendant.Materials, 6));
        // 0.4 x 11 x 0.074114 / 0.9 = 0.362334.
        Assert.Equal(0.362334m, Rounding.Nearest(s_pendant.SecondsCredit, 6));
        // 30.116230 x 0.883571 = 26.609838; + 4.937247 - 0.362334 = 31.184751.
        Assert.Equal((26.609838m, 31.184751m), (Rounding.Nearest(s_pendant.BenchCost, 6), Rounding.Nearest(s_pendant.Floor, 6)));
        Assert.Equal(1477m, Rounding.Down(s_pendant.PiecesPerYear, 0)); // 1,305.6 / 0.883571 = 1,477.64
        Assert.Equal((31.19m, 62.38m), (s_prices.Floor.Wholesale, s_prices.Floor.Retail));
    }

    [Fact]
    public void What_the_web_shop_must_ask()
    {
        // At 35: paid 1.4 x 35 + 5 = 54; fee 1.546; kept 35 + (5 - 6.20 - 1.546) / 1.4 - 0.80 = 32.2386; lost (1.546 + 12.40) / 1.4 + 0.80 = 10.7614;
        // net (0.97 x 32.2386 - 0.03 x 10.7614) / 0.976 = 31.7096. At 34 it is 30.7403: below 31.1848.
        Assert.Equal(35m, s_prices.FloorPrice);
        Assert.Equal(31.7096m, Rounding.Nearest(Sale.Of(35, ExampleStudio.WebShop).Net, 4));
        Assert.Equal(63m, s_prices.TargetPrice); // the next whole dollar from 62.38
    }

    [Fact]
    public void What_58_dollars_does()
    {
        // Paid 86.20; fee 2.3188; kept 54.6866; lost 11.3134; net (0.97 x 54.6866 - 0.03 x 11.3134) / 0.976 = 54.0026.
        var check = s_prices.Check(58).Value;
        Assert.Equal((54.00m, 22.82m), (Nearest(check.Sale.Net), Nearest(check.AboveFloor))); // 54.0026 - 31.1848 = 22.8179
        Assert.Equal(55.94m, Nearest(check.EarnedPerBenchHour)); // (54.0026 - 4.9372 + 0.3623) / 0.883571 = 55.9408
        Assert.Equal((Verdict.BelowTarget, true), (check.Verdict, check.CarriesItsShare)); // 58 is below 2 x 31.19
    }

    private static decimal Least(decimal amount) => Rounding.Up(amount, 2);

    private static decimal Nearest(decimal amount) => Rounding.Nearest(amount, 2);
}
