using Xunit;

namespace PriceFloor.Pricing.Tests.PublishedValues;

/// <summary>
/// Bills read the other way round, through the sets in the docs: from what reaches the household back to the profit that it takes.
/// Limits of the sets: the US one has no 400 threshold (so it charges a profit of 433 or less, which Schedule SE lets off), no Additional Medicare
/// Tax of 0.9 % above 200,000 and no qualified business income deduction; the UK one has no trading allowance and no voluntary Class 2.
/// </summary>
public sealed class TakeHome
{
    /// <summary>
    /// Total and take-home of UK tax pages for 2025-26, re-derived from the GOV.UK bands to the penny. Published as such: the take-home of 45,000 and
    /// the total of 50,000; 30,000, 60,000 and 110,000 are computed from the bands, no published bill.
    /// </summary>
    [Theory]
    [InlineData(30000, "4531.80")]
    [InlineData(42500, "7781.80")]
    [InlineData(45000, "8431.80")]
    [InlineData(48000, "9211.80")]
    [InlineData(50000, "9731.80")]
    [InlineData(60000, "13888.60")]
    [InlineData(110000, "36888.60")]
    [InlineData(125140, "46275.40")]
    public void A_UK_bill_leaves_what_its_page_says(int profit, string total)
    {
        var tax = Tax.Of(TaxExamples.Uk2025SelfEmployed).Value;
        Assert.Equal(Number(total), tax.On(profit));
        Assert.Equal(profit, Rounding.Settle(tax.ProfitLeaving(profit - Number(total))));
    }

    /// <summary>
    /// A profit of 40,000 in the United States in 2026 by bracket arithmetic: 5,651.82 of self-employment tax, then 10 and 12 % on
    /// 40,000 - 2,825.91 - 16,100 = 21,074.09 (computed from the tables; without the qualified business income deduction of the filed return).
    /// </summary>
    [Fact]
    public void A_US_need_finds_the_profit_behind_it()
    {
        var tax = Tax.Of(TaxExamples.Us2026Single).Value;
        var kept = 40000 - 5651.82m - (1240 + 0.12m * (21074.09m - 12400)); // 2,280.8908
        Assert.Equal(40000m, Rounding.Settle(tax.ProfitLeaving(kept)));
    }

    /// <summary>
    /// With that deduction, computed from the same tables, the filed return pays 1,775.11 of income tax: the set puts
    /// by 505.78 too much, never too little.
    /// </summary>
    [Fact]
    public void What_the_US_set_leaves_out_errs_on_the_safe_side() =>
        Assert.Equal(505.78m, Rounding.Nearest(Tax.Of(TaxExamples.Us2026Single).Value.LeviesOn(40000)[1], 2) - 1775.11m);

    /// <summary>
    /// Above 200,000 it errs on the other side: 0.9 % Additional Medicare Tax on net earnings past that (Schedule SE; IRC 1401(b)(2)) is left out.
    /// </summary>
    [Fact]
    public void What_the_US_set_leaves_out_at_very_high_profits_does_not()
    {
        // 300,000 x 0.9235 = 277,050: 28,228.50 (184,500 x 0.153) + 2,683.95 (92,550 x 0.029); the 0.9 % on 77,050 would be 693.45 more.
        Assert.Equal(28228.50m + 2683.95m, Tax.Of(TaxExamples.Us2026Single).Value.LeviesOn(300000)[0]);
    }

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
