using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using Xunit;

namespace PriceFloor.Pricing.Tests.Properties;

/// <summary>What must hold for every table of rates, attacked with random ones.</summary>
public sealed class TaxProperties
{
    private const int Tries = 300;

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void No_profit_pays_no_tax(NonNegativeInt seed) => Assert.Equal(0m, Of(seed).On(0));

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void Tax_is_never_negative_where_no_wage_elsewhere_is_relieved(NonNegativeInt seed, NonNegativeInt profit)
    {
        // With a wage elsewhere an earlier levy may relieve the wage's own tax, so only tables without one are bound to be at least zero.
        var rules = Rules(seed);
        var alone = rules with { Levies = [.. rules.Levies.Select(levy => levy with { OtherBase = 0 })] };
        if (Tax.Of(alone).Found is { } tax)
            Assert.All(tax.LeviesOn(profit.Get), levy => Assert.True(levy >= 0));
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_cent_more_profit_leaves_more_and_never_jumps(NonNegativeInt seed, NonNegativeInt profit)
    {
        // Every slope lies between those of all rates at once: no step anywhere, however small the step of the profit.
        var tax = Of(seed);
        foreach (var more in new[] { 0.01m, 0.000001m })
        {
            var kept = profit.Get + more - tax.On(profit.Get + more) - (profit.Get - tax.On(profit.Get));
            Assert.True(kept > 0, $"{kept}");
            Assert.True(kept <= 3 * more, $"{kept}");
        }
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void It_is_continuous_across_every_limit(NonNegativeInt seed)
    {
        var rules = Rules(seed);
        if (Tax.Of(rules).Found is not { } tax)
            return;
        foreach (var levy in rules.Levies)
            foreach (var band in levy.Bands.Where(band => band.UpTo is not null))
            {
                var limit = decimal.Max(0.000001m, (band.UpTo!.Value + levy.Allowance - levy.OtherBase) / levy.Share);
                Assert.True(decimal.Abs(tax.On(limit + 0.000001m) - tax.On(limit - 0.000001m)) <= 0.000006m);
            }
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void The_inverse_undoes_the_tax(NonNegativeInt seed, NonNegativeInt profit)
    {
        var tax = Of(seed);
        var kept = profit.Get - tax.On(profit.Get);
        Near.Equal(profit.Get, tax.ProfitLeaving(kept));
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_greater_need_takes_a_greater_profit(NonNegativeInt seed, NonNegativeInt need)
    {
        var tax = Of(seed);
        Assert.True(tax.ProfitLeaving(need.Get + 0.01m) > tax.ProfitLeaving(need.Get));
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_flat_rate_is_one_levy_with_one_band(NonNegativeInt percent, NonNegativeInt need)
    {
        var rate = percent.Get % 100 / 100m;
        var flat = Tax.Of(new TaxRules { Kind = TaxKind.Flat, Rate = rate }).Value;
        var levy = Tax.Of(new TaxRules { Kind = TaxKind.Levies, Levies = [new Levy { Bands = [new Band { Rate = rate }] }] }).Value;
        Assert.Equal((levy.On(need.Get), levy.ProfitLeaving(need.Get)), (flat.On(need.Get), flat.ProfitLeaving(need.Get)));
        Near.Equal(need.Get / (1 - rate), flat.ProfitLeaving(need.Get));
    }

    private static TaxRules Rules(NonNegativeInt seed) => new RandomStudio(seed.Get).Profile().Tax;

    private static Tax Of(NonNegativeInt seed) => Tax.Of(Rules(seed)).Value;
}
