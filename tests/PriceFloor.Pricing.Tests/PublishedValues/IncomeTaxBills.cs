using Xunit;

namespace PriceFloor.Pricing.Tests.PublishedValues;

/// <summary>
/// United States income tax on a taxable income, held against bills that use the bands themselves. Bills from the printed Tax Table (below
/// 100,000, where the middle of a 25- or 50-wide row is taxed) are held within that row; a library of bands has no such table.
/// </summary>
public sealed class IncomeTaxBills
{
    private static readonly decimal[] s_rates = [0.10m, 0.12m, 0.22m, 0.24m, 0.32m, 0.35m, 0.37m];
    private static readonly decimal[] s_single2025 = [11925, 48475, 103350, 197300, 250525, 626350]; // Rev. Proc. 2024-40 sec. 2.01
    private static readonly decimal[] s_separate2025 = [11925, 48475, 103350, 197300, 250525, 375800]; // the same
    private static readonly decimal[] s_joint2025 = [23850, 96950, 206700, 394600, 501050, 751600]; // the same; surviving spouse as joint
    private static readonly decimal[] s_single2026 = [12400, 50400, 105700, 201775, 256225, 640600]; // Rev. Proc. 2025-32 sec. 4.01
    private static readonly decimal[] s_joint2026 = [24800, 100800, 211400, 403550, 512450, 768700]; // the same
    private static readonly decimal[] s_head2026 = [17700, 67450, 105700, 201750, 256200, 640600]; // the same

    /// <summary>At 100,000 and above: bands exactly, whole dollars, so within half a dollar.</summary>
    public static TheoryData<decimal[], decimal, decimal, string> FromTheBands => new()
    {
        { s_single2025, 105351, 18131, "IRS tax-withholding-estimator (public domain), TaxCalculationsSpec, 2025" },
        { s_single2025, 200000, 41063, "IRS tax-withholding-estimator, TaxCalculationsSpec, 2025" },
        { s_single2025, 260000, 60547, "IRS tax-withholding-estimator, TaxCalculationsSpec, 2025" },
        { s_single2025, 700000, 216020, "IRS tax-withholding-estimator, TaxCalculationsSpec, 2025" },
        { s_separate2025, 122193, 22173, "TaxCalcBench 2025 returns (arXiv 2507.16126), line 16" },
        { s_single2026, 120870, 21607, "IRS tax-withholding-estimator, test sheet of 2026-03-05, column 2" },
        { s_head2026, 144720, 25520, "IRS tax-withholding-estimator, test sheet of 2026-03-05, column 60" },
        { s_single2026, 151074, 28856, "IRS tax-withholding-estimator, test sheet of 2026-03-05, column 68" },
        { s_single2026, 206977, 42689, "IRS tax-withholding-estimator, test sheet of 2026-03-05, column 71" },
        { s_joint2026, 212974, 36310, "IRS tax-withholding-estimator, test sheet of 2026-03-05, column 73" },
    };

    /// <summary>Below 100,000: the table taxes the middle of a row of 50, at most 25 away, at the marginal rate, rounded to whole dollars.</summary>
    public static TheoryData<decimal[], decimal, decimal, decimal, string> FromTheTable => new()
    {
        { s_single2025, 20000, 2165, 0.12m, "IRS tax-withholding-estimator, TaxCalculationsSpec, 2025" },
        { s_single2025, 57050, 7471, 0.22m, "IRS tax-withholding-estimator, TaxCalculationsSpec, 2025" },
        { s_single2025, 57099.49m, 7471, 0.22m, "IRS tax-withholding-estimator, TaxCalculationsSpec, 2025" },
        { s_joint2025, 7574, 758, 0.10m, "TaxCalcBench 2025 returns (arXiv 2507.16126), surviving spouse, line 16" },
        { s_single2026, 29883, 3337, 0.12m, "IRS tax-withholding-estimator, test sheet of 2026-03-05, column 8" },
        { s_single2026, 58204, 7522, 0.22m, "IRS tax-withholding-estimator, test sheet of 2026-03-05, column 28" },
        { s_single2026, 85354, 13495, 0.22m, "IRS tax-withholding-estimator, test sheet of 2026-03-05, column 89" },
    };

    [Theory]
    [MemberData(nameof(FromTheBands))]
    public void Bills_from_the_bands_agree_to_the_dollar(decimal[] limits, decimal income, decimal published, string source) =>
        Assert.True(decimal.Abs(Of(limits).On(income) - published) <= 0.5m, $"{source}: {Of(limits).On(income)}");

    [Theory]
    [MemberData(nameof(FromTheTable))]
    public void Bills_from_the_table_agree_within_its_row(decimal[] limits, decimal income, decimal published, decimal marginal, string source) =>
        Assert.True(decimal.Abs(Of(limits).On(income) - published) <= 25 * marginal + 0.5m, $"{source}: {Of(limits).On(income)}");

    /// <summary>IRS scenario 12 for 2025: the Tax Computation Worksheet, 24 % x 107,445 - 7,153 = 18,633.80.</summary>
    [Fact]
    public void The_worksheets_shortcut_is_the_same_sum() => Assert.Equal(18633.80m, Of(s_single2025).On(107445));

    /// <summary>IRS scenario 13 for 2025 prints 162 for 1,620: a plain 10 %.</summary>
    [Fact]
    public void A_small_income_pays_the_lowest_rate() => Assert.Equal(162m, Of(s_joint2025).On(1620));

    /// <summary>
    /// Half of the self-employment tax, as published: Schedule SE digest 2025 (7,064.78 and 803.45, to the cent); IRS tax-withholding-estimator
    /// 2026, which rounds each line to whole dollars, so within a dollar.
    /// </summary>
    [Theory]
    [InlineData(176100, 100000, 50000, "7064.78", "0.005")]
    [InlineData(176100, 60000, 176100, "803.45", "0.005")]
    [InlineData(184500, 20000, 0, "1413", "1")]
    [InlineData(184500, 74000, 0, "5228", "1")]
    [InlineData(184500, 235200, 0, "14589", "1")]
    [InlineData(184500, 24210, 150000, "1710", "1")]
    [InlineData(184500, 25000, 235200, "335", "1")]
    public void Half_of_the_self_employment_tax_comes_off_the_income(int wageBase, int profit, int wages, string half, string tolerance)
    {
        // One levy, whose first band a wage elsewhere has shortened. (As two deductible levies, half of the first would come off the base of the
        // second as well, which Schedule SE does not do.) The levy after it shows what is left of the profit: it charges a tenth of that.
        Band[] shortened = wages < wageBase ? [new Band { UpTo = wageBase - wages, Rate = 0.153m }] : [];
        var tax = Tax.Of(new TaxRules
        {
            Kind = TaxKind.Levies,
            Levies = [new Levy { Share = 0.9235m, DeductibleShare = 0.5m, Bands = [.. shortened, new Band { Rate = 0.029m }] },
                new Levy { Bands = [new Band { Rate = 0.1m }] }],
        }).Value;
        var deducted = profit - 10 * tax.LeviesOn(profit)[1];
        Assert.True(decimal.Abs(deducted - Number(half)) <= Number(tolerance), $"{deducted}");
    }

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static Tax Of(decimal[] limits) => Tax.Of(new TaxRules
    {
        Kind = TaxKind.Levies,
        Levies =
            [new Levy { Bands = [.. limits.Zip(s_rates, (limit, rate) => new Band { UpTo = limit, Rate = rate }), new Band { Rate = s_rates[^1] }] }],
    }).Value;
}
