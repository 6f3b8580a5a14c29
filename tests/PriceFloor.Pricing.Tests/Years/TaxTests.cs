using Xunit;

namespace PriceFloor.Pricing.Tests.Years;

public sealed class TaxTests
{
    [Fact]
    public void No_tax_and_a_flat_rate()
    {
        Assert.Equal((0m, 8000m),
            (Tax.Of(new TaxRules { Kind = TaxKind.None }).Value.On(8000), Tax.Of(new TaxRules { Kind = TaxKind.None }).Value.ProfitLeaving(8000)));
        var flat = Tax.Of(new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m }).Value;
        Assert.Equal((2000m, 10000m, 0m), (flat.On(10000), flat.ProfitLeaving(8000), flat.ProfitLeaving(0)));
    }

    [Fact]
    public void Bands_an_allowance_and_a_deductible_levy()
    {
        var tax = Of(
            new Levy { Share = 0.9m, DeductibleShare = 0.5m, Bands = [new Band { Rate = 0.1m }] },
            new Levy { Allowance = 5000, Bands = [new Band { UpTo = 10000, Rate = 0.1m }, new Band { Rate = 0.3m }] });
        // 20,000: first 1,800; base 20,000 - 5,000 - 900 = 14,100: 1,000 + 0.3 x 4,100 = 2,230.
        Assert.Equal([1800m, 2230m], tax.LeviesOn(20000));
        Assert.Equal(20000m, tax.ProfitLeaving(20000 - 4030));
        // Below the allowance only the first levy: 4,000 pays 360.
        Assert.Equal(360m, tax.On(4000));
        Assert.Equal(4000m, tax.ProfitLeaving(3640));
    }

    [Fact]
    public void A_wage_elsewhere_has_used_up_allowance_and_low_bands()
    {
        var tax = Of(new Levy { Allowance = 5000, OtherBase = 12000, Bands = [new Band { UpTo = 10000, Rate = 0.1m }, new Band { Rate = 0.3m }] });
        Assert.Equal(300m + 0.3m * 2000, tax.On(5000)); // 3,000 of the low band are left, 2,000 above
        Assert.Equal(0m, tax.On(0));
    }

    [Fact]
    public void A_levy_on_a_part_of_the_profit_stops_at_its_cap()
    {
        var tax = Of(new Levy { Share = 0.5m, Bands = [new Band { UpTo = 1000, Rate = 0.2m }, new Band { Rate = 0 }] });
        Assert.Equal((100m, 200m, 200m), (tax.On(1000), tax.On(2000), tax.On(9000)));
        Assert.Equal(5200m, tax.ProfitLeaving(5000));
    }

    [Fact]
    public void What_is_deductible_comes_off_every_levy_after_it()
    {
        // 10,000: 10 % = 1,000, half deductible; then 20 % of 9,500 = 1,900, a tenth deductible; then 30 % of 9,500 - 190 = 9,310: 2,793.
        var tax = Of(
            new Levy { DeductibleShare = 0.5m, Bands = [new Band { Rate = 0.1m }] },
            new Levy { DeductibleShare = 0.1m, Bands = [new Band { Rate = 0.2m }] },
            new Levy { Bands = [new Band { Rate = 0.3m }] });
        Assert.Equal([1000m, 1900m, 2793m], tax.LeviesOn(10000));
        Assert.Equal(10000m, tax.ProfitLeaving(10000 - 5693));
    }

    [Fact]
    public void A_wage_below_the_allowance_leaves_the_rest_of_it()
    {
        var tax = Of(new Levy { Allowance = 5000, OtherBase = 3000, Bands = [new Band { Rate = 0.1m }] });
        Assert.Equal((0m, 0m, 100m), (tax.On(1000), tax.On(2000), tax.On(3000))); // 2,000 of the allowance are left
        Assert.Equal(3000m, tax.ProfitLeaving(2900));
    }

    [Fact]
    public void A_band_that_takes_everything_is_refused_only_where_income_reaches_it_and_nothing_relieves_it()
    {
        // The first levy's 100 % on a tenth of the profit is 10 % of the profit: no harm. On all of it: refused.
        Assert.Equal(90m, 100 - Of(new Levy { Share = 0.1m, Bands = [new Band { Rate = 1 }] }).On(100));
        var whole = new TaxRules
        {
            Kind = TaxKind.Levies,
            Levies = [new Levy { Bands = [new Band { UpTo = 500, Rate = 0.2m }, new Band { UpTo = 600, Rate = 1 }, new Band { Rate = 0.2m }] }],
        };
        Assert.Equal("marginal-rate", Assert.Single(Tax.Of(whole).Faults).Code); // only between 500 and 600, and yet
        // A wage elsewhere is past that band already.
        Assert.Empty(Tax.Of(whole with { Levies = [whole.Levies[0] with { OtherBase = 600 }] }).Faults);
    }

    [Theory]
    [InlineData("0.6", "0.4", true)]
    [InlineData("0.6", "0.39", false)]
    public void Rates_that_leave_nothing_of_one_more_are_refused(string first, string second, bool refused)
    {
        var rules = new TaxRules
        {
            Kind = TaxKind.Levies,
            Levies = [new Levy { Bands = [new Band { UpTo = 100, Rate = 0 }, new Band { Rate = Number(first) }] },
                new Levy { Bands = [new Band { UpTo = 500, Rate = Number(second) }, new Band { Rate = 0 }] }],
        };
        Assert.Equal(refused, Tax.Of(rules).Faults.Any(fault => fault is { Code.Word: "marginal-rate", Pointer: "/tax/levies" }));
    }

    /// <summary>60 % on the first 1,000 and 50 % above 5,000 never meet.</summary>
    [Fact]
    public void Two_levies_that_take_from_different_parts_of_the_profit_are_not_added_up()
    {
        var tax = Of(
            new Levy { Bands = [new Band { UpTo = 1000, Rate = 0.6m }, new Band { Rate = 0 }] },
            new Levy { Bands = [new Band { UpTo = 5000, Rate = 0 }, new Band { Rate = 0.5m }] });
        Assert.Equal(600m + 500m, tax.On(6000)); // 60 % of 1,000, and half of the 1,000 above 5,000
        Assert.Equal(6000m, tax.ProfitLeaving(4900));
    }

    [Fact]
    public void A_band_narrower_than_one_unit_of_money_has_its_own_rate()
    {
        // 999.80: 10 % of it = 99.98; nothing on 999.50, 10 % of the 0.30 above = 0.03; 899.79 are left.
        var tax = Of(
            new Levy { Bands = [new Band { UpTo = 1000, Rate = 0.1m }, new Band { Rate = 0.2m }] },
            new Levy { Bands = [new Band { UpTo = 999.5m, Rate = 0 }, new Band { UpTo = 1000.2m, Rate = 0.1m }, new Band { Rate = 0.5m }] });
        Assert.Equal(899.79m, 999.80m - tax.On(999.80m));
        Assert.Equal(999.80m, tax.ProfitLeaving(899.79m));
    }

    /// <summary>60 % and 45 % from 500 on: 105 % of each further unit.</summary>
    [Fact]
    public void What_the_refused_rates_add_up_to_is_told()
    {
        var faults = Tax.Of(new TaxRules
        {
            Kind = TaxKind.Levies,
            Levies = [new Levy { Bands = [new Band { Rate = 0.6m }] },
                new Levy { Bands = [new Band { UpTo = 500, Rate = 0 }, new Band { Rate = 0.45m }] }],
        }).Faults;
        Assert.StartsWith("From a profit of 500.00 on, the rates add up to 105.00 % of each further unit", Assert.Single(faults).Detail,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_flat_rate_of_everything_is_refused() =>
        Assert.Equal("/tax/rate", Assert.Single(Tax.Of(new TaxRules { Kind = TaxKind.Flat, Rate = 1 }).Faults).Pointer);

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static Tax Of(params Levy[] levies) => Tax.Of(new TaxRules { Kind = TaxKind.Levies, Levies = levies }).Value;
}
