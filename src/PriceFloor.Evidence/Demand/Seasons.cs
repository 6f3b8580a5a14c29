using PriceFloor.Evidence.Shelves;

namespace PriceFloor.Evidence.Demand;

/// <summary>How much a day of each month weighs: 1 on the mean.</summary>
public sealed class Seasons
{
    private const int Months = 12, Smoothing = 10;

    private Seasons(IReadOnlyList<decimal> weights, bool isKnown) => (Weights, IsKnown) = (weights, isKnown);

    /// <summary>Every month alike, as nothing is known of them.</summary>
    public static Seasons Unknown { get; } = new([1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1], false);

    /// <summary>January first, unrounded; they add up to 12.</summary>
    public IReadOnlyList<decimal> Weights { get; }

    /// <summary>Whether a whole year of orders was seen.</summary>
    public bool IsKnown { get; }

    /// <summary>
    /// Of a shelf's orders in the whole years before a day, ten orders a month added so that few say little: 12*(orders of the month + 10)/(orders
    /// + 120).
    /// </summary>
    /// <param name="days">The day of each order, in any order.</param>
    /// <param name="to">The last day.</param>
    public static Seasons Of(IReadOnlyCollection<DateOnly> days, DateOnly to)
    {
        var first = days.Where(day => day <= to).Select(day => (DateOnly?)day).Min();
        var years = 0;
        while (first is { } day && to.Year - years > 1 && to.AddYears(-years - 1) >= day.AddDays(-1))
            years++;
        if (years == 0)
            return Unknown;
        var (from, orders) = (to.AddYears(-years), new int[Months]);
        foreach (var day in days)
            if (day > from && day <= to)
                orders[day.Month - 1]++;
        var all = orders.Sum();
        return new Seasons([.. orders.Select(own => (decimal)Months * (own + Smoothing) / (all + Months * Smoothing))], true);
    }

    /// <summary>The weeks of some days, each day as heavy as its month.</summary>
    public decimal Weeks(DaySpan span)
    {
        decimal days = 0;
        for (var from = span.From; from <= span.To;)
        {
            var last = new DateOnly(from.Year, from.Month, DateTime.DaysInMonth(from.Year, from.Month));
            var to = last < span.To ? last : span.To;
            days += Weights[from.Month - 1] * (to.DayNumber - from.DayNumber + 1);
            if (to == DateOnly.MaxValue)
                break;
            from = to.AddDays(1);
        }

        return days / 7;
    }
}
