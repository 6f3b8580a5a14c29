using PriceFloor.Pricing.Tests.Planning;
using Xunit;

namespace PriceFloor.Pricing.Tests.PublishedValues;

public sealed class BreakEvensAndMarkups
{
    /// <summary>
    /// Walther and Skousen, Managerial and Cost Accounting, secs 3.4-3.5: price 2,000, variable cost 800, fixed cost 1,200,000: 1,000
    /// units; 600,000 wanted (computed): 1,500.
    /// </summary>
    [Fact]
    public void A_single_product_breaks_even_as_published()
    {
        var year = BreakEvenTests.Year(1_200_000);
        var line = BreakEvenTests.Line(year, 2000, 800, 1);
        var found = BreakEven.Of(line.UnitCost, line.Sale).Value;
        Assert.Equal((1000m, 2_000_000m, 1200m), (found.Units, found.Revenue, found.Contribution));
        Assert.Equal([1500m], MixBreakEven.Of(year, [line], new Surplus { Amount = 600_000, Tax = SurplusTax.Before }).Value.Units);
    }

    /// <summary>
    /// Wild, Fundamental Accounting Principles 22e, ch. 21 problem 7B, published solution (fixed cost implied by it): 11,250, 7,500 and 3,750 units.
    /// </summary>
    [Fact]
    public void A_mix_breaks_even_as_published()
    {
        var year = BreakEvenTests.Year(270_000);
        var mix = MixBreakEven.Of(year,
            [BreakEvenTests.Line(year, 40, 30, 6), BreakEvenTests.Line(year, 30, 15, 4), BreakEvenTests.Line(year, 20, 8, 2)], null).Value;
        Assert.Equal((144m, 1875m, 750_000m), (mix.ContributionPerMixUnit, mix.MixUnits, mix.Revenue));
        Assert.Equal([11250m, 7500m, 3750m], mix.Units);
    }

    /// <summary>
    /// Lumen Learning, Managerial Accounting, "Sales Mix" (CC BY): contributions 1.70 and 0.70 at 2,320 and 580 units: 4,350, 1.50 on average.
    /// </summary>
    [Fact]
    public void The_average_of_a_mix_is_weighted()
    {
        var year = BreakEvenTests.Year(4350);
        var mix = MixBreakEven.Of(year, [BreakEvenTests.Line(year, 10, 8.30m, 2320), BreakEvenTests.Line(year, 14, 13.30m, 580)], null).Value;
        Assert.Equal((4350m, 1m), (mix.ContributionPerMixUnit, mix.MixUnits));
        Assert.Equal(1.50m, mix.ContributionPerMixUnit / 2900);
    }

    /// <summary>Chain discounts in business-mathematics notes: 140 less 20 % less 15 %: a discount of 44.80, one of 32 %.</summary>
    [Fact]
    public void A_series_of_discounts_has_one_equivalent()
    {
        var series = new DiscountSeries([0.20m, 0.15m]);
        Assert.Equal((44.80m, 0.32m, 140m), (140 - 140 * series.Factor, series.Single, series.FromNet(95.2m).Value.List));
    }

    /// <summary>Business-mathematics lesson slides: cost 12.78 sold at 24.49: a markup of 11.71 in money.</summary>
    [Fact]
    public void A_markup_in_money_is_the_profit() => Assert.Equal(11.71m, new Markup(12.78m, 24.49m).Profit);
}
