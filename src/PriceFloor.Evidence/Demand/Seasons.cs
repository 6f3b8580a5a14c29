using PriceFloor.Evidence.Shelves;

namespace PriceFloor.Evidence.Demand;

/// <summary>How much a day of each month weighs: 1 on the mean.</summary>
public sealed class Seasons
{
    internal const int Months = 12;

    private const int Smoothing = 10;

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
    public static Seasons Of(IReadOnlyCollection<DateOnly> days, DateOnly to) => Of(days.Where(day => day <= to).Select(day => (DateOnly?)day).Min(),
        to, after =>
        {
            var orders = new int[Months];
            foreach (var day in days)
                if (day > after && day <= to)
                    orders[day.Month - 1]++;
            return orders;
        });

    /// <summary>The same of offers, whose orders all are up to that day.</summary>
    internal static Seasons OfOffers(IReadOnlyList<OfferedDesign> offers, DateOnly to) => Of(
        offers.Min(offer => offer.FirstOrder), to, after =>
        {
            var orders = new int[Months];
            foreach (var offer in offers)
                foreach (var (month, own) in offer.OrdersByMonth(after).Index())
                    orders[month] += own;
            return orders;
        });

    /// <param name="first">The day of the first order; null: there is none.</param>
    /// <param name="to">The last day.</param>
    /// <param name="byMonth">How many orders were in each month after a day and up to the last.</param>
    private static Seasons Of(DateOnly? first, DateOnly to, Func<DateOnly, int[]> byMonth)
    {
        var years = 0;
        while (first is { } day && to.Year - years > 1 && to.AddYears(-years - 1) >= day.AddDays(-1))
            years++;
        if (years == 0)
            return Unknown;
        var orders = byMonth(to.AddYears(-years));
        var all = orders.Sum();
        return new Seasons([.. orders.Select(own => (decimal)Months * (own + Smoothing) / (all + Months * Smoothing))], true);
    }

    /// <summary>The weeks of some days, each day as heavy as its month.</summary>
    public decimal Weeks(DaySpan span)
    {
        var weighted = 0m;
        for (var month = 1; month <= Months; month++)
            weighted += Weights[month - 1] * (DaysUpTo(span.To, month) - DaysUpTo(span.From, month) + (span.From.Month == month ? 1 : 0));
        return weighted / 7;
    }

    /// <summary>How many days of a month there were from the first year to a day, that day too.</summary>
    private static int DaysUpTo(DateOnly day, int month)
    {
        var before = day.Year - 1;
        var days = before * DateTime.DaysInMonth(1, month) + (month == 2 ? before / 4 - before / 100 + before / 400 : 0);
        return days + (day.Month > month ? DateTime.DaysInMonth(day.Year, month) : day.Month == month ? day.Day : 0);
    }
}
