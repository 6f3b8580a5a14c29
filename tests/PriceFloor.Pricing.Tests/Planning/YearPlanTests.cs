using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Planning;

public sealed class YearPlanTests
{
    [Fact]
    public void A_plan_closes_when_its_lines_carry_the_pool()
    {
        // Two hours at 70.00 less 10.00 of materials leave 60.00: 1,000 of them carry 60,000 in 2,000 hours.
        var plan = Plan([(120, 10, 70, 1000)]);
        Assert.Equal((true, 0m, 2000m, true), (plan.Closes, plan.SurplusBeforeTax, plan.BenchHours, plan.WithinHours));
        Assert.Equal((10000m, 70000m), (plan.Materials, plan.Proceeds));
        var less = Plan([(120, 10, 70, 999)]);
        Assert.Equal((false, -60m), (less.Closes, less.SurplusBeforeTax));
        Assert.False(Plan([(120, 10, 70, 1000)], keptBack: 0.5m).WithinHours);
    }

    [Fact]
    public void Bench_time_goes_first_to_what_leaves_most_for_an_hour()
    {
        // 60.00 for 2 h: 30.00; 20.00 for half an hour: 40.00; 15.00 for half an hour: 30.00, after the first that leaves as much.
        var plan = Plan([(120, 10, 70, 1), (30, 5, 25, 1), (30, 0, 15, 1)]);
        Assert.Equal([2, 1, 3], plan.Ranks);
        Assert.Equal([30m, 40m, 30m], plan.Lines.Select(line => line.PerBenchHour));
    }

    [Fact]
    public void Loads_count_what_is_fired_also_for_lost_and_unsold_pieces()
    {
        // 0.8 survive the kiln and 0.5 of the good ones sell: 2.5 pieces in batches of 10 for each sold piece: 40 sold pieces take 10 loads.
        var design = new Design
        {
            Profile = "main",
            SoldShare = 0.5m,
            Making = new Making
            {
                Steps = [new Step { Name = "torch", HandsOnMinutes = 12 },
                    new Step { Name = "anneal", HandsOnMinutes = 5, BatchSize = 10, GoodShare = 0.8m, Uses = "kiln" }],
            },
        };
        var year = StudioYear.Of(Profile with
        {
            Limits = [new ResourceLimit { Name = "kiln", LoadsPerYear = 10 }, new ResourceLimit { Name = "lathe", LoadsPerYear = 3 }],
        }, default).Value;
        var plan = YearPlan.Of(year, [new PlannedLine(Check(year, design, 70), 40)], null, 0).Value;
        Assert.Equal([new LoadUse("kiln", 10, 10), new LoadUse("lathe", 0, 3)], plan.Loads);
        Assert.True(plan.Loads[0].Within);
        Assert.False((plan.Loads[0] with { Loads = 10.25m }).Within);
        Assert.True((plan.Loads[0] with { Loads = 1000, LoadsPerYear = null }).Within);
    }

    [Fact]
    public void What_is_scarce_is_told_once_the_profiles_limits_first()
    {
        var year = StudioYear.Of(Profile with { Limits = [new ResourceLimit { Name = "kiln", LoadsPerYear = 10 }] }, default).Value;
        var design = new Design
        {
            Profile = "main",
            Making = new Making
            {
                Steps = [new Step { HandsOnMinutes = 5, BatchSize = 10, Uses = "lathe" },
                    new Step { HandsOnMinutes = 5, BatchSize = 4, Uses = "kiln" }, new Step { HandsOnMinutes = 12 }],
            },
        };
        var (turned, simple) = (Check(year, design, 70), Check(year, Simple(120, 10), 70));
        Assert.Equal(["kiln", "lathe"],
            YearPlan.ScarceThings(year, [turned.Prices.Floor.UnitCost, simple.Prices.Floor.UnitCost, turned.Prices.Floor.UnitCost]));
        // 40 and 20 of the first kind: 60 / 4 loads of the kiln, 60 / 10 of the lathe, which the profile does not limit; the other needs neither.
        var plan = YearPlan.Of(year, [new PlannedLine(turned, 40), new PlannedLine(simple, 7), new PlannedLine(turned, 20)], null, 0).Value;
        Assert.Equal([new LoadUse("kiln", 15, 10), new LoadUse("lathe", 6, null)], plan.Loads);
        Assert.Equal([false, true], plan.Loads.Select(use => use.Within));
        Assert.Equal(
            ["loads1Each1 = 0.25", "loads1Each3 = 0.25", "loads1 = units1 * loads1Each1 + units3 * loads1Each3",
                "loads2Each1 = 0.1", "loads2Each3 = 0.1", "loads2 = units1 * loads2Each1 + units3 * loads2Each3"],
            Workings.Of(plan).TakeLast(6).Select(line => $"{line.Symbol} = {line.Formula}"));
    }

