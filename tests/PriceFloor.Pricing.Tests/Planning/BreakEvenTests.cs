using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Planning;

public sealed class BreakEvenTests
{
    private static readonly Channel s_bare = new() { Sells = Sells.Wholesale, Currency = "USD" };

    [Property(MaxTest = 200, EndSize = 1_000_000)]
    public void The_break_even_units_carry_the_pool_and_one_less_does_not(NonNegativeInt seed)
    {
        var (piece, sale) = Draw(seed, 80);
        if (BreakEven.Of(piece, sale).Found is not { } found)
        {
            Assert.True(0m.Reaches(BreakEven.ContributionOf(piece, sale)));
            return;
        }

        Assert.True((found.Units * found.Contribution).Reaches(piece.Year.BenchMustEarn));
        if (piece.Year.BenchMustEarn > 0)
            Assert.False(((found.Units - 1) * found.Contribution).Reaches(piece.Year.BenchMustEarn));
    }

    [Property(MaxTest = 200, EndSize = 1_000_000)]
    public void Where_the_net_is_just_the_floor_break_even_takes_exactly_the_years_hours(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        var piece = UnitCost.Of(studio.Design(), StudioYear.Of(studio.Profile(), default).Value).Value;
        if (piece.Floor <= 0 || piece.Year.BenchMustEarn <= 0)
            return;
        var channel = new Channel { Sells = Sells.Wholesale, Currency = "USD", Selling = studio.Channel().Selling };
        var floor = new ChannelFloor(piece, channel);
        var sale = Sale.Of(floor.Floor, channel); // nothing is taken: the net is the price
        var hours = piece.Year.BenchMustEarn / BreakEven.ContributionOf(piece, sale) * floor.Hours;
        Near.Equal(piece.Year.CarryingHours, hours);
    }

