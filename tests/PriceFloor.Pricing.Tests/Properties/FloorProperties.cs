using FsCheck;
using FsCheck.Xunit;
using PriceFloor.Pricing.Tests.ExactReckoning;
using Xunit;

namespace PriceFloor.Pricing.Tests.Properties;

/// <summary>What must hold for every studio, attacked with random ones.</summary>
public sealed class FloorProperties
{
    private const int Tries = 200;

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void More_to_pay_never_lowers_a_floor(NonNegativeInt seed)
    {
        var (profile, design) = Draw(seed);
        var more = new Expense { Amount = 77.77m, Per = Per.Month };
        Rises(profile, design, profile with { Expenses = [.. profile.Expenses, more] }, design);
        Rises(profile, design, profile with { Expenses = [.. profile.Expenses, more with { Deductible = false }] }, design);
        Rises(profile, design, profile with { Household = [.. profile.Household, new HouseholdLine { Amount = 50, Per = Per.Week }] }, design);
        Rises(profile, design, profile with
        {
            Equipment = [.. profile.Equipment,
                new Equipment { Cost = 800, Depreciation = new DepreciationRule { Method = DepreciationMethod.StraightLine, LifeYears = 4 } }],
        }, design);
        Rises(profile, design,
            profile with { Pay = new Pay { Amount = (profile.Pay?.Amount ?? 0) + 3, Per = profile.Pay?.Per ?? PayPer.Hour } }, design);
        Rises(profile, design, profile with { Materials = [.. profile.Materials.Select(line => line with { Price = line.Price * 1.1m })] }, design);
        Rises(profile, design, profile, design with { Materials = [.. design.Materials, new MaterialLine { Amount = 1.5m }] });
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_higher_tax_never_lowers_a_floor(NonNegativeInt seed)
    {
        var (profile, design) = Draw(seed);
        var flat = profile with { Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.2m } };
        Rises(flat, design, flat with { Tax = new TaxRules { Kind = TaxKind.Flat, Rate = 0.23m } }, design);
        Rises(profile with { Tax = new TaxRules { Kind = TaxKind.None } }, design, flat, design);
        if (profile.Tax.Kind == TaxKind.Levies)
        {
            var last = profile.Tax.Levies[^1]; // nothing is deducted from a levy after it
            var higher = last with { Bands = [.. last.Bands.Select(band => band with { Rate = band.Rate + 0.01m })] };
            Rises(profile, design, profile with { Tax = profile.Tax with { Levies = [.. profile.Tax.Levies.SkipLast(1), higher] } }, design);
        }
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void More_loss_never_lowers_a_floor_where_seconds_do_not_pay_more_than_they_cost(NonNegativeInt seed)
    {
        var (profile, design) = Draw(seed);
        // Where seconds bring more than the whole piece takes, more pieces that never sell bring more seconds: one-off work alone is then due.
        if (Of(profile, design with { Development = null }).Cost >= 0)
            Rises(profile, design, profile, design with { SoldShare = (design.SoldShare ?? profile.SoldShare) * 0.9m });
        Rises(profile, design, profile, design with
        {
            Materials = [.. design.Materials.Select(line => line.Material is null ? line : line with { WasteShare = line.WasteShare + 0.1m })],
        });

        var worse = design with
        {
            Making = design.Making.Steps is { } steps
                ? design.Making with { Steps = [steps[0] with { GoodShare = steps[0].GoodShare * 0.9m }, .. steps.Skip(1)] }
                : design.Making with { GoodShare = design.Making.GoodShare * 0.9m },
        };
        if (!Of(profile, worse).SecondsPayMoreThanTheyCost)
            Rises(profile, design, profile, worse);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void More_hands_at_the_bench_never_raise_a_floor(NonNegativeInt seed)
    {
        var (profile, design) = Draw(seed);
        Rises(profile with { Helpers = [.. profile.Helpers, new Helper { BenchHoursPerYear = 150 }] }, design, profile, design);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void The_plain_rule_is_a_special_case(PositiveInt expenses, PositiveInt living, PositiveInt pace)
    {
        var profile = new CostProfile
        {
            Currency = "USD",
            Calendar = new StudioCalendar { WeeksPerYear = 46, DaysPerWeek = 4.5m, HoursPerDay = 7 },
            Expenses = [new Expense { Amount = expenses.Get, Per = Per.Year }],
            Household = [new HouseholdLine { Amount = living.Get, Per = Per.Year }],
        };
        var pieces = 1 + pace.Get % 20;
        var floor = Of(profile, new Design { Profile = "main", Making = new Making { PiecesPerDay = pieces } }).Floor;
        Near.Equal((decimal)(expenses.Get + living.Get) / 46 / 4.5m / pieces, floor);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_bench_days_pace_agrees_with_the_same_pace_in_minutes(NonNegativeInt seed, PositiveInt pace)
    {
        var (profile, design) = Draw(seed);
        var pieces = 1 + pace.Get % 30;
        var byDay = design with { Making = new Making { PiecesPerBenchDay = pieces, GoodShare = 0.9m }, Materials = [] };
        var byMinutes = byDay with { Making = new Making { MinutesPerPiece = profile.Calendar.HoursPerDay * 60 / pieces, GoodShare = 0.9m } };
        Near.Equal(Of(profile, byDay).Floor, Of(profile, byMinutes).Floor);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void Ten_times_every_amount_is_ten_times_the_floor(NonNegativeInt seed)
    {
        var (profile, design) = Draw(seed);
        var tenfold = profile with
        {
            Expenses = [.. profile.Expenses.Select(line => line with { Amount = line.Amount * 10 })],
            Household = [.. profile.Household.Select(line => line with { Amount = line.Amount * 10 })],
            OtherIncome = [.. profile.OtherIncome.Select(line => line with { Amount = line.Amount * 10 })],
            Equipment = [.. profile.Equipment.Select(thing => thing with { Cost = thing.Cost * 10, Salvage = thing.Salvage * 10 })],
            Pay = profile.Pay is { } pay ? pay with { Amount = pay.Amount * 10 } : null,
            Materials = [.. profile.Materials.Select(line => line with { Price = line.Price * 10 })],
            Tax = profile.Tax with
            {
                Levies = [.. profile.Tax.Levies.Select(levy => levy with
                {
                    Allowance = levy.Allowance * 10,
                    OtherBase = levy.OtherBase * 10,
                    Bands = [.. levy.Bands.Select(band => band with { UpTo = band.UpTo * 10 })],
                })],
            },
        };
        var dearer = design with
        {
            Materials = [.. design.Materials.Select(line => line with { Amount = line.Amount * 10 })],
            Seconds = design.Seconds is { } seconds ? seconds with { Price = seconds.Price * 10 } : null,
            Development = design.Development is { } once ? once with { Cost = once.Cost * 10 } : null,
        };
        Near.Equal(Of(profile, design).Floor * 10, Of(tenfold, dearer).Floor);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void One_step_below_the_floor_price_loses_money(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        var piece = Of(studio.Profile(), studio.Design());
        var terms = SellingTerms.Of(studio.Channel()).Value;
        var price = terms.FloorPrice(piece.Floor).Value.Price;
        Assert.True(terms.Grid.Allows(price) && Sale.Of(price, terms.Channel).Net.Reaches(piece.Floor));
        var lower = price - terms.Grid.Step;
        Assert.False(lower > 0 && Sale.Of(lower, terms.Channel).Net.Reaches(piece.Floor));
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void The_profit_found_leaves_the_need_and_a_hair_less_does_not(NonNegativeInt seed, NonNegativeInt need)
    {
        var tax = Tax.Of(new RandomStudio(seed.Get).Profile().Tax).Value;
        var profit = tax.ProfitLeaving(need.Get);
        Assert.True((profit - tax.On(profit)).Reaches(need.Get));
        if (need.Get > 0)
            Assert.False((profit - 0.000001m - tax.On(profit - 0.000001m)).Reaches(need.Get));
    }

    private static (CostProfile, Design) Draw(NonNegativeInt seed)
    {
        var studio = new RandomStudio(seed.Get);
        return (studio.Profile(), studio.Design());
    }

    private static UnitCost Of(CostProfile profile, Design design) => UnitCost.Of(design, StudioYear.Of(profile, default).Value).Value;

    private static void Rises(CostProfile before, Design piece, CostProfile after, Design changed) =>
        Assert.True((Of(after, changed).Floor + 0.000000001m).Reaches(Of(before, piece).Floor),
            $"{Of(before, piece).Floor} fell to {Of(after, changed).Floor}");
}
