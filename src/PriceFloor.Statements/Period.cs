using System.Runtime.InteropServices;

namespace PriceFloor.Statements;

/// <summary>Whole days, both ends included.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Period(DateOnly From, DateOnly To)
{
    public bool Holds(DateOnly day) => day >= From && day <= To;

    /// <summary>The days that both have, or null.</summary>
    public Period? Shared(Period other)
    {
        var (from, to) = (From > other.From ? From : other.From, To < other.To ? To : other.To);
        return from <= to ? new Period(from, to) : null;
    }

    /// <summary>
    /// Months, the last one counted by its days: 16 January to 15 July is 6, 1 January to 15 June is 5.5, and a year is 12 wherever it starts.
    /// </summary>
    public decimal Months
    {
        get
        {
            var (whole, end) = (0, To.AddDays(1));
            while (From.AddMonths(whole + 1) <= end)
                whole++;
            var (start, next) = (From.AddMonths(whole), From.AddMonths(whole + 1));
            return whole + (decimal)(end.DayNumber - start.DayNumber) / (next.DayNumber - start.DayNumber);
        }
    }

    /// <summary>The whole calendar months that it touches: the period of a sheet that does not give one.</summary>
    public static Period WholeMonths(DateOnly first, DateOnly last) =>
        new(new DateOnly(first.Year, first.Month, 1), new DateOnly(last.Year, last.Month, DateTime.DaysInMonth(last.Year, last.Month)));
}
