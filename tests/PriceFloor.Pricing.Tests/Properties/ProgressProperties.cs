using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace PriceFloor.Pricing.Tests.Properties;

/// <summary>What must hold for the progress of every plan, attacked with random studios, plans, days and sales.</summary>
public sealed class ProgressProperties
{
    private const int Tries = 300;

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void Its_workings_can_be_redone(NonNegativeInt seed)
    {
        var drawn = new Drawn(seed.Get);
        var progress = drawn.Progress;
        var known = Redone.From(Workings.Of(progress.Year.Year).Concat(Workings.Of(progress)));
        Assert.Equal((progress.Pace.Due, progress.Pace.Brought, progress.Pace.StillToBring),
            (known["planned"], known["brought"], known["stillToBring"]));
        Assert.Equal((progress.StockExpected, progress.HoursLeft, progress.Missing), (known["stockExpected"], known["hoursLeft"], known["missing"]));
        Assert.Equal((progress.Pace.Ratio, progress.Pace.Factor, progress.PerBenchHourLeft, progress.Pace.PerWeekLeft, progress.SellMore),
            (Known("pace"), Known("factor"), Known("perBenchHourLeft"), Known("perWeekLeft"), Known("sellMore")));
        foreach (var month in progress.Months)
            Assert.Equal((month.ToBring, month.PerWeek), (Known($"toBring{month.Month.Number}"), Known($"perWeek{month.Month.Number}")));

        decimal? Known(string symbol) => known.TryGetValue(symbol, out var value) ? value : null;
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void A_year_that_sells_as_planned_is_just_on_its_way(NonNegativeInt seed)
    {
        var drawn = new Drawn(seed.Get);
        var progress = PlanProgress.Of(drawn.Year, drawn.Through, drawn.AsPlanned(1), []).Value;
        Near.Equal(0, progress.Pace.Ahead, 0.000001m);
        if (progress.Pace.Ratio is { } ratio && progress.Pace.Due > 1)
        {
            Near.Equal(1, ratio, 0.000001m);
            Near.Equal(drawn.Year.Totals.Contribution, progress.Pace.Forecast!.Value, 0.01m);
        }
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void The_months_that_are_left_bring_all_that_is_still_to_come(NonNegativeInt seed)
    {
        var progress = new Drawn(seed.Get).Progress;
        if (progress.Pace.RestPlanned > 1)
            Near.Equal(progress.Pace.StillToBring, progress.Months.Sum(month => month.ToBring!.Value), 0.0001m);
    }

    [Property(MaxTest = Tries, EndSize = 1_000_000)]
    public void What_lies_ready_never_raises_what_an_hour_must_bring_and_changes_nothing_else(NonNegativeInt seed)
    {
        var drawn = new Drawn(seed.Get);
        var (with, without) = (drawn.Progress, PlanProgress.Of(drawn.Year, drawn.Through, drawn.Sold, []).Value);
        Assert.Equal(without.Pace.StillToBring, with.Pace.StillToBring);
        if (with.StockExpected >= 0)
            Assert.True(!(with.PerBenchHourLeft > without.PerBenchHourLeft));
    }

    /// <summary>A plan, a day of its year, and what was sold by then.</summary>
    private sealed class Drawn
    {
        public Drawn(int seed)
        {
            var random = new Random(seed);
            Year = new RandomPlan(seed).ByMonth();
            Through = Year.Months[0].From.AddDays(random.Next(365));
            Sold = [.. AsPlanned(1).Where(_ => random.Next(3) > 0)
                .Select(sold => sold with { Pieces = random.Next(100), Net = random.Next(-10_000, 2_000_000) / 100m })];
            Progress = PlanProgress.Of(Year, Through, Sold,
                [.. Year.Plan.Lines.Select(line => line.Sku).Distinct().Where(_ => random.Next(2) == 0)
                    .Select(sku => new StockOfPieces { Sku = sku, Pieces = random.Next(50) })]).Value;
        }

        public YearByMonth Year { get; }

        public DateOnly Through { get; }

        public IReadOnlyList<SoldSoFar> Sold { get; }

        public PlanProgress Progress { get; }

        /// <summary>Each line's pieces as its season has them by the day, at the plan's price, times a share.</summary>
        public IReadOnlyList<SoldSoFar> AsPlanned(decimal share) => [.. Year.Plan.Lines.Zip(Year.Totals.Lines, (line, priced) =>
        {
            var season = line.Season is { } name ? Season.Of(Year.Plan.Seasons[name])! : Season.Even;
            var pieces = line.Units * share * season.ShareGone(Year.Months[0].From, Through);
            return new SoldSoFar(line.Sku, line.Channel, pieces, pieces * priced.Sale.Net, priced.UnitCost.Materials, priced.UnitCost.SecondsCredit);
        })];
    }
}
