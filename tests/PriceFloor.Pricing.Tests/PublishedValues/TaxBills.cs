using Xunit;

namespace PriceFloor.Pricing.Tests.PublishedValues;

/// <summary>Published tax tables and worked bills.</summary>
public sealed class TaxBills
{
    private static readonly decimal[] s_rates = [0.10m, 0.12m, 0.22m, 0.24m, 0.32m, 0.35m, 0.37m];

    /// <summary>Cumulative constants printed in Rev. Proc. 2024-40 sec. 2.01 (2025) and Rev. Proc. 2025-32 sec. 4.01 (2026), Tables 1-4.</summary>
    public static TheoryData<string, decimal[], decimal[]> Brackets => new()
    {
        { "2025 single", [11925, 48475, 103350, 197300, 250525, 626350], [1192.5m, 5578.5m, 17651, 40199, 57231, 188769.75m] },
        { "2025 joint", [23850, 96950, 206700, 394600, 501050, 751600], [2385, 11157, 35302, 80398, 114462, 202154.5m] },
        { "2025 separate", [11925, 48475, 103350, 197300, 250525, 375800], [1192.5m, 5578.5m, 17651, 40199, 57231, 101077.25m] },
        { "2025 head of household", [17000, 64850, 103350, 197300, 250500, 626350], [1700, 7442, 15912, 38460, 55484, 187031.5m] },
        { "2026 single", [12400, 50400, 105700, 201775, 256225, 640600], [1240, 5800, 17966, 41024, 58448, 192979.25m] },
        { "2026 joint", [24800, 100800, 211400, 403550, 512450, 768700], [2480, 11600, 35932, 82048, 116896, 206583.5m] },
        { "2026 separate", [12400, 50400, 105700, 201775, 256225, 384350], [1240, 5800, 17966, 41024, 58448, 103291.75m] },
        { "2026 head of household", [17700, 67450, 105700, 201750, 256200, 640600], [1770, 7740, 16155, 39207, 56631, 191171] },
    };

    /// <summary>Hand-worked from the Rev. Proc. tables in public test suites (bracket arithmetic).</summary>
    public static TheoryData<decimal[], decimal, decimal> WorkedBills => new()
    {
        { [11925, 48475, 103350, 197300, 250525, 626350], 20113.19m, 2175.08m }, // 2025 single
        { [17000, 64850, 103350, 197300, 250500, 626350], 64860m, 7444.20m }, // 2025 head of household
        { [11925, 48475, 103350, 197300, 250525, 375800], 400000m, 110031.25m }, // 2025 separate
        { [23850, 96950, 206700, 394600, 501050, 751600], 50000m, 5523.00m }, // 2025 surviving spouse
        { [12400, 50400, 105700, 201775, 256225, 640600], 75000m, 11212.00m }, // 2026 single
    };

    [Theory]
    [MemberData(nameof(Brackets))]
    public void Bands_add_up_to_the_printed_constants(string table, decimal[] limits, decimal[] cumulative)
    {
        var tax = Of(limits);
        foreach (var (limit, printed) in limits.Zip(cumulative))
            Assert.Equal((table, limit, printed), (table, limit, tax.On(limit)));
    }

    [Theory]
    [MemberData(nameof(WorkedBills))]
    public void Bills_agree_to_the_cent(decimal[] limits, decimal income, decimal published) =>
        Assert.Equal(published, Rounding.Nearest(Of(limits).On(income), 2));

    /// <summary>
    /// Self-employment tax. First two: Schedule SE 2025 instructions digest, to the cent. The others: tax-withholding estimator test cases of the
    /// IRS (public domain), 2026, which round each of two lines to whole dollars: so within a dollar.
    /// </summary>
    [Theory]
    [InlineData(176100, 100000, 50000, 14129.55, 0.005)]
    [InlineData(176100, 60000, 176100, 1606.89, 0.005)]
    [InlineData(184500, 20000, 0, 2826, 1)]
    [InlineData(184500, 74000, 0, 10456, 1)]
    [InlineData(184500, 150000, 0, 21194, 1)]
    [InlineData(184500, 176100, 0, 24882, 1)]
    [InlineData(184500, 235200, 0, 29177, 1)]
    [InlineData(184500, 15000, 74000, 2120, 1)]
    [InlineData(184500, 24210, 150000, 3420, 1)]
    [InlineData(184500, 24210, 200000, 648, 1)]
    [InlineData(184500, 25000, 235200, 670, 1)]
    [InlineData(184500, 100000, 0, 14129, 1)]
    public void A_wage_elsewhere_uses_up_the_base_of_the_self_employment_levy(int wageBase, int profit, int wages, double published, double tolerance)
    {
        var tax = Tax.Of(new TaxRules
        {
            Kind = TaxKind.Levies,
            Levies =
            [
                new Levy { Share = 0.9235m, OtherBase = wages, Bands = [new Band { UpTo = wageBase, Rate = 0.124m }, new Band { Rate = 0 }] },
                new Levy { Share = 0.9235m, Bands = [new Band { Rate = 0.029m }] },
            ],
        }).Value;
        Assert.InRange(tax.On(profit), (decimal)(published - tolerance), (decimal)(published + tolerance));
    }

