namespace PriceFloor.Pricing.Planning.ByMonth;

/// <summary>Three ways in which the rest of a year can bring what is missing: sell more, raise prices, spend less. Each closes it alone.</summary>
public sealed class PlanWays
{
    /// <param name="progress">The year so far.</param>
    public PlanWays(PlanProgress progress)
    {
        (Missing, SellMore) = (progress.Missing, progress.SellMore);
        Raise = Missing == 0 ? 0 : RaiseOf(progress);
        SpendLess = Missing <= progress.Year.Year.Allocated ? Missing : null;
    }

    /// <summary>What the rest of the plan, as it is, will not bring.</summary>
    public decimal Missing { get; }

    /// <summary>The rest of the plan times this; 1 if it brings enough. Null if nothing of the plan is left, or it leaves nothing.</summary>
    public decimal? SellMore { get; }

    /// <summary>All prices of the rest of the plan higher by this share, to the next thousandth; null if no share up to ten suffices.</summary>
    public decimal? Raise { get; }

    /// <summary>Allocated expenses of the year lower by this; null if they are not as much.</summary>
    public decimal? SpendLess { get; }

    private static decimal? RaiseOf(PlanProgress progress) => CommonRise.Of(
        [.. progress.Year.Totals.Lines.Index().Select(line => (line.Item, progress.Year.Months.Sum(month =>
            month.SoldOf(line.Index) * (1 - Season.MonthGone(month.From, progress.Through)))))], progress.Pace.StillToBring);
}
