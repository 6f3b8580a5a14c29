using PriceFloor.Pricing.Documents;

namespace PriceFloor.Pricing.Planning;

/// <summary>
/// How a year's sales are spread over its twelve months: weights of which only the proportions count. Months are those of the profile's year.
/// </summary>
public sealed class Season
{
    private Season(IReadOnlyList<decimal> weights) => (Weights, Sum) = (weights, weights.Sum());

    /// <summary>One twelfth in each month.</summary>
    public static Season Even { get; } = new([1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1]);

    public IReadOnlyList<decimal> Weights { get; }

    /// <summary>All weights added up: above zero.</summary>
    public decimal Sum { get; }

    /// <summary>Null unless there are twelve weights, none negative and at least one positive.</summary>
    public static Season? Of(IReadOnlyList<decimal> weights) => PlanRules.IsSeason(weights) ? new Season(weights) : null;

    /// <summary>The share of the season in the first months together.</summary>
    /// <param name="months">How many of them, 0 to 12.</param>
    public decimal ShareThrough(int months) => Weights.Take(months).Sum() / Sum;

    /// <summary>
    /// The share of the season that has passed: whole months, and the running month by its days. Of [1, 1, 2, 0, ...] from 1 January to 15 February:
    /// (1 + 15/28) / 4 = 0.3839.
    /// </summary>
    /// <param name="first">The first day of the year.</param>
    /// <param name="last">The last day that has passed.</param>
    public decimal ShareGone(DateOnly first, DateOnly last)
    {
        decimal gone = 0;
        for (var month = 0; month < 12; month++)
            gone += Weights[month] * MonthGone(first.AddMonths(month), last);
        return gone / Sum;
    }

    /// <summary>The share of the days of a month that has passed on a day: 15/28 of February on 15 February.</summary>
    /// <param name="first">The first day of the month.</param>
    /// <param name="last">The last day that has passed.</param>
    public static decimal MonthGone(DateOnly first, DateOnly last) => (decimal)DaysGone(first, last) / DateTime.DaysInMonth(first.Year, first.Month);

    /// <summary>The days of a month that have passed: 15 of February on 15 February.</summary>
    /// <param name="first">The first day of the month.</param>
    /// <param name="last">The last day that has passed.</param>
    public static int DaysGone(DateOnly first, DateOnly last) =>
        int.Clamp(last.DayNumber - first.DayNumber + 1, 0, DateTime.DaysInMonth(first.Year, first.Month));
}
