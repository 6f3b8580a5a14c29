using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace PriceFloor.Pricing.Tests.Properties;

/// <summary>What must hold for every planned year, attacked with random studios and plans.</summary>
public sealed class PlanProperties
{
    private const int Tries = 400;

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void The_bridge_from_profit_to_cash_has_no_gap(NonNegativeInt seed)
    {
        var year = new RandomPlan(seed.Get).ByMonth();
        Assert.Equal(0m, Rounding.Nearest(year.Change - year.Parts.Sum(part => part.Amount), 2));
        Near.Equal(year.Change, year.Months[11].Cash - year.Plan.Opening.Cash);
    }

    [Property(MaxTest = 100, EndSize = 1_000_000)]
    public void Its_workings_can_be_redone_month_by_month(NonNegativeInt seed)
    {
        var year = new RandomPlan(seed.Get).ByMonth();
        var known = Redone.From(Workings.Of(year.Year).Concat(Workings.Of(year)));
        foreach (var month in year.Months)
            Assert.Equal((month.Cash, month.Free, month.MadeHours, month.Aside),
                (known[$"cash{month.Number}"], known[$"free{month.Number}"], known[$"madeHours{month.Number}"],
                    known[$"taxSetAside{month.Number}"]));
        Assert.Equal((year.OpeningNeeded, year.Change, year.Tax, year.StockAtMost),
            (known["openingNeeded"], known["change"], known["planTax"], known["stockAtMost"]));
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void Everything_is_made_once_in_time_and_as_late_as_can_be(NonNegativeInt seed)
    {
        var year = new RandomPlan(seed.Get).ByMonth();
        var steady = year.Plan.Steady && year.WithinCapacity;
        Near.Equal(year.HoursToMake, year.Months.Sum(month => month.MadeHours));
        var ready = steady ? year.Months[0].StockHours : 0;
        foreach (var (i, month) in year.Months.Index())
        {
            Assert.True((month.MadeHours + 0.000001m) >= 0, $"{month.MadeHours} made in month {i + 1}");
            Assert.True((i == 0 && !steady) || month.MadeHours <= month.Capacity + 0.000001m,
                $"{month.MadeHours} of {month.Capacity} in month {i + 1}");
            Assert.True(ready + month.MadeHours + 0.000001m >= month.HoursToMake, $"month {i + 1} sells what is not made");
            // Only a month without an hour to spare lets the months before it work for it.
            if (month.StockHours > 0.000001m && (i > 0 || steady))
                Near.Equal(month.Capacity, month.MadeHours, 0.000001m);
            ready += month.MadeHours - month.HoursToMake;
            if (i < 11)
                Near.Equal(year.Months[i + 1].StockHours, ready, 0.000001m);
        }
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void All_materials_are_paid_but_those_of_pieces_that_lay_ready(NonNegativeInt seed)
    {
        var year = new RandomPlan(seed.Get).ByMonth();
        var sold = year.Totals.Lines.Sum(line => line.Units * (line.UnitCost.Materials - line.UnitCost.SecondsCredit));
        var lay = year.Parts.Single(part => part.Kind == CashPartKind.MaterialsInStock).Amount;
        Near.Equal(sold - lay, year.Months.Sum(month => month.Materials), 0.001m);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_season_sells_the_whole_year_and_only_its_proportions_count(NonNegativeInt seed)
    {
        var drawn = new RandomPlan(seed.Get);
        var year = drawn.ByMonth();
        foreach (var (i, line) in drawn.Plan.Lines.Index())
            Near.Equal(line.Units, year.Months.Sum(month => month.SoldOf(i)));
        var threefold = drawn.ByMonth(drawn.Plan with
        {
            Seasons = drawn.Plan.Seasons.ToDictionary(season => season.Key, season => Threefold(season.Value)),
            Work = drawn.Plan.Work is { } work ? Threefold(work) : null,
        });
        foreach (var (one, other) in year.Months.Zip(threefold.Months))
            Near.Equal(one.Cash, other.Cash, 0.0001m);
    }

    private static IReadOnlyList<decimal> Threefold(IReadOnlyList<decimal> weights) => [.. weights.Select(weight => weight * 3)];

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_steady_year_owes_and_holds_the_same_at_both_ends(NonNegativeInt seed)
    {
        var drawn = new RandomPlan(seed.Get);
        var year = drawn.ByMonth(drawn.Plan with { Steady = true, Opening = drawn.Plan.Opening with { OwedToUs = [], Stock = [] } });
        foreach (var kind in new[] { CashPartKind.DepositsHeld, CashPartKind.OwedToUs, CashPartKind.MaterialsInStock })
            Near.Equal(0, year.Parts.Single(part => part.Kind == kind).Amount, 0.000001m);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void With_what_it_says_is_needed_the_year_keeps_its_reserve(NonNegativeInt seed)
    {
        var drawn = new RandomPlan(seed.Get);
        var plan = drawn.Plan with { Reserve = 1234.5m };
        var needed = drawn.ByMonth(plan).OpeningNeeded;
        if (needed == 0)
            return; // an overdrawn account may be enough
        Near.Equal(1234.5m, drawn.ByMonth(plan with { Opening = plan.Opening with { Cash = needed } }).LowestCash.Cash, 0.000001m);
    }
}
