using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using PriceFloor.Pricing.Tests.Properties;
using Xunit;

namespace PriceFloor.Pricing.Tests.Selling;

/// <summary>
/// 24,000 of expenses and 36,000 to live on over 2,000 working hours, all at the bench: 30.00 an hour, of which 18.00 reach the household.
/// </summary>
public sealed class TakeHomeTests
{
    private static readonly CostProfile s_profile = new()
    {
        Currency = "USD",
        Calendar = new StudioCalendar { WeeksPerYear = 50, DaysPerWeek = 5, HoursPerDay = 8 },
        Expenses = [new Expense { Amount = 24000, Per = Per.Year }],
        Household = [new HouseholdLine { Amount = 3000, Per = Per.Month }],
    };

    [Fact]
    public void At_its_floor_a_price_leaves_what_the_year_asks_for() =>
        Assert.Equal(18m, PerHour(s_profile, 30)); // (30 x 2,000 - 24,000) / 2,000

    [Fact]
    public void A_lower_price_leaves_less_and_a_losing_one_takes_from_the_household()
    {
        Assert.Equal(16m, PerHour(s_profile, 28)); // (56,000 - 24,000) / 2,000
        Assert.Equal(-2m, PerHour(s_profile, 10)); // (20,000 - 24,000) / 2,000: no tax on a loss
    }

    [Fact]
    public void Tax_and_what_is_paid_out_of_taxed_money_come_off()
    {
        // 1,000 of principal, a quarter of the profit for tax. At 40.00: 80,000 - 24,000 = 56,000, less 14,000 of tax and
        // the principal: 41,000 / 2,000 h = 20.50.
        var taxed = s_profile with
        {
            Expenses = [.. s_profile.Expenses, new Expense { Amount = 1000, Per = Per.Year, Deductible = false }],
            Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.25m },
        };
        Assert.Equal(20.5m, PerHour(taxed, 40));
        Assert.Equal(-2.5m, PerHour(taxed, 10)); // (20,000 - 24,000 - 1,000) / 2,000
    }

    [Fact]
    public void Hours_off_the_bench_are_worked_too() =>
        Assert.Equal(5m, PerHour(s_profile with { Calendar = s_profile.Calendar with { BenchShare = 0.5m } }, 34)); // (34 x 1,000 - 24,000) / 2,000

    [Property(MaxTest = 300, EndSize = 1_000_000)]
    public void At_the_floor_it_is_the_take_home_of_the_year(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        var year = StudioYear.Of(studio.Profile(), default).Value;
        var piece = UnitCost.Of(studio.Design(), year).Value;
        if (piece.Floor <= 0 || year.BenchMustEarn <= 0 || year.Need < year.NotDeductible)
            return;
        var floor = FloorPrice.Of(piece, null).Value;
        var prices = ChannelPrices.Of(floor, SellingTerms.Of(new Channel { Sells = Sells.Wholesale, Currency = year.Currency.Code }).Value).Value;
        // nothing is taken on this channel, so the net is the floor itself
        Near.Equal(year.TakeHomePerHour, TakeHome.Of(prices.Check(piece.Floor).Value).Value.PerHour);
    }

    private static decimal PerHour(CostProfile profile, decimal price)
    {
        var piece =
            UnitCost.Of(new Design { Profile = "main", Making = new Making { MinutesPerPiece = 60 } }, StudioYear.Of(profile, default).Value).Value;
        var prices = ChannelPrices.Of(FloorPrice.Of(piece, null).Value,
            SellingTerms.Of(new Channel { Sells = Sells.Wholesale, Currency = "USD" }).Value).Value;
        return TakeHome.Of(prices.Check(price).Value).Value.PerHour;
    }
}