    /// <summary>The set in the docs, by bracket arithmetic and without the business income deduction, recomputed from the tables.</summary>
    [Fact]
    public void The_US_example_in_the_docs_charges_what_its_tables_say()
    {
        // Profit 40,000: 40,000 x 0.9235 x 0.153 = 5,651.82; taxable 40,000 - 2,825.91 - 16,100 = 21,074.09; 1,240 + 0.12 x 8,674.09 = 2,280.89.
        var levies = Tax.Of(TaxExamples.Us2026Single).Value.LeviesOn(40000);
        Assert.Equal(5651.82m, Rounding.Nearest(levies[0], 2));
        Assert.Equal(2280.89m, Rounding.Nearest(levies[1], 2));

        // Largest social security contribution of 2026: 22,878 (Schedule SE; contribution and benefit base 184,500); medicare goes on above it.
        Assert.Equal(22878m, Rounding.Settle(Tax.Of(TaxExamples.Us2026Single).Value.LeviesOn(500000)[0] - 500000 * 0.9235m * 0.029m));
    }

    /// <summary>
    /// Income tax and Class 4 published on UK tax pages for 2025-26 and re-derived from the GOV.UK bands; 30,000, 60,000 and 110,000 are
    /// computed from the bands only, no published bill.
    /// </summary>
    [Theory]
    [InlineData(45000, 6486, 1945.80)]
    [InlineData(50000, 7486, 2245.80)]
    [InlineData(48000, 7086, 2125.80)]
    [InlineData(42500, 5986, 1795.80)]
    [InlineData(125140, 42516, 3759.40)]
    [InlineData(30000, 3486, 1045.80)]
    [InlineData(60000, 11432, 2456.60)]
    [InlineData(110000, 33432, 3456.60)]
    public void The_UK_example_in_the_docs_gives_the_published_bills(int profit, int incomeTax, double class4)
    {
        var levies = Tax.Of(TaxExamples.Uk2025SelfEmployed).Value.LeviesOn(profit);
        Assert.Equal(((decimal)class4, (decimal)incomeTax), (levies[0], levies[1]));
    }

    [Fact]
    public void The_profit_found_leaves_what_was_needed_to_the_cent()
    {
        foreach (var rules in new[] { TaxExamples.Us2026Single, TaxExamples.Uk2025SelfEmployed })
        {
            var tax = Tax.Of(rules).Value;
            for (var need = 0m; need <= 400_000; need += 997.13m)
            {
                var profit = Rounding.Up(tax.ProfitLeaving(need), 2);
                Assert.True(profit - tax.On(profit) >= need, $"{need}");
                if (need > 0)
                    Assert.True(profit - 0.01m - tax.On(profit - 0.01m) < need, $"{need}");
            }
        }

        // Published the other way round: the UK take-home of 36,568.20 (profit 45,000) and 40,268.20 (profit 50,000).
        var uk = Tax.Of(TaxExamples.Uk2025SelfEmployed).Value;
        Assert.Equal((45000m, 50000m), (Rounding.Nearest(uk.ProfitLeaving(36568.20m), 2), Rounding.Nearest(uk.ProfitLeaving(40268.20m), 2)));
    }

    private static Tax Of(decimal[] limits) => Tax.Of(new TaxRules
    {
        Kind = TaxKind.Levies,
        Levies =
            [new Levy { Bands = [.. limits.Zip(s_rates, (limit, rate) => new Band { UpTo = limit, Rate = rate }), new Band { Rate = s_rates[^1] }] }],
    }).Value;
}