    [Fact]
    public void What_buyers_pay_is_counted_without_the_tax_in_it()
    {
        // 120.00 with 20 % in it is 100.00: 10 of them are 1,000, and 5 more are 500. A gallery keeps 30.00 of each: 1,050 reach the
        // studio; 10.00 of materials each leave 900.
        var year = StudioYear.Of(Profile, default).Value;
        var gallery =
            new Channel { Sells = Sells.Retail, Currency = "USD", ShopShare = 0.3m, SalesTax = new SalesTax { Rate = 0.2m, Included = true } };
        var plan = YearPlan.Of(year, [new PlannedLine(Check(year, Simple(60, 10), 120, gallery), 10),
            new PlannedLine(Check(year, Simple(60, 10), 120, gallery), 5)], null, 0).Value;
        Assert.Equal((1500m, 1050m, 900m, 15m), (plan.Revenue, plan.Proceeds, plan.Contribution, plan.BenchHours));
    }

    [Fact]
    public void Materials_stand_beside_what_is_bought()
    {
        // 100 pieces of 10.00 use 1,000; the profile buys 325 four times and 10 twelve times a year for pieces, 1,420. What
        // is traced to sales is another matter.
        var profile = Profile with
        {
            Expenses =
            [
                .. Profile.Expenses,
                new Expense { Amount = 325, Per = Per.Quarter, TracedTo = TracedTo.Piece },
                new Expense { Amount = 10, Per = Per.Month, TracedTo = TracedTo.Piece },
                new Expense { Amount = 50, Per = Per.Month, TracedTo = TracedTo.Sale },
            ],
        };
        var year = StudioYear.Of(profile, default).Value;
        var plan = YearPlan.Of(year, [new PlannedLine(Check(year, Simple(120, 10), 70), 100)], null, 0).Value;
        Assert.Equal((1000m, 1420m), (plan.Materials, plan.MaterialsBought));
    }

    [Fact]
    public void A_wanted_surplus_is_part_of_what_must_be_carried()
    {
        var plan = Plan([(120, 10, 70, 1000)], surplus: new Surplus { Amount = 600, Tax = SurplusTax.Before });
        Assert.Equal((60600m, -600m), (plan.BenchMustEarn, plan.SurplusBeforeTax));
    }

    [Fact]
    public void What_is_left_over_is_taxed_too()
    {
        // 48,000 of expenses, 12,000 to live on, a quarter of the profit for tax: Y* = 16,000, to recover 64,000. 1,100 pieces that leave 60.00 bring
        // 66,000: 2,000 over. Profit 66,000 - 48,000 = 18,000 leaves 13,500; asked for were 12,000: 1,500 stay.
        var year = StudioYear.Of(Taxed, default).Value;
        var lines = new[] { new PlannedLine(Check(year, Simple(60, 10), 70), 1100) };
        var plan = YearPlan.Of(year, lines, null, 0).Value;
        Assert.Equal((true, 2000m, 1500m), (plan.Closes, plan.SurplusBeforeTax, plan.SurplusAfterTax));
        // 1,000 wanted after tax asks for Y* = 17,333.33...: 666.66... over, of which three quarters stay.
        var wanted = YearPlan.Of(year, lines, new Surplus { Amount = 1000, Tax = SurplusTax.After }, 0).Value;
        Assert.Equal((666.67m, 500m), (Rounding.Nearest(wanted.SurplusBeforeTax, 2), Rounding.Settle(wanted.SurplusAfterTax)));
    }

