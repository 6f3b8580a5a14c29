using Xunit;

namespace PriceFloor.Pricing.Tests.PublishedValues;

public sealed class OtherFigures
{
    /// <summary>
    /// HMRC, calculating VAT for VAT-inclusive and VAT-exclusive prices (Open Government Licence): 100 net is 120 at 20 %, 105 at 5 %.
    /// </summary>
    [Theory]
    [InlineData(20, 120)]
    [InlineData(5, 105)]
    public void A_tax_inclusive_price_holds_its_net(int percent, int gross) =>
        Assert.Equal(100m, Rounding.Settle(Sale.BeforeTaxOf(gross, Included(percent / 100m))));

    /// <summary>HMRC VAT fractions: the tax in a gross price is 1/6 at 20 %, 1/21 at 5 %, 7/47 at 17.5 %, 3/23 at 15 %.</summary>
    [Theory]
    [InlineData("0.2", 1, 6)]
    [InlineData("0.05", 1, 21)]
    [InlineData("0.175", 7, 47)]
    [InlineData("0.15", 3, 23)]
    public void The_tax_in_a_price_is_the_published_fraction(string rate, int top, int bottom)
    {
        var gross = 1000m * bottom;
        Assert.Equal(1000m * top,
            Rounding.Settle(gross - Sale.BeforeTaxOf(gross, Included(decimal.Parse(rate, System.Globalization.CultureInfo.InvariantCulture)))));
    }

    /// <summary>Town of Paradise Valley, Arizona, "Tax Factoring": 100 gross at 9.68 % is 91.17 net.</summary>
    [Fact]
    public void A_sales_tax_is_factored_out_as_published() => Assert.Equal(91.17m, Rounding.Nearest(Sale.BeforeTaxOf(100, Included(0.0968m)), 2));

    /// <summary>Keller, Six Sigma Demystified (example on a quality site): step yields multiply to a rolled throughput yield of 0.728.</summary>
    [Fact]
    public void Step_yields_multiply()
    {
        decimal[] yields = [0.997m, 0.995m, 0.95m, 0.89m, 0.923m, 0.94m];
        var time = BenchTime.Of(new Making { Steps = [.. yields.Select(good => new Step { HandsOnMinutes = 1, GoodShare = good })] },
            new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 });
        Assert.Equal((0.728m, 0.727715m), (Rounding.Nearest(1 / time.Starts, 3), Rounding.Nearest(1 / time.Starts, 6)));
    }

    /// <summary>Keller, Six Sigma Demystified p. 93: 200, 600 and 1,000 errors in 4,000 units are yields of 95, 85 and 75 %.</summary>
    [Theory]
    [InlineData(200, 95)]
    [InlineData(600, 85)]
    [InlineData(1000, 75)]
    public void Lost_pieces_are_the_inverse_of_the_yield(int lost, int percent)
    {
        var time = BenchTime.Of(new Making { MinutesPerPiece = 1, GoodShare = percent / 100m },
            new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 });
        Assert.Equal(4000m - lost, Rounding.Settle(4000 / time.Starts));
    }

    /// <summary>ISO 4217 list one (SIX), as packaged 2026-02-01.</summary>
    [Theory]
    [InlineData("JPY KRW VND CLP ISK UGX XAF", 0)]
    [InlineData("USD EUR GBP CHF SEK AUD CAD NZD INR HUF TWD MGA MRU", 2)]
    [InlineData("KWD BHD TND JOD OMR IQD LYD", 3)]
    [InlineData("CLF UYW", 4)]
    public void Minor_units_are_those_of_ISO_4217(string codes, int decimals) =>
        Assert.All(codes.Split(' '), code => Assert.Equal(decimals, Currency.Of(code).Decimals));

    /// <summary>The same list: gold has no minor unit, so no price can be in it.</summary>
    [Fact]
    public void A_metal_is_no_currency_for_prices() => Assert.Null(Currency.Find("XAU"));

    /// <summary>
    /// Directive 2003/88/EC art. 6 and ILO Convention No. 1 art. 2: 48 hours a week. For the self-employed a plausibility norm only.
    /// </summary>
    [Theory]
    [InlineData(6, 8, false)]
    [InlineData(6, 8.1, true)]
    [InlineData(5, 8, false)]
    public void More_than_48_hours_a_week_is_flagged(int days, double hours, bool flagged)
    {
        var year = StudioYear.Of(new CostProfile
        {
            Currency = "USD",
            Calendar = new StudioCalendar { WeeksPerYear = 48, DaysPerWeek = days, HoursPerDay = (decimal)hours },
        }, new DateOnly(2027, 1, 1)).Value;
        Assert.Equal(flagged, Warnings.In(year, new DateOnly(2027, 6, 1)).Any(warning => warning.Code.Word == "long-week"));
    }

    private static Channel Included(decimal rate) =>
        new() { Sells = Sells.Retail, Currency = "GBP", SalesTax = new SalesTax { Rate = rate, Included = true } };
}
