using PriceFloor.Pricing.Documents;
using PriceFloor.Pricing.Numbers;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>Whether a planned year is on its way: what was planned by a day, what has come, and what each week and bench hour that is left must
/// bring. It moves no floor. Nothing here is rounded.</summary>
public sealed class PlanProgress
{
    private readonly decimal[] _left;

    /// <param name="year">The plan.</param>
    /// <param name="through">The last day that has passed; within the profile's year.</param>
    /// <param name="brought">What sales have brought so far of what bench time must recover.</param>
    public PlanProgress(YearByMonth year, DateOnly through, decimal brought)
    {
        (Year, Through) = (year, through);
        var first = year.Months[0].From;
        _left = [.. year.Months.Select(month => 1 - Season.MonthGone(month.From, through))];
        var weeks = WeeksOf(year);
        WeeksOfMonths = [.. weeks.Select((week, month) => week * _left[month])];
        HoursLeft = year.Months.Sum(month => month.Capacity * _left[month.Number - 1]);
        Pace = new Pace(year.Totals.Contribution, DueOf(year, first, through), brought, year.Totals.BenchMustEarn, WeeksOfMonths.Sum());
        StockExpected = year.Plan.Opening.Stock.Sum(item => item.Pieces * ContributionOf(year, item.Sku));
        Months = [.. year.Months.Where(month => _left[month.Number - 1] > 0).Select(MonthLeft)];
    }

    public YearByMonth Year { get; }

    public DateOnly Through { get; }

    public Pace Pace { get; }

    /// <summary>What finished pieces are expected to leave, at the first line of their design: their hours are spent.</summary>
    public decimal StockExpected { get; }

    /// <summary>Bench hours that are left, the running month's by its days.</summary>
    public decimal HoursLeft { get; }

    /// <summary>Working weeks left of each month.</summary>
    public IReadOnlyList<decimal> WeeksOfMonths { get; }

    /// <summary>What each bench hour that is left must bring; null if none is. It never becomes a floor: a floor stays at normal capacity.</summary>
    public decimal? PerBenchHourLeft =>
        Rounding.Settle(HoursLeft) > 0 ? decimal.Max(0, Pace.StillToBring - StockExpected) / HoursLeft : null;

    /// <summary>The months of which something is left.</summary>
    public IReadOnlyList<MonthToBring> Months { get; }

    /// <summary>Refused with <c>too-large</c> if figures pass exactness.</summary>
    public static Outcome<PlanProgress> Of(YearByMonth year, DateOnly through, decimal brought) =>
        Outcome<PlanProgress>.Guard(() => new PlanProgress(year, through, brought));

    private static decimal DueOf(YearByMonth year, DateOnly first, DateOnly through) => year.Plan.Lines.Zip(year.Totals.Lines)
        .GroupBy(line => line.First.Season, line => line.Second.TotalContribution)
        .Sum(season => season.Sum() * SeasonOf(year.Plan, season.Key).ShareGone(first, through));

    private static Season SeasonOf(Plan plan, string? name) => name is null ? Season.Even : Season.Of(plan.Seasons[name])!;

    private static decimal ContributionOf(YearByMonth year, string sku)
    {
        var line = year.Plan.Lines.Index().Where(line => line.Item.Sku == sku).Select(line => line.Index).DefaultIfEmpty(-1).First();
        return line < 0 ? 0 : year.Totals.Lines[line].Contribution;
    }

    /// <summary>The calendar's weeks, spread as work is.</summary>
    private static IEnumerable<decimal> WeeksOf(YearByMonth year)
    {
        var work = year.Plan.Work is { } weights ? Season.Of(weights)! : Season.Even;
        return work.Weights.Select(weight => weight * year.Year.Profile.Calendar.WeeksPerYear / work.Sum);
    }

    private MonthToBring MonthLeft(PlanMonth month)
    {
        var (i, left) = (month.Number - 1, Pace.RestPlanned);
        decimal? toBring = left > 0 ? Pace.StillToBring * month.Contribution * _left[i] / left : null;
        return new MonthToBring(month, toBring, Rounding.Settle(WeeksOfMonths[i]) > 0 ? toBring / WeeksOfMonths[i] : null);
    }
}

/// <summary>What a month, or what is left of it, must bring.</summary>
/// <param name="Month">The month.</param>
/// <param name="ToBring">Its part of what is still to bring, as the plan spreads it; null if nothing of the plan is left.</param>
/// <param name="PerWeek">The same for each of its working weeks that are left; null if none is.</param>
public sealed record MonthToBring(PlanMonth Month, decimal? ToBring, decimal? PerWeek);