    [Fact]
    public void Where_other_income_pays_for_everything_more_can_be_left_after_tax_than_before()
    {
        // 60,000 of taxable income beside 48,000 of expenses and a need of 6,000 (Y* 8,000): 12,000 of profit before a piece is sold, 0 to recover.
        // One piece that leaves 60.00: profit 12,060, of which 9,045 stay; 6,000 were asked for.
        var year = StudioYear.Of(Taxed with
        {
            Household = [new HouseholdLine { Amount = 6000, Per = Per.Year }],
            OtherIncome = [new OtherIncome { Amount = 60000, Per = Per.Year, Kind = IncomeKind.Taxable }],
        }, default).Value;
        var plan = YearPlan.Of(year, [new PlannedLine(Check(year, Simple(60, 10), 70), 1)], null, 0).Value;
        Assert.Equal((0m, 60m, 3045m), (plan.BenchMustEarn, plan.SurplusBeforeTax, plan.SurplusAfterTax));
    }

    [Fact]
    public void Revenue_is_what_buyers_pay_and_do_not_get_back()
    {
        // 10 pieces at 70.00, one in ten comes back and half of those sell again: 70 x 0.9 / (1 - 0.1 x 0.5) = 66.3158 for each that leaves for good.
        var year = StudioYear.Of(Profile, default).Value;
        var returned = new Channel { Sells = Sells.Retail, Currency = "USD", Returns = new Returns { Share = 0.1m, ResaleShare = 0.5m } };
        var plan = YearPlan.Of(year, [new PlannedLine(Check(year, Simple(60, 10), 70, returned), 10)], null, 0).Value;
        Assert.Equal(663.16m, Rounding.Nearest(plan.Revenue, 2));
    }

    [Property(MaxTest = 200, EndSize = 1_000_000)]
    public void The_units_of_a_break_even_make_a_year_that_closes(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        var year = StudioYear.Of(studio.Profile(), default).Value;
        var lines = Enumerable.Range(0, 3).Select(_ => Check(year, studio.Design(), 60 + seed.Get % 90, studio.Channel())).ToList();
        if (MixBreakEven.Of(year, [.. lines.Select((line, i) => new MixLine(line.Prices.Floor.UnitCost, line.Sale, i + 1))],
                null).Found is not { } mix)
            return;

        var plan = YearPlan.Of(year, [.. lines.Zip(mix.Units, (line, units) => new PlannedLine(line, units))], null, 0).Value;
        Assert.True(plan.Closes);
        Near.Equal(mix.BenchHours, plan.BenchHours);
        Near.Equal(plan.Contribution, plan.Proceeds - plan.Materials + plan.Lines.Sum(line => line.Units * line.UnitCost.SecondsCredit));

        var known = Redone.From(Workings.Of(year).Concat(Workings.Of(plan)));
        Assert.Equal(
            (plan.SurplusBeforeTax, plan.SurplusAfterTax, plan.Revenue, plan.Proceeds, plan.Materials, plan.BenchHours),
            (known["surplusBeforeTax"], known["surplusAfterTax"], known["revenue"], known["proceeds"], known["planMaterials"], known["planHours"]));
    }

    private static CostProfile Profile { get; } = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = 60000, Per = Per.Year }],
    };

    private static CostProfile Taxed { get; } = Profile with
    {
        Expenses = [new Expense { Amount = 48000, Per = Per.Year }],
        Household = [new HouseholdLine { Amount = 12000, Per = Per.Year }],
        Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.25m },
    };

    private static Design Simple(decimal minutes, decimal materials) =>
        new() { Profile = "main", Making = new Making { MinutesPerPiece = minutes }, Materials = [new MaterialLine { Amount = materials }] };

    private static YearPlan Plan((decimal Minutes, decimal Materials, decimal Price, decimal Units)[] lines,
        Surplus? surplus = null, decimal keptBack = 0)
    {
        var year = StudioYear.Of(Profile, default).Value;
        return YearPlan.Of(year,
            [.. lines.Select(line => new PlannedLine(Check(year, Simple(line.Minutes, line.Materials), line.Price), line.Units))],
            surplus, keptBack).Value;
    }

    private static PriceCheck Check(StudioYear year, Design design, decimal price, Channel? channel = null) =>
        ChannelPrices.Of(FloorPrice.Of(UnitCost.Of(design, year).Value, null).Value,
            SellingTerms.Of(channel ?? new Channel { Sells = Sells.Wholesale, Currency = "USD" }).Value).Value.Check(price).Value;
}
