using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests;

public sealed class BreakEvenTests
{
    [Property(MaxTest = 200, EndSize = 1_000_000)]
    public void The_break_even_units_carry_the_pool_and_one_less_does_not(NonNegativeInt seed)
    {
        var (piece, sale) = Draw(seed, 80);
        if (BreakEven.Of(piece, sale).Found is not { } found)
        {
            Assert.True(0m.Reaches(BreakEven.ContributionOf(piece, sale)));
            return;
        }

        Assert.True((found.Units * found.Contribution).Reaches(piece.Year.Pool));
        if (piece.Year.Pool > 0)
            Assert.False(((found.Units - 1) * found.Contribution).Reaches(piece.Year.Pool));
    }

    [Property(MaxTest = 200, EndSize = 1_000_000)]
    public void Where_the_net_is_just_the_floor_break_even_takes_exactly_the_years_hours(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        var piece = Piece.Of(studio.Design(), StudioYear.Of(studio.Profile(), default).Value).Value;
        if (piece.Floor <= 0 || piece.Year.Pool <= 0)
            return;
        var sale = Sale.Of(piece.Floor, new Channel { Sells = Sells.Wholesale, Currency = "USD" }); // nothing is taken: the net is the price
        var hours = piece.Year.Pool / BreakEven.ContributionOf(piece, sale) * piece.BenchHours;
        Near.Equal(piece.Year.BenchHours, hours);
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
        Assert.Equal(10000m, year.Pool);
        Assert.Equal(12000m, year.PoolWith(new Surplus { Amount = 2000, Tax = SurplusTax.Before }));
        Assert.Equal(12500m, year.PoolWith(new Surplus { Amount = 2000, Tax = SurplusTax.After }));
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

    internal static StudioYear Year(decimal pool) => StudioYear.Of(new CostProfile
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = pool, Per = Per.Year }],
    }, default).Value;

    internal static MixLine Line(StudioYear year, decimal price, decimal variableCost, decimal weight) => new(
        Piece.Of(new Design { Profile = "main", Making = new Making { MinutesPerPiece = 1 }, Materials = [new MaterialLine { Amount = variableCost }] }, year).Value,
        Sale.Of(price, new Channel { Sells = Sells.Wholesale, Currency = "USD" }), weight);

    private static (Piece, Sale) Draw(NonNegativeInt seed, decimal price)
    {
        var studio = new RandomStudio(seed.Get);
        return (Piece.Of(studio.Design(), StudioYear.Of(studio.Profile(), default).Value).Value, Sale.Of(price, studio.Channel()));
    }
}
