using PriceFloor.Pricing.Years;

namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>
/// What it costs to hold prices while costs have moved: what the plan's sales leave less, and the part of what bench time must recover more that
/// falls into these days, by the work of the months. A month begun counts by its days. Unrounded.
/// </summary>
public sealed class HeldPrices
{
    private readonly YearByMonth _plan;
    private readonly Season _work;
    private readonly decimal _morePool;

    /// <param name="plan">The plan as it is, with its prices.</param>
    /// <param name="changed">The year after the changes.</param>
    public HeldPrices(YearByMonth plan, StudioYear changed)
    {
        (_plan, _morePool) = (plan, changed.BenchMustEarn - plan.Year.BenchMustEarn);
        _work = plan.Plan.Work is { } weights ? Season.Of(weights)! : Season.Even;
    }

    private DateOnly First => _plan.Months[0].From;

    /// <summary>The cost from one day up to another; days outside the year cost nothing.</summary>
    /// <param name="lines">
    /// The plan's lines at the prices that are held, after the changes; null for one that does not count. What bench time must recover more falls on
    /// those that count by their bench hours.
    /// </param>
    /// <param name="from">The first day.</param>
    /// <param name="until">The day on which prices follow.</param>
    public decimal Cost(IReadOnlyList<PlannedLine?> lines, DateOnly from, DateOnly until)
    {
        if (from >= until)
            return 0;
        var (cost, counted, hours) = (0m, 0m, _plan.Totals.BenchHours);
        foreach (var (i, line) in lines.Index())
            if (line is not null)
            {
                var now = _plan.Totals.Lines[i];
                counted += now.BenchHours;
                cost += now.Units * (now.Contribution - line.Contribution) * ShareOf(SeasonOf(i), from, until);
            }

        var part = lines.All(line => line is not null) ? 1 : hours == 0 ? 0 : counted / hours;
        return cost + _morePool * part * ShareOf(_work, from, until);
    }

    private Season SeasonOf(int line) => _plan.Plan.Lines[line].Season is { } name ? Season.Of(_plan.Plan.Seasons[name])! : Season.Even;

    private decimal ShareOf(Season season, DateOnly from, DateOnly until) =>
        season.ShareGone(First, until.AddDays(-1)) - season.ShareGone(First, from.AddDays(-1));
}