    [Fact]
    public void A_wanted_surplus_is_counted_before_or_after_tax()
    {
        var year = StudioYear.Of(new CostProfile
        {
            Currency = "USD",
            Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
            Household = [new HouseholdLine { Amount = 8000, Per = Per.Year }],
            Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m },
        }, default).Value;
        Assert.Equal(10000m, year.BenchMustEarn);
        Assert.Equal(12000m, year.BenchMustEarnWith(new Surplus { Amount = 2000, Tax = SurplusTax.Before }));
        Assert.Equal(12500m, year.BenchMustEarnWith(new Surplus { Amount = 2000, Tax = SurplusTax.After }));
    }

    [Fact]
    public void A_wanted_surplus_comes_on_top_of_what_other_income_leaves()
    {
        // 10,000 of need are 12,500 of profit; 3,000 of expenses, 4,000 earned elsewhere: 11,500 to carry. 2,000 more after tax are 2,500 before it.
        var year = StudioYear.Of(new CostProfile
        {
            Currency = "USD",
            Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
            Expenses = [new Expense { Amount = 3000, Per = Per.Year }],
            Household = [new HouseholdLine { Amount = 10000, Per = Per.Year }],
            OtherIncome = [new OtherIncome { Amount = 4000, Per = Per.Year, Kind = IncomeKind.Taxable }],
            Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m },
        }, default).Value;
        Assert.Equal(11500m, year.BenchMustEarnWith(null));
        Assert.Equal(13500m, year.BenchMustEarnWith(new Surplus { Amount = 2000, Tax = SurplusTax.Before }));
        Assert.Equal(14000m, year.BenchMustEarnWith(new Surplus { Amount = 2000, Tax = SurplusTax.After }));
    }

    [Fact]
    public void Pieces_that_take_just_the_years_hours_are_within_them()
    {
        // 70.00 less 10.00 of materials leave 60.00 for 2 h: 1,000 carry 60,000 in all of 2,000 h. For 60,060 it
        // takes one more than those hours make.
        var just = Of(TwoHours(60_000));
        Assert.Equal((1000m, 1000m, true, 2000m, 1m, 70_000m),
            (just.Units, just.Capacity, just.WithinCapacity, just.BenchHours, just.ShareOfYear, just.Revenue));
        var over = Of(TwoHours(60_060));
        Assert.Equal((1001m, 1000m, false, 2002m, 1.001m, 70_070m),
            (over.Units, over.Capacity, over.WithinCapacity, over.BenchHours, over.ShareOfYear, over.Revenue));

        static BreakEven Of(MixLine line) => BreakEven.Of(line.UnitCost, line.Sale).Value;
    }

    [Fact]
    public void Sales_may_fall_as_far_as_break_even_and_a_surplus_swings_wider_than_sales()
    {
        // 1,000 pieces carry 60,000. Of 1,250 planned a fifth may fail; they leave 75,000, five times the 15,000 that are over.
        var line = TwoHours(60_000);
        var found = BreakEven.Of(line.UnitCost, line.Sale).Value;
        Assert.Equal((0.2m, 5m), (found.At(1250).Value.MarginOfSafety, found.At(1250).Value.OperatingLeverage));
        Assert.Equal((0m, null), (found.At(1000).Value.MarginOfSafety, found.At(1000).Value.OperatingLeverage));
        Assert.Equal((-0.25m, null), (found.At(800).Value.MarginOfSafety, found.At(800).Value.OperatingLeverage));
    }

    [Fact]
    public void A_mix_that_takes_just_the_years_hours_is_within_them()
    {
        // As above, one of each of two alike for a set of 120.00: 500 and 500. For 60,001 there are 501 of each: 2,004 h.
        var just = MixBreakEven.Of(TwoHours(60_000).UnitCost.Year, [TwoHours(60_000), TwoHours(60_000)], null).Value;
        Assert.Equal((2000m, 1m, true, 70_000m), (just.BenchHours, just.ShareOfYear, just.WithinCapacity, just.Revenue));
        var over = MixBreakEven.Of(TwoHours(60_001).UnitCost.Year, [TwoHours(60_001), TwoHours(60_001)], null).Value;
        Assert.Equal((2004m, 1.002m, false, 70_140m), (over.BenchHours, over.ShareOfYear, over.WithinCapacity, over.Revenue));
    }

    [Fact]
    public void A_line_that_leaves_just_nothing_is_not_made_once_more_for_it()
    {
        // Two at 60.00 and three at 10.00 less 10.00 leave 120 a set: 1,100 / 120 = 9.1667: 19 (18.33 up) and 27 (27.5 down).
        var year = Year(1100);
        Assert.Equal([19m, 27m], MixBreakEven.Of(year, [Line(year, 60, 0, 2), Line(year, 10, 10, 3)], null).Value.Units);
    }

    [Fact]
    public void The_workings_of_a_break_even_can_be_redone()
    {
        var line = TwoHours(60_010);
        var found = BreakEven.Of(line.UnitCost, line.Sale).Value;
        var redone =
            Redone.From(Workings.Of(line.UnitCost.Year).Concat(Workings.Of(line.UnitCost)).Concat(Workings.Of(line.Sale)).Concat(Workings.Of(found)));
        // 60,010 / 60 = 1,000.17
        Assert.Equal((60m, 1001m, 2002m, 1.001m), (redone["contribution"], redone["units"], redone["unitsHours"], redone["shareOfYear"]));
        Assert.Equal((70_070m, 60_010m / 60), (redone["revenue"], redone["exactUnits"]));
    }

    [Theory]
    [InlineData(1251, true)] // 1,251 pieces: (1,251 - 1,001) / 1,251; 75,060 / (75,060 - 60,010)
    [InlineData(1000, false)]
    public void The_workings_of_planned_sales_can_be_redone(int planned, bool above)
    {
        var line = TwoHours(60_010);
        var found = BreakEven.Of(line.UnitCost, line.Sale).Value;
        var sales = found.At(planned).Value;
        var redone = Redone.From(Workings.Of(line.UnitCost.Year).Concat(Workings.Of(line.UnitCost)).Concat(Workings.Of(line.Sale))
            .Concat(Workings.Of(found)).Concat(Workings.Of(sales)));
        Assert.Equal((planned - 1001m) / planned, redone["marginOfSafety"]);
        Assert.Equal(sales.MarginOfSafety, redone["marginOfSafety"]);
        Assert.Equal(above, redone.ContainsKey("operatingLeverage"));
        Assert.Equal(above ? 75_060m / (75_060 - 60_010) : null, sales.OperatingLeverage);
        Assert.True(!above || redone["operatingLeverage"] == sales.OperatingLeverage);
    }

    [Fact]
    public void The_workings_of_a_mix_can_be_redone()
    {
        var year = Year(1100);
        var mix = MixBreakEven.Of(year, [Line(year, 60, 0, 2), Line(year, 10, 10, 3)], new Surplus { Amount = 100, Tax = SurplusTax.Before }).Value;
        var lines = Workings.Of(mix).ToList();
        Assert.Equal(
            ["net1 = 60", "revenueAPiece1 = 60", "materials1 = 0", "secondsCredit1 = 0", "benchHours1 = 0.016666666667",
                "contribution1 = net1 - materials1 + secondsCredit1", "net2 = 10", "revenueAPiece2 = 10", "materials2 = 10", "secondsCredit2 = 0",
                "benchHours2 = 0.016666666667", "contribution2 = net2 - materials2 + secondsCredit2",
                "profitAskedFor = profitBeforeTax + 100", "benchMustEarnWithSurplus = max(0, allocated + profitAskedFor - taxableIncome)",
                "contributionPerMixUnit = 2 * contribution1 + 3 * contribution2", "mixUnits = benchMustEarnWithSurplus / contributionPerMixUnit",
                "exactUnits1 = 2 * mixUnits", "units1 = roundup(exactUnits1, 0)", "exactUnits2 = 3 * mixUnits", "units2 = rounddown(exactUnits2, 0)",
                "unitsHours = units1 * benchHours1 + units2 * benchHours2", "revenue = units1 * revenueAPiece1 + units2 * revenueAPiece2",
                "shareOfYear = unitsHours / benchHoursOfTheYear"],
            lines.Select(line => $"{line.Symbol} = {line.Formula}"));
        // 1,200 / 120 = 10 sets: 20 and 30 pieces of a minute, for 20 x 60.00 and 30 x 10.00.
        var redone = Redone.From(Workings.Of(year).Concat(lines));
        Assert.Equal((10m, 20m, 30m, 1500m), (redone["mixUnits"], redone["units1"], redone["units2"], redone["revenue"]));
        Near.Equal(50m / 60, redone["unitsHours"]);
        Assert.Equal((mix.BenchHours, mix.Revenue, mix.ShareOfYear), (redone["unitsHours"], redone["revenue"], redone["shareOfYear"]));
    }

    [Fact]
    public void A_line_that_leaves_nothing_is_carried_by_the_others()
    {
        // 60.00 and -10.00: two of the first and one of the second leave 110 a set; 1,000 / 110 = 9.09: 19 (18.18 up) and 9 (9.09 down).
        var year = Year(1000);
        var mix = MixBreakEven.Of(year, [Line(year, 60, 0, 2), Line(year, 10, 20, 1)], null).Value;
        Assert.Equal([19m, 9m], mix.Units);
        Assert.Equal("never-breaks-even", Assert.Single(MixBreakEven.Of(year, [Line(year, 10, 20, 1)], null).Faults).Code);
    }

    internal static StudioYear Year(decimal mustEarn) => StudioYear.Of(new CostProfile
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = mustEarn, Per = Per.Year }],
    }, default).Value;

    internal static MixLine Line(StudioYear year, decimal price, decimal variableCost, decimal weight) => new(
        UnitCost.Of(
            new Design { Profile = "main", Making = new Making { MinutesPerPiece = 1 }, Materials = [new MaterialLine { Amount = variableCost }] },
            year).Value,
        Sale.Of(price, new Channel { Sells = Sells.Wholesale, Currency = "USD" }), weight);

    /// <summary>A piece of 2 hours that sells at 70.00 and takes 10.00 of materials, in a year of 2,000 hours.</summary>
    private static MixLine TwoHours(decimal mustEarn) => new(
        UnitCost.Of(new Design { Profile = "main", Making = new Making { MinutesPerPiece = 120 }, Materials = [new MaterialLine { Amount = 10 }] },
            Year(mustEarn)).Value,
        Sale.Of(70, s_bare), 1);

    private static (UnitCost, Sale) Draw(NonNegativeInt seed, decimal price)
    {
        var studio = new RandomStudio(seed.Get);
        return (UnitCost.Of(studio.Design(), StudioYear.Of(studio.Profile(), default).Value).Value, Sale.Of(price, studio.Channel()));
    }
}
